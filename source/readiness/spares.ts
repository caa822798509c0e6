import type { Spare } from '../boat/spare.ts';
import type { DemandBelief } from '../inference/belief.ts';
import { gammaDraws } from '../maths/gamma-draws.ts';
import type { Latest } from './latest.ts';
import type { Passages } from './passages.ts';

/** The unplanned uses of a spare to come, drawn once: all its what-ifs are made of these. One value a passage. */
export interface DemandAhead {
  readonly spare: Spare;
  /** Uses expected from leaving to the end of the stretch. */
  readonly stretch: Float64Array;
  /** Uses expected in an hour of waiting. */
  readonly waiting: Float64Array;
}

/** Draws a rate a passage from its gamma (model 5) and lays it along the engine hours or days ahead. */
export function demandAhead(spare: Spare, demand: DemandBelief, passages: Passages): DemandAhead {
  const { count, hours, reserveDays, streamOf } = passages;
  const rate = gammaDraws(demand, count, streamOf(`spare/${spare.id}/rate`));
  const motored = passages.motoring.get(demand.engine ?? '');
  const aDay = passages.waiting.get(demand.engine ?? '');
  const stretch = new Float64Array(count);
  const waiting = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const engineHoursADay = aDay?.[i] ?? 0;
    const byDay = demand.per === 'day';
    stretch[i] =
      rate[i]! * (byDay ? hours[i]! / 24 + reserveDays : (motored?.[i] ?? 0) + engineHoursADay * reserveDays);
    waiting[i] = (rate[i]! * (byDay ? 1 : engineHoursADay)) / 24;
  }
  return { spare, stretch, waiting };
}

/** The latest departures at which the stock covers the uses to come: they are Poisson, so the (stock + 1)-th comes after gamma(stock + 1, 1) of unit exposure. */
export function spareLatest(ahead: DemandAhead, stock: number, { streamOf }: Passages): Latest {
  const { stretch, waiting } = ahead;
  const usesLasting = { shape: Math.floor(Math.max(0, stock)) + 1, rate: 1 };
  const latest = gammaDraws(usesLasting, stretch.length, streamOf(`spare/${ahead.spare.id}/uses`));
  for (let i = 0; i < latest.length; i += 1) {
    const room = latest[i]! - stretch[i]!;
    latest[i] = room < 0 ? -Infinity : waiting[i]! > 0 ? room / waiting[i]! : Infinity;
  }
  return latest;
}

const COVER = 0.95;
/** No locker holds more; where even that falls short no figure is named. */
const MOST_STOCK = 1000;

/** The smallest stock that covers the uses in at least 95 of 100 passages, from the uses expected in each: the mean of their Poisson chances. */
export function coverStock(expected: Float64Array): number | null {
  const chances = expected.map((uses) => Math.exp(-uses));
  let covered = 0;
  for (let stock = 0; stock <= MOST_STOCK; stock += 1) {
    if (stock > 0)
      for (let i = 0; i < chances.length; i += 1) chances[i] = (chances[i]! * expected[i]!) / stock;
    covered += chances.reduce((sum, chance) => sum + chance, 0);
    if (covered >= COVER * expected.length) return stock;
  }
  return null;
}
