import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { ownTables } from '../../source/tracing/tables.ts';
import type { ClosedHuntDocument, FoundDocument } from '../../source/words/found-document.ts';
import type { TraceDocument } from '../../source/words/trace-document.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { aFolder, anOutside, type FolderInMemory, NOW } from '../helpers/an-outside.ts';

const noScreens = { board: async () => 0 };
const DAY = 86_400_000;
const day = (back: number) => new Date(NOW - back * DAY).toISOString();
const second = (instant: string) => `${instant.slice(0, 19)}Z`;

async function say(folder: FolderInMemory, ...args: string[]) {
  const outside = anOutside({ folders: { boat: folder } });
  const status = await run([...args, '--boat', 'boat'], outside, noScreens);
  return { status, ...outside.written() };
}

async function traced(folder: FolderInMemory, ...args: string[]): Promise<TraceDocument> {
  return JSON.parse((await say(folder, 'trace', ...args, '--json')).out);
}

async function closed(folder: FolderInMemory, ...args: string[]): Promise<ClosedHuntDocument> {
  return JSON.parse((await say(folder, 'trace', ...args, '--json')).out).closed;
}

async function found(folder: FolderInMemory, id: string): Promise<FoundDocument[]> {
  return JSON.parse((await say(folder, 'item', id, '--json')).out).found;
}

const work = (back: number, cause: string, item = 'gear-oil'): Draft => ({
  kind: 'job',
  at: day(back),
  item,
  text: `work for ${cause}`,
  cause,
});
const clue = (back: number, what: string, seen: boolean, item = 'gear-oil'): Draft => ({
  kind: 'clue',
  at: day(back),
  item,
  clue: what,
  seen,
});
const helped = (back: number, item = 'gear-oil') => clue(back, 'helped', true, item);

/** A gearbox that loses 40 ml for every two running hours until the day of the job, a dip a day; after it so much of that. */
function mended(left: number, job: readonly Draft[] = [work(20.5, 'output-seal')]): FolderInMemory {
  const drafts: Draft[] = [];
  let level = 1.3;
  for (let back = 40; back >= 0; back -= 1) {
    const at = day(back + 0.1);
    drafts.push({ kind: 'hours', at, engine: 'main', reading: 100 + 2 * (40 - back) });
    drafts.push({ kind: 'dip', at, fluid: 'gear-oil', level });
    level -= 0.004 * (back > 20 ? 1 : left);
  }
  const fluids = [{ ...sandpiper.fluids[0], atAnchor: 1 }, ...sandpiper.fluids.slice(1)];
  return aFolder({ ...sandpiper, fluids }, [
    ...drafts,
    clue(21.5, 'flung-ring', true),
    clue(21.4, 'hanging-drop', false),
    { kind: 'leak', at: day(25), item: 'gear-oil', class: 'drops' },
    ...job,
  ]);
}

