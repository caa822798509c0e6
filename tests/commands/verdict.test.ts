import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { verdictPage } from '../../source/words/page.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aFolder, anOutside, type FolderInMemory, NOW } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };

async function verdict(folder: FolderInMemory, args: readonly string[] = [], now = NOW) {
  const outside = anOutside({ folders: { '.': folder }, now });
  const status = await run(['verdict', ...args], outside, noScreens);
  return { status, ...outside.written() };
}

async function documentOf(folder: FolderInMemory, args: readonly string[] = []) {
  const { status, out, err } = await verdict(folder, ['--json', ...args]);
  expect(err).toBe('');
  return { status, document: JSON.parse(out) };
}

/** The healthy log without what one entry kind says of one thing, and with other entries instead. */
const logWith = (...drafts: readonly Draft[]) => aFolder(sandpiper, [...healthyLog, ...drafts]);
const at = '2026-02-03T07:10:00Z';

describe('the verdict', () => {
  it('is hold, with 1, when she is fit and there is no forecast', async () => {
    const { status, document } = await documentOf(aFolder(sandpiper, healthyLog));
    expect(status).toBe(1);
    expect(document.verdict).toBe('hold');
    expect(document.score.boat).toBeGreaterThanOrEqual(95);
    expect(document.reasons.join(' ')).toContain('no forecast');
  });

  it('is not ready, with 2, when something vital is short, and says what', async () => {
    const { status, document } = await documentOf(logWith({ kind: 'dip', at, fluid: 'fuel', level: 50 }));
    expect(status).toBe(2);
    expect(document.verdict).toBe('not ready');
    expect(document.reasons[0]).toMatch(/^Fuel: /);
    expect(document.toGetReady.map(({ item }: { item: string }) => item)).toContain('fuel');
  });

  it('is not ready, with 2, on an empty log', async () => {
    const { status, document } = await documentOf(aFolder(sandpiper));
    expect({ status, verdict: document.verdict }).toEqual({ status: 2, verdict: 'not ready' });
    expect(document.reasons.join(' ')).toContain('The log is empty');
  });

  it('is not ready, with 2, where nothing is marked vital', async () => {
    const nothingVital = aFolder(
      { ...sandpiper, fluids: [], anodes: [], services: [], checks: [] },
      healthyLog.filter(({ kind }) => kind === 'hours' || kind === 'count'),
    );
    const { status, document } = await documentOf(nothingVital);
    expect(status).toBe(2);
    expect(document.reasons.join(' ')).toContain('marked vital');
  });

  it('is put into words with the same figures as the document', async () => {
    const { document } = await documentOf(aFolder(sandpiper, healthyLog));
    const { status, out, err } = await verdict(aFolder(sandpiper, healthyLog));
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toBe(verdictPage(document, 80, 'UTC'));
  });

  it('is the same to the byte when asked again, and another one by another seed', async () => {
    const folder = logWith({ kind: 'dip', at, fluid: 'fuel', level: 90 });
    const first = await verdict(folder, ['--json']);
    expect(await verdict(folder, ['--json'])).toEqual(first);
    const other = await verdict(folder, ['--json', '--seed', '2']);
    expect(JSON.parse(other.out).seed).toBe(2);
    expect(JSON.parse(other.out).items).not.toEqual(JSON.parse(first.out).items);
  });

  it('does not see what happened after the instant asked for', async () => {
    const later = { kind: 'dip', at: '2026-02-03T09:00:00Z', fluid: 'fuel', level: 1 } as const;
    const asOf = ['--json', '--at', '2026-02-03T08:00Z'];
    const without = await verdict(aFolder(sandpiper, healthyLog), asOf, Date.UTC(2026, 1, 4));
    expect(await verdict(logWith(later), asOf, Date.UTC(2026, 1, 4))).toEqual(without);
    expect(JSON.parse(without.out).at).toBe('2026-02-03T08:00:00Z');
  });

  it('says that something is missing when a line of the log is damaged', async () => {
    const folder = aFolder(sandpiper, healthyLog);
    folder.lines[5]![40]! ^= 1;
    const { document } = await documentOf(folder);
    expect(document.trouble).toHaveLength(1);
    expect(document.trouble[0]).toContain('log/aaaaaaaa.ndjson, line 6');
    expect(document.reasons.join(' ')).toContain('hoveshort inspect');
  });

  it('leaves an entry that names an unknown item out, and says so', async () => {
    const { document } = await documentOf(logWith({ kind: 'dip', at, fluid: 'gear-oill', share: 0 }));
    expect(document.trouble.join('\n')).toContain('"gear-oill"');
    const gearOil = document.items.find(({ id }: { id: string }) => id === 'gear-oil');
    expect(gearOil.state).toBe('fit');
  });
});

