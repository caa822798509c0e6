import type { Spare } from '../boat/spare.ts';
import type { DemandBelief } from '../inference/belief.ts';
import { gammaDraws } from '../maths/gamma-draws.ts';
import type { Passages } from './passages.ts';
import type { Room } from './room.ts';

/** The unplanned uses of a spare to come, drawn once: all its what-ifs are made of these. One value a passage. */
export interface DemandAhead {
  readonly spare: Spare;
  readonly engines: readonly string[];
  /** Uses expected from leaving to the end of the stretch besides those of motoring. */
  readonly stretch: Float64Array;
  /** Uses expected in an hour of motoring; null where they go by the day. */
  readonly motoring: Float64Array | null;
  /** Uses expected in an hour of waiting. */
  readonly waiting: Float64Array;
}

/** Draws a rate a passage from its gamma (model 5) and lays it along the engine hours or days ahead. */
export function demandAhead(spare: Spare, demand: DemandBelief, passages: Passages): DemandAhead {
  const { count, hours, reserveDays, streamOf } = passages;
  const rate = gammaDraws(demand, count, streamOf(`spare/${spare.id}/rate`));
  const byDay = demand.per === 'day';
  const aDay = passages.waiting.get(demand.engine ?? '');
  const stretch = new Float64Array(count);
  const waiting = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const engineHoursADay = aDay?.[i] ?? 0;
    stretch[i] = rate[i]! * (byDay ? hours[i]! / 24 + reserveDays : engineHoursADay * reserveDays);
    waiting[i] = (rate[i]! * (byDay ? 1 : engineHoursADay)) / 24;
  }
  const engines = demand.engine === null ? [] : [demand.engine];
  return { spare, engines, stretch, motoring: engines.length === 0 ? null : rate, waiting };
}

/** Uses expected from leaving now to the end of the stretch. */
export function usesExpected({ engines, stretch, motoring }: DemandAhead, passages: Passages): Float64Array {
  if (motoring === null) return stretch;
  const motored = passages.motoredBy(engines, 0);
  return stretch.map((uses, i) => uses + motoring[i]! * motored[i]!);
}

/** What is left of the stock, in uses: they are Poisson, so the (stock + 1)-th comes after gamma(stock + 1, 1) of unit exposure. */
export function roomForUses(ahead: DemandAhead, stock: number, { streamOf }: Passages): Room {
  const { spare, stretch, waiting, motoring, engines } = ahead;
  const usesLasting = { shape: Math.floor(Math.max(0, stock)) + 1, rate: 1 };
  const at0 = gammaDraws(usesLasting, stretch.length, streamOf(`spare/${spare.id}/uses`));
  for (let i = 0; i < at0.length; i += 1) at0[i] = at0[i]! - stretch[i]!;
  return { at0, anHour: waiting, anEngineHour: motoring, engines };
}

/** Model 5: the stock for at least 95 in 100. */
export const COVER = 0.95;
/** No locker holds more; where even that falls short no figure is named. */
const MOST_STOCK = 1000;

/** The smallest stock that covers the uses with that chance, from the uses expected in each passage: the mean of their Poisson chances. */
export function coverStock(expected: Float64Array, chance = COVER): number | null {
  const chances = expected.map((uses) => Math.exp(-uses));
  let covered = 0;
  for (let stock = 0; stock <= MOST_STOCK; stock += 1) {
    if (stock > 0)
      for (let i = 0; i < chances.length; i += 1) chances[i] = (chances[i]! * expected[i]!) / stock;
    covered += chances.reduce((sum, one) => sum + one, 0);
    if (covered >= chance * expected.length) return stock;
  }
  return null;
}
