import type { Boat } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { EntryOf } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import type { Condition, FluidEvent, FluidRecord } from './condition.ts';
import { isOutsideTank, levelOf, mostIn } from './level.ts';
import type { Past, Timed } from './past.ts';
import { weightedHours } from './running.ts';

/** Each fluid's readings, top-ups, changes, jobs and leaks. Levels no tank can show go to `doubts` and are left out. */
export function fluidRecords(
  boat: Boat,
  past: Past,
  { engines, spans, at }: Pick<Condition, 'engines' | 'spans' | 'at'>,
  doubts: Trouble[],
): ReadonlyMap<string, FluidRecord> {
  return new Map(
    boat.fluids.map((fluid) => {
      const runHoursAt = weightedHours(fluid, engines, spans);
      const events = past
        .about(fluid.id)
        .flatMap((timed) => eventsOf(fluid, timed, runHoursAt(timed.at), doubts));
      const lookedAt = events.findLast(({ kind }) => kind === 'reading')?.at ?? null;
      return [fluid.id, { events, lookedAt, runHours: runHoursAt(at) }];
    }),
  );
}

function eventsOf(
  fluid: Fluid,
  { at, entry }: Timed,
  runHours: number,
  doubts: Trouble[],
): readonly FluidEvent[] {
  const when = { entry: entry.id, at, runHours };
  switch (entry.kind) {
    case 'dip':
      return soundReading(fluid, entry, doubts, { ...when, ...dipped(fluid, entry) });
    case 'topup': {
      const topup: FluidEvent = { ...when, kind: 'topup', amountL: entry.amount };
      const levelL = levelOf(fluid, entry);
      if (levelL === null) return [topup];
      const after = { ...when, ...filledTo(fluid, levelL), after: 'topup' as const };
      return [topup, ...soundReading(fluid, entry, doubts, after)];
    }
    case 'change': {
      const levelL = levelOf(fluid, entry) ?? fluid.full;
      const after = { ...when, ...filledTo(fluid, levelL), after: 'change' as const };
      return [{ ...when, kind: 'change' }, ...soundReading(fluid, entry, doubts, after)];
    }
    case 'job':
      return [{ ...when, kind: 'job', text: entry.text }];
    case 'leak':
      return [{ ...when, kind: 'leak', class: entry.class, dropsPerMinute: entry.dropsPerMinute ?? null }];
    default:
      return [];
  }
}

/** Off the stick, the level is that of the stick's end: the low mark below, the full mark above. */
function dipped(fluid: Fluid, entry: EntryOf<'dip'>) {
  const end = entry.off === 'above' ? fluid.full : fluid.low;
  return {
    kind: 'reading' as const,
    levelL: entry.off === undefined ? (levelOf(fluid, entry) ?? end) : end,
    off: entry.off ?? ('on' as const),
    how: entry.how ?? fluid.how ?? null,
    rough: entry.rough ?? false,
    after: null,
  };
}

function filledTo(fluid: Fluid, levelL: number) {
  return { kind: 'reading' as const, levelL, off: 'on' as const, how: fluid.how ?? null, rough: false };
}

function soundReading(
  fluid: Fluid,
  entry: EntryOf<'dip' | 'topup' | 'change'>,
  doubts: Trouble[],
  reading: FluidEvent & { kind: 'reading' },
): readonly FluidEvent[] {
  const value = reading.levelL;
  if (!isOutsideTank(fluid, value)) return [reading];
  doubts.push({
    kind: 'odd reading',
    entry: entry.id,
    at: entry.at,
    item: fluid.id,
    value,
    unit: 'L',
    than: value < 0 ? 0 : mostIn(fluid),
    why: 'outside tank',
  });
  return [];
}