describe('the document', () => {
  it('has the keys of the contract in their order, its own at the end', async () => {
    const { document } = await documentOf(aFolder(sandpiper, healthyLog));
    expect(Object.keys(document)).toEqual([
      'format',
      'boat',
      'at',
      'passage',
      'forecast',
      'verdict',
      'reasons',
      'threshold',
      'score',
      'windows',
      'weatherAlone',
      'best',
      'endurance',
      'staying',
      'shelter',
      'curve',
      'items',
      'toGetReady',
      'whileHeld',
      'beforeLeaving',
      'trouble',
      'simulations',
      'seed',
      'engines',
      'underWaySince',
      'anchorage',
      'toGetReadySuffices',
      'reasonKinds',
      'sky',
      'weather',
      'forecasts',
      'now',
      'met',
      'decision',
    ]);
    const common = ['id', 'kind', 'name', 'consequence', 'state', 'chance', 'goodUntil', 'now', 'reason'];
    const keysOf = (kind: string) =>
      Object.keys(document.items.find((item: { kind: string }) => item.kind === kind));
    expect(keysOf('fluid')).toEqual([
      ...common,
      'run',
      'rest',
      'usualDay',
      'leak',
      'split',
      'lookAgain',
      'job',
      'lookedAt',
      'low',
      'full',
      'reserve',
      'atEnd',
      'levels',
      'toSettle',
      'lasts',
      'reasons',
    ]);
    expect(keysOf('anode')).toEqual([
      ...common,
      'wear',
      'reachesLimit',
      'lookedAt',
      'limit',
      'currentA',
      'reasons',
    ]);
    expect(keysOf('spare')).toEqual([
      ...common,
      'count',
      'rate',
      'shortChance',
      'cover95',
      'buy',
      'lookedAt',
      'unit',
      'locker',
      'cost',
      'reasons',
    ]);
    expect(keysOf('service')).toEqual([...common, 'dueHours', 'dueOn', 'lookedAt', 'dueInHours', 'reasons']);
    expect(keysOf('check')).toEqual([...common, 'lookedAt', 'ok', 'when', 'reasons']);
    expect(keysOf('dated')).toEqual([...common, 'lookedAt', 'expires', 'reasons']);
  });

  it('has figures of at most 6 significant digits and instants in UTC to the second', async () => {
    const { document } = await documentOf(aFolder(sandpiper, healthyLog));
    const figures: number[] = [];
    const texts: string[] = [];
    JSON.parse(JSON.stringify(document), (_key, value) => {
      if (typeof value === 'number') figures.push(value);
      if (typeof value === 'string') texts.push(value);
      return value;
    });
    expect(figures.filter((figure) => Number(figure.toPrecision(6)) !== figure)).toEqual([]);
    const instants = texts.filter((text) => /^\d{4}-\d\d-\d\dT/.test(text));
    expect(instants.length).toBeGreaterThan(10);
    expect(instants.filter((text) => !/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/.test(text))).toEqual([]);
  });

  it('keeps what a terminal might obey out of its text, and the value as it was', async () => {
    const name = 'Sand\u202epiper\u009b31m\u{e0041}';
    const { out } = await verdict(aFolder({ ...sandpiper, name }, healthyLog), ['--json']);
    expect(out).not.toMatch(/[\u202e\u009b\u{e0041}]/u);
    expect(JSON.parse(out).boat).toBe(name);
    const page = await verdict(aFolder({ ...sandpiper, name }, healthyLog));
    expect(page.out).not.toMatch(/[\u202e\u009b\u{e0041}]/u);
  });
});
