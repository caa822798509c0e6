import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { ownTables } from '../../source/tracing/tables.ts';
import type { TraceDocument } from '../../source/words/trace-document.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { aFolder, anOutside, type FolderInMemory, NOW } from '../helpers/an-outside.ts';

const noScreens = { board: async () => 0 };
const DAY = 86_400_000;
const day = (back: number) => new Date(NOW - back * DAY).toISOString();

async function say(folder: FolderInMemory, ...args: string[]) {
  const outside = anOutside({ folders: { boat: folder } });
  const status = await run([...args, '--boat', 'boat'], outside, noScreens);
  return { status, ...outside.written() };
}

async function traced(folder: FolderInMemory, ...args: string[]): Promise<TraceDocument> {
  const { status, out } = await say(folder, 'trace', ...args, '--json');
  expect(status).toBe(0);
  return JSON.parse(out);
}

/** A gearbox that began to lose 20 ml a running hour, and so much less after a job as asked. */
function losing(more: readonly Draft[] = [], days = 12): FolderInMemory {
  const drafts: Draft[] = [];
  for (let i = 0; i <= days; i += 1) {
    const at = day(days - i + 0.1);
    drafts.push({ kind: 'hours', at, engine: 'main', reading: 100 + 2 * Math.floor(i / 3) });
    drafts.push({ kind: 'dip', at, fluid: 'gear-oil', level: 1.3 - 0.04 * Math.floor(i / 3) });
  }
  return aFolder(
    { ...sandpiper, fluids: [{ ...sandpiper.fluids[0], atAnchor: 1 }, ...sandpiper.fluids.slice(1)] },
    [...drafts, ...more],
  );
}

