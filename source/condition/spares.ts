import { type Boat, engineOf } from '../boat/boat.ts';
import type { Spare } from '../boat/spare.ts';
import type { Entry } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import type { EngineRecord, SpareRecord } from './condition.ts';
import { isOutsideTank, levelOf } from './level.ts';
import { merged, type Past, type Timed } from './past.ts';
import { MS_A_DAY } from './time.ts';

/**
 * What is aboard of each spare, and its unplanned uses. A count stays null until `count` or `stow` gives one; uses before that are
 * still uses. Using more than is aboard leaves none and goes to `doubts`.
 */
export function spareRecords(
  boat: Boat,
  past: Past,
  { engines, at }: { engines: ReadonlyMap<string, EngineRecord>; at: number },
  doubts: Trouble[],
): ReadonlyMap<string, SpareRecord> {
  return new Map(
    boat.spares.map((spare) => {
      const told = merged([past.about(spare.id), past.takenFrom.get(spare.id) ?? []]);
      const engine = engineFor(boat, spare, engines);
      const uses = told.flatMap(({ at: when, entry }) =>
        entry.kind === 'use'
          ? [{ at: when, count: entry.count, engineHours: engine?.hoursAt(when) ?? null }]
          : [],
      );
      const lookedAt = told.findLast(({ entry }) => entry.kind === 'count' || entry.kind === 'stow')?.at;
      const history = countsOf(boat, spare, told, doubts);
      const first = told[0]?.at ?? at;
      return [
        spare.id,
        {
          count: history.at(-1)?.count ?? null,
          uses,
          history,
          exposure: exposureOf(spare, engine, first, at),
          lookedAt: lookedAt ?? null,
        },
      ];
    }),
  );
}

function engineFor(
  boat: Boat,
  { expected }: Spare,
  engines: ReadonlyMap<string, EngineRecord>,
): EngineRecord | null {
  if (expected?.perEngineHour === undefined) return null;
  const id = engineOf(boat, expected.engine);
  return id === null ? null : (engines.get(id) ?? null);
}

function exposureOf({ expected }: Spare, engine: EngineRecord | null, from: number, to: number): number {
  if (expected?.perEngineHour === undefined) return (to - from) / MS_A_DAY;
  return engine === null ? 0 : engine.hoursAt(to) - engine.hoursAt(from);
}

function countsOf(
  boat: Boat,
  spare: Spare,
  told: readonly Timed[],
  doubts: Trouble[],
): SpareRecord['history'] {
  const history: { at: number; count: number }[] = [];
  let count: number | null = null;
  for (const { at, entry } of told) {
    const left = countAfter(boat, spare.id, count, entry);
    if (left === null) continue;
    if (left < 0) doubts.push(belowZero(spare, entry, left));
    count = Math.max(0, left);
    history.push({ at, count });
  }
  return history;
}

function countAfter(boat: Boat, spare: string, before: number | null, entry: Entry): number | null {
  if (entry.kind === 'count') return entry.count;
  if (entry.kind === 'stow') return withoutDust((before ?? 0) + entry.count);
  const taken = takenBy(boat, spare, entry);
  return before === null || taken === null ? null : withoutDust(before - taken);
}

/** How much of the spare an entry takes, in the spare's unit; null where it takes none. */
function takenBy(boat: Boat, spare: string, entry: Entry): number | null {
  switch (entry.kind) {
    case 'use':
      return entry.count;
    case 'topup':
      return entry.amount;
    case 'renew':
      return 1;
    case 'change':
      return filledBy(boat, entry);
    case 'service':
      return (entry.uses ?? []).reduce((sum, used) => sum + (used.spare === spare ? used.count : 0), 0);
    default:
      return null;
  }
}

/** A drained sump takes the level it is filled to; the full mark where none is given, or none that can be. */
function filledBy(boat: Boat, change: Entry & { kind: 'change' }): number | null {
  const fluid = boat.fluids.find(({ id }) => id === change.fluid);
  if (fluid === undefined) return null;
  const level = levelOf(fluid, change);
  return level === null || isOutsideTank(fluid, level) ? fluid.full : level;
}

/** Litres added and taken in tenths leave 1e-16 behind, which is not "below zero". */
function withoutDust(count: number): number {
  return Math.round(count * 1e9) / 1e9;
}

function belowZero(spare: Spare, entry: Entry, value: number): Trouble {
  return {
    kind: 'odd reading',
    entry: entry.id,
    at: entry.at,
    item: spare.id,
    value,
    unit: spare.unit,
    than: 0,
    why: 'count below zero',
  };
}
