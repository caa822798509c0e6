import type { Boat } from '../boat/boat.ts';
import type { Trouble } from '../trouble.ts';
import type { Condition, EngineRecord } from './condition.ts';
import { steadyReadings } from './meter.ts';
import type { Past, Timed } from './past.ts';
import { msUnderWay, runUnderWay } from './running.ts';
import { MS_A_DAY } from './time.ts';

/** Each engine's hours by its meter. Readings that cannot be true go to `doubts` and are left out. */
export function engineRecords(
  boat: Boat,
  past: Past,
  spans: Condition['spans'],
  doubts: Trouble[],
): ReadonlyMap<string, EngineRecord> {
  return new Map(boat.engines.map(({ id }) => [id, engineRecord(past.of('hours', id), spans, doubts)]));
}

function engineRecord(
  told: readonly Timed<'hours'>[],
  spans: Condition['spans'],
  doubts: Trouble[],
): EngineRecord {
  const readings = continuous(told, doubts);
  const last = readings.at(-1);
  const hoursAt = linear(readings);
  return {
    readings,
    hours: last?.hours ?? null,
    readAt: last?.at ?? null,
    hoursAt,
    lately: latelyOf(readings, hoursAt, spans),
  };
}

/** Hours go on over a new meter from where the old one was last read. */
function continuous(told: readonly Timed<'hours'>[], doubts: Trouble[]): EngineRecord['readings'] {
  const readings: { at: number; reading: number; hours: number }[] = [];
  for (const meter of metersOf(told)) {
    const { kept, odd } = steadyReadings(meter);
    for (const trouble of odd) doubts.push(trouble);
    const first = kept[0]!.entry.reading;
    const start = readings.at(-1)?.hours ?? first;
    for (const { at, entry } of kept) {
      readings.push({ at, reading: entry.reading, hours: start + (entry.reading - first) });
    }
  }
  return readings;
}

/** The readings meter by meter: `swapped` is the first of a new one. */
function metersOf(told: readonly Timed<'hours'>[]): readonly (readonly Timed<'hours'>[])[] {
  const meters: Timed<'hours'>[][] = [];
  for (const timed of told) {
    const meter = meters.at(-1);
    if (meter === undefined || timed.entry.swapped) meters.push([timed]);
    else meter.push(timed);
  }
  return meters;
}

function linear(readings: EngineRecord['readings']): (at: number) => number {
  return (at) => {
    const after = firstAfter(readings, at);
    if (after === 0) return readings[0]?.hours ?? 0;
    const a = readings[after - 1]!;
    if (after === readings.length) return a.hours;
    const b = readings[after]!;
    return a.hours + ((b.hours - a.hours) * (at - a.at)) / (b.at - a.at);
  };
}

function firstAfter(readings: EngineRecord['readings'], at: number): number {
  let low = 0;
  let high = readings.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (readings[middle]!.at <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** How far back waiting hours are learnt from: model 2. */
const LATELY_MS = 14 * MS_A_DAY;

function latelyOf(
  readings: EngineRecord['readings'],
  hoursAt: (at: number) => number,
  spans: Condition['spans'],
): EngineRecord['lately'] {
  const to = readings.at(-1)?.at;
  if (to === undefined) return { hours: 0, days: 0 };
  const from = Math.max(readings[0]!.at, to - LATELY_MS);
  const underWay = runUnderWay(hoursAt, spans);
  const ran = hoursAt(to) - hoursAt(from) - (underWay(to) - underWay(from));
  const lay = to - from - (msUnderWay(spans)(to) - msUnderWay(spans)(from));
  // All hours run under way leave a rounding error here, which may lie below 0.
  return { hours: Math.max(0, ran), days: lay / MS_A_DAY };
}