describe('trace', () => {
  it('tells the clues the log gives, causes ranked, the next look with its cautions, and the repairs', async () => {
    const document = await traced(losing(), 'gear-oil');
    expect(document.clues).toContainEqual(
      expect.objectContaining({ id: 'only-running', seen: true, from: 'log' }),
    );
    const chances = document.causes.map(({ chance }) => chance);
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
    // One cause stands, something else, or two at once, which count twice.
    const sum = chances.reduce((all, one) => all + one, document.somethingElse);
    expect(sum).toBeGreaterThan(1);
    expect(sum).toBeLessThan(1 + 3 * document.together);
    expect(document.next!.cautions.length).toBeGreaterThan(0);
    expect(document.repairs).toHaveLength(document.causes.length);
    expect(document.warnings[0]).toContain('local rules first');
    expect(document.liveWith).toMatchObject({ bars: [] });
  });

  it('is played from the first drop to the repair, and the readings after it close it', async () => {
    const folder = losing();
    const shows = new Set(['only-running', 'flung-ring']);
    let document = await traced(folder, 'gear-oil');
    let looks = 0;
    while (document.next) {
      const seen = shows.has(document.next.clue) ? 'yes' : 'no';
      await say(folder, 'record', 'clue', 'item=gear-oil', `clue=${document.next.clue}`, `seen=${seen}`);
      document = await traced(folder, 'gear-oil');
      looks += 1;
      expect(looks).toBeLessThan(20);
    }
    expect(document.state).toBe('stands');
    expect(document.causes[0]).toMatchObject({ id: 'output-seal' });
    expect(document.causes[0]!.speaksFor).toContain('flung-ring');
    expect(document.causes[0]!.chance).toBeLessThan(1);

    const job = ['record', 'job', 'item=gear-oil', 'cause=output-seal', 'text=seal renewed'];
    expect((await say(folder, ...job)).status).toBe(0);
    const open = await traced(folder, 'gear-oil');
    expect(open.jobs).toMatchObject([{ cause: 'output-seal' }]);
    expect(Math.abs(open.jobs[0]!.helped - 0.5), 'nothing is known yet').toBeLessThan(0.1);

    await say(folder, 'record', 'clue', 'item=gear-oil', 'clue=helped', 'seen=yes');
    const closed = await traced(folder, 'gear-oil');
    expect(closed.before).toMatchObject([{ cause: 'output-seal', helped: 0.95 }]);
    expect(closed.jobs).toEqual([]);
    const again = closed.causes.find(({ id }) => id === 'output-seal')!;
    const first = open.causes.find(({ id }) => id === 'output-seal')!;
    expect(again.prior, 'found before, it is likelier from the start').toBeGreaterThan(first.prior);
    expect((await say(folder, 'trace', 'gear-oil')).out).toContain('Closed by the work of');
  });

  it('learns from work that did not help', async () => {
    const at = day(0.05);
    const job: Draft = { kind: 'job', at, item: 'gear-oil', text: 'nipped up', cause: 'cooler-hose' };
    const failed: Draft = { kind: 'clue', at, item: 'gear-oil', clue: 'helped', seen: false };
    const hose = (document: TraceDocument) => document.causes.find(({ id }) => id === 'cooler-hose')!.chance;
    const after = await traced(losing([job, failed]), 'gear-oil');
    expect(hose(after)).toBeLessThan(0.5 * hose(await traced(losing(), 'gear-oil')));
  });

  it('never asks again for what could not be told, and is not moved by it', async () => {
    const folder = losing();
    const before = await traced(folder, 'gear-oil');
    await say(folder, 'record', 'clue', 'item=gear-oil', `clue=${before.next!.clue}`, 'seen=cannot tell');
    const after = await traced(folder, 'gear-oil');
    expect(after.looks.map(({ clue }) => clue)).not.toContain(before.next!.clue);
    expect(after.causes[0]!.chance).toBeCloseTo(before.causes[0]!.chance, 6);
  });

  it.each([
    ['fuel', { class: 'wet' }, 'fuel leak'],
    ['gear-oil', { class: 'falls' }, 'falls'],
  ] as const)('says that a leak of %s cannot be lived with', async (item, leak, bar) => {
    const folder = losing([
      { kind: 'dip', at: day(0.05), fluid: item, share: 0.5 },
      { kind: 'leak', at: day(0.04), item, ...leak },
    ]);
    expect((await traced(folder, item)).liveWith!.bars).toEqual([bar]);
    expect((await say(folder, 'trace', item)).out).toMatch(/cannot be/u);
  });

  it('keeps a clue no table knows, says so and leaves it out', async () => {
    const stray: Draft = { kind: 'clue', at: day(0.05), item: 'gear-oil', clue: 'green-smoke', seen: true };
    const document = await traced(losing([stray]), 'gear-oil');
    expect(document.unknownClues).toEqual(['green-smoke']);
    expect(document.causes).toEqual((await traced(losing(), 'gear-oil')).causes);
  });

  it.each([
    [['trace'], 64, 'the id of what to trace'],
    [['trace', 'gear-oli'], 66, 'Try: gear-oil'],
    [['trace', 'water'], 66, 'no table to trace "water" by'],
    [['trace', 'main'], 64, 'overheating or will-not-start'],
    [['trace', 'main', 'overheatign'], 64, 'Try: overheating'],
    [['trace', 'gear-oil', 'opening=38mm'], 64, 'opening=<size> depth=<under water>'],
    [['trace', 'gear-oil', 'hole=38mm'], 64, 'hole'],
    [['schema', 'tracign'], 64, 'Try: tracing'],
  ])('%j is status %i: %s', async (args, status, told) => {
    const found = await say(losing(), ...args);
    expect(found.status).toBe(status);
    expect(found.err).toContain(told);
    expect(found.out).toBe('');
  });

  it('uses the owner\u2019s tables, and says what is wrong with one beside the answer', async () => {
    const [ours] = ownTables();
    const folder = {
      ...losing(),
      tracing: { 'mine.json': JSON.stringify({ ...ours, title: 'my box' }), 'bad.json': '{' },
    };
    const { status, out, err } = await say(folder, 'trace', 'gear-oil');
    expect(status).toBe(0);
    expect(out).toContain('my box');
    expect(err).toContain('tracing/bad.json');
  });

  it('sets what an opening lets in against what a pump takes out', async () => {
    const document = await traced(losing(), 'gear-oil', 'opening=38mm', 'depth=0.5m', 'pump=3000');
    expect(document.flooding!.inflowLPerMinute).toBeCloseTo(127.9, 0);
    expect(document.flooding).toMatchObject({ pumpedLPerMinute: 25, keepsUp: false });
  });
});