describe('a hunt that work was done in', () => {
  it('is closed by the readings after it, where they show that it helped', async () => {
    const document = await traced(mended(0), 'gear-oil');
    expect(document.jobs).toEqual([]);
    expect(document.before).toMatchObject([{ cause: 'output-seal', at: second(day(20.5)) }]);
    expect(document.before[0]!.helped).toBeGreaterThan(0.9);
    expect(document.clues.filter(({ from }) => from === 'asked')).toEqual([]);
  });

  it('stays open where the readings after it show that it did not, and the cause is thought of less', async () => {
    const document = await traced(mended(1), 'gear-oil');
    expect(document.before).toEqual([]);
    expect(document.jobs[0]!.helped).toBeLessThan(0.5);
    const seal = (of: TraceDocument) => of.causes.find(({ id }) => id === 'output-seal')!.chance;
    expect(seal(document)).toBeLessThan(seal(await traced(mended(1, []), 'gear-oil')));
  });

  it('becomes a page: what was noticed, looked for and thought, the work, what the readings said, when it closed', async () => {
    const folder = mended(0);
    const hunt = await closed(folder, 'gear-oil', 'found=newest');
    expect(hunt.noticed).toMatchObject({ at: second(day(25)), sign: 'leak' });
    expect(hunt.clues.filter(({ from }) => from === 'asked')).toMatchObject([
      { id: 'flung-ring', seen: true, at: second(day(21.5)) },
      { id: 'hanging-drop', seen: false, at: second(day(21.4)) },
    ]);
    expect(hunt.causes[0]).toMatchObject({ id: 'output-seal' });
    expect(hunt).toMatchObject({ at: second(day(20.5)), cause: 'output-seal', text: 'work for output-seal' });
    expect(hunt.after).toMatchObject({ by: 'readings', readings: 21, at: second(day(0.1)) });
    expect(hunt.after!.ratio!.p50).toBeLessThan(0.5);
    expect(hunt.sure).toBeGreaterThan(hunt.causes[0]!.chance);
    expect(hunt.sure).toBeLessThan(1);
    // The day it is said to have closed, it was; the reading before, it was not.
    const asOf = async (at: string) =>
      (JSON.parse((await say(folder, 'trace', 'gear-oil', '--json', '--at', at)).out) as TraceDocument)
        .before;
    expect(await asOf(hunt.closedAt)).toHaveLength(1);
    expect(await asOf(new Date(Date.parse(hunt.closedAt) - DAY).toISOString())).toEqual([]);
    const { out } = await say(folder, 'trace', 'gear-oil', `found=${hunt.at.slice(0, 10)}`);
    for (const title of ['FIRST NOTICED', 'LOOKED FOR', 'LIKELIEST THEN', 'THE WORK', 'AFTER IT'])
      expect(out).toContain(title);
  });

  it("is closed by the check's next answer", async () => {
    const checks = [
      ...sandpiper.checks,
      { id: 'charging', name: 'Charging', ask: 'number' as const, atLeast: 13.8 },
    ];
    const answer = (back: number, value: number): Draft => ({
      kind: 'check',
      at: day(back),
      check: 'charging',
      value,
    });
    const drafts = [answer(9, 14.2), answer(6, 13.1), answer(5, 13.0), work(4, 'belt', 'charging')];
    const open = aFolder({ ...sandpiper, checks }, drafts);
    expect((await traced(open, 'charging')).jobs).toMatchObject([{ cause: 'belt', helped: 0.5 }]);
    const right = aFolder({ ...sandpiper, checks }, [...drafts, answer(3, 14.1)]);
    expect((await traced(right, 'charging')).before).toMatchObject([{ cause: 'belt', helped: 0.95 }]);
    expect(await closed(right, 'charging', 'found=newest')).toMatchObject({
      noticed: { at: second(day(6)), sign: 'not as it should be' },
      after: { by: 'check', at: second(day(3)) },
      closedAt: second(day(3)),
    });
    const wrong = aFolder({ ...sandpiper, checks }, [...drafts, answer(3, 13.2)]);
    expect((await traced(wrong, 'charging')).jobs[0]!.helped).toBeCloseTo(0.05, 12);
  });
});

