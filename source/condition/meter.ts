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
  return { kept: readings.filter((_, i) => kept[i]), odd: oddOnes(readings, kept) };
}

/** Room for readings entered by date alone, whose true times of day lie anywhere in the day. */
const SLACK_HOURS = 24;

function follows(before: Reading, after: Reading): boolean {
  const ran = after.entry.reading - before.entry.reading;
  return ran >= 0 && ran <= (after.at - before.at) / MS_AN_HOUR + SLACK_HOURS;
}

/** A longer run of slips than this may cost good readings on its far side, never the longest chain before it. */
const LOOK_BACK = 32;

/** Whether each reading is in the longest chain in which one follows the other; the earliest such chain. */
function longestChain(readings: readonly Reading[]): readonly boolean[] {
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
  const chain = new Array<boolean>(readings.length).fill(false);
  for (let i = leader; i >= 0; i = before[i]!) chain[i] = true;
  return chain;
}

function oddOnes(readings: readonly Reading[], kept: readonly boolean[]): readonly Trouble[] {
  const before = nearestKept(readings, kept);
  const after = nearestKept(readings.toReversed(), kept.toReversed()).toReversed();
  return readings.flatMap((reading, i) => {
    if (kept[i]) return [];
    const earlier = before[i];
    const contradicted = earlier === undefined || follows(earlier, reading) ? after[i] : earlier;
    return [oddOne(reading, contradicted ?? earlier!)];
  });
}

/** For each reading the last kept one up to it, in the order given. */
function nearestKept(
  readings: readonly Reading[],
  kept: readonly boolean[],
): readonly (Reading | undefined)[] {
  let last: Reading | undefined;
  return readings.map((reading, i) => {
    if (kept[i]) last = reading;
    return last;
  });
}

function oddOne(reading: Reading, than: Reading): Trouble {
  const { id, at, engine, reading: value } = reading.entry;
  const other = than.entry.reading;
  const wentBack = reading.order < than.order ? value > other : value < other;
  const why = wentBack ? 'meter back' : 'meter leapt';
  return { kind: 'odd reading', entry: id, at, item: engine, value, unit: 'h', than: other, why };
}
