import type { Trouble } from '../trouble.ts';
import type { Timed } from './past.ts';
import { MS_AN_HOUR } from './time.ts';

type Reading = Timed<'hours'>;

/**
 * The readings of one meter, in order, that can all be true, and those that cannot: a meter never goes back and cannot run more hours
 * than there were. As few as can be are left out, so a slip among good readings is the one to go; of two that contradict each other
 * the earlier is believed until a third settles it.
 */
export function steadyReadings(readings: readonly Reading[]): {
  readonly kept: readonly Reading[];
  readonly odd: readonly Trouble[];
} {
  if (readings.every((reading, i) => i === 0 || follows(readings[i - 1]!, reading))) {
    return { kept: readings, odd: [] };
  }
  const kept = longestChain(readings);
  return { kept: readings.filter((_, i) => kept.has(i)), odd: oddOnes(readings, kept) };
}

/** Room for readings entered by date alone, whose true times of day lie anywhere in the day. */
const SLACK_HOURS = 24;

function follows(before: Reading, after: Reading): boolean {
  const ran = after.entry.reading - before.entry.reading;
  return ran >= 0 && ran <= (after.at - before.at) / MS_AN_HOUR + SLACK_HOURS;
}

/** A longer run of slips than this may cost good readings on its far side, never the longest chain before it. */
const LOOK_BACK = 32;

/** Indices of the longest chain in which each reading follows the one before; the earliest such chain. */
function longestChain(readings: readonly Reading[]): ReadonlySet<number> {
  const length = new Int32Array(readings.length).fill(1);
  const before = new Int32Array(readings.length).fill(-1);
  let leader = 0;
  for (let j = 1; j < readings.length; j += 1) {
    const tryAfter = (i: number) => {
      if (length[i]! < length[j]! || !follows(readings[i]!, readings[j]!)) return;
      length[j] = length[i]! + 1;
      before[j] = i;
    };
    tryAfter(leader);
    for (let i = Math.max(0, j - LOOK_BACK); i < j; i += 1) tryAfter(i);
    if (length[j]! > length[leader]!) leader = j;
  }
  const chain = new Set<number>();
  for (let i = leader; i >= 0; i = before[i]!) chain.add(i);
  return chain;
}

function oddOnes(readings: readonly Reading[], kept: ReadonlySet<number>): readonly Trouble[] {
  const odd: Trouble[] = [];
  let before: Reading | undefined;
  readings.forEach((reading, i) => {
    if (kept.has(i)) before = reading;
    else odd.push(oddOne(reading, against(reading, before, readings, kept, i)));
  });
  return odd;
}

/** The kept reading it contradicts: the one before it, else the one after. */
function against(
  reading: Reading,
  before: Reading | undefined,
  readings: readonly Reading[],
  kept: ReadonlySet<number>,
  from: number,
): Reading {
  if (before !== undefined && !follows(before, reading)) return before;
  for (let i = from + 1; i < readings.length; i += 1) if (kept.has(i)) return readings[i]!;
  return before!;
}

function oddOne(reading: Reading, than: Reading): Trouble {
  const { id, at, engine, reading: value } = reading.entry;
  const other = than.entry.reading;
  const wentBack = reading.order < than.order ? value > other : value < other;
  const why = wentBack ? 'meter back' : 'meter leapt';
  return { kind: 'odd reading', entry: id, at, item: engine, value, unit: 'h', than: other, why };
}