describe('what was found before', () => {
  const years = [
    clue(1300, 'hanging-drop', true),
    work(1299, 'plug'),
    helped(1290),
    clue(700, 'hanging-drop', true),
    work(699, 'plug'),
    helped(690),
    clue(400, 'wet-hose', true),
    work(399, 'cooler-hose'),
    helped(380),
  ];

  it('raises its prior across the years as Dirichlet counts do', async () => {
    const [table] = ownTables();
    const single = (id: string) => table!.causes.find((cause) => cause.id === id)!.prior;
    const total = table!.causes.reduce((sum, { prior }) => sum + prior, table!.somethingElse);
    const counts = new Map(table!.causes.map(({ id }) => [id, (4 * single(id)) / total]));
    counts.set('plug', counts.get('plug')! + 2 * 0.95);
    counts.set('cooler-hose', counts.get('cooler-hose')! + 0.95);
    // Of one cause alone; two at once have their own share, in proportion to both.
    const all = 4 + 3 * 0.95;
    const alone = (id: string) => counts.get(id)! / all;
    const { causes } = await traced(aFolder(sandpiper, years), 'gear-oil');
    const prior = (id: string) => causes.find((cause) => cause.id === id)!.prior;
    const ids = [...counts.keys()];
    let pairs = 0;
    for (const [i, one] of ids.entries())
      for (const other of ids.slice(i + 1)) pairs += alone(one) * alone(other);
    for (const id of ids) {
      const others = ids.reduce((sum, other) => sum + (other === id ? 0 : alone(other)), 0);
      const wanted = (1 - table!.together) * alone(id) + (table!.together * alone(id) * others) / pairs;
      expect(prior(id), id).toBeCloseTo(wanted, 5);
    }
  });

  it('is listed the newest first, of each what it was, and each can be read in full', async () => {
    const folder = aFolder(sandpiper, years);
    const list = await found(folder, 'gear-oil');
    expect(list.map(({ cause, at }) => [cause, at])).toEqual([
      ['cooler-hose', second(day(399))],
      ['plug', second(day(699))],
      ['plug', second(day(1299))],
    ]);
    const { out } = await say(folder, 'item', 'gear-oil');
    expect(out.indexOf('a cooler hose or its fitting')).toBeGreaterThan(0);
    expect(out.indexOf('a cooler hose or its fitting')).toBeLessThan(out.indexOf('drain or filler plug'));
    const oldest = await closed(folder, 'gear-oil', `found=${list[2]!.at.slice(0, 10)}`);
    expect(oldest).toMatchObject({
      cause: 'plug',
      noticed: { at: second(day(1300)), sign: 'clue' },
      after: { by: 'person', at: second(day(1290)) },
      closedAt: second(day(1290)),
    });
    expect(oldest.causes.find(({ id }) => id === 'plug')!.prior, 'nothing was found by then').toBeCloseTo(
      (await traced(aFolder(sandpiper, []), 'gear-oil')).causes.find(({ id }) => id === 'plug')!.prior,
      6,
    );
  });

  it('is of an engine too, by whichever of its tables', async () => {
    const folder = aFolder(sandpiper, [
      work(90, 'impeller', 'main'),
      helped(89, 'main'),
      work(30, 'flat-battery', 'main'),
      helped(29, 'main'),
    ]);
    const { out, status } = await say(folder, 'item', 'main', '--json');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      id: 'main',
      kind: 'engine',
      found: [
        { cause: 'flat-battery', table: { id: 'will-not-start' } },
        { cause: 'impeller', table: { id: 'overheating' } },
      ],
    });
    expect((await say(folder, 'item', 'main')).out).toContain('hoveshort trace main overheating');
  });

  it.each([
    [['trace', 'gear-oil', 'found=2020-01-01'], 66, 'there is no closed hunt "2020-01-01"'],
    [['trace', 'gear-oil', 'found='], 66, 'there is no closed hunt'],
    [['trace', 'gear-oli', 'found=newest'], 66, 'Try: gear-oil'],
    [['trace', 'water', 'found=newest'], 66, 'there is no closed hunt'],
  ])('%j is status %i: %s', async (args, status, told) => {
    const said = await say(aFolder(sandpiper, years), ...args);
    expect([said.status, said.out]).toEqual([status, '']);
    expect(said.err).toContain(told);
  });
});

describe('a trace\u2019s warnings', () => {
  it('tell of oil in a bilge that pumps itself, where what runs out is oil or fuel', async () => {
    const fluids = [
      ...sandpiper.fluids,
      { id: 'coolant', name: 'Coolant', engine: 'main', low: 5, full: 6 },
      { id: 'engine-oil', name: 'Engine oil', engine: 'main', low: 3, full: 4 },
    ];
    const checks = [...sandpiper.checks, { id: 'bilge-pump', name: 'Bilge pump', ask: 'number' as const }];
    const folder = aFolder({ ...sandpiper, fluids, checks }, []);
    const told = async (...args: string[]) => (await traced(folder, ...args)).warnings.length;
    for (const id of ['gear-oil', 'engine-oil', 'fuel', 'bilge-pump']) expect(await told(id), id).toBe(1);
    for (const args of [['coolant'], ['pencil'], ['main', 'overheating']])
      expect(await told(...args), args.join(' ')).toBe(0);
  });
});
