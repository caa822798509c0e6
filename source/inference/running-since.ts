import { enginesOf } from '../boat/boat.ts';
import type { Engine } from '../boat/engine.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Condition } from '../condition/condition.ts';
import { msUnderWay, weightedHours } from '../condition/running.ts';
import { MS_A_DAY } from '../condition/time.ts';
import type { WaitingBelief } from './belief.ts';

/** Running that no meter tells of yet, for one engine: so many days at its running hours a day. An hour at anchor is weighed as the fluid weighs it. */
export interface Unmetered {
  readonly engine: string;
  readonly days: number;
}

/** What ran between the fluid's last reading and now, past each engine's last meter reading (model 2). */
export function unmeteredSince(fluid: Fluid, readAt: number, condition: Condition): readonly Unmetered[] {
  const underWay = msUnderWay(condition.spans);
  return [...new Set(enginesOf(fluid))].flatMap((engine) => {
    const from = Math.max(readAt, condition.engines.get(engine)?.readAt ?? readAt);
    const moving = underWay(condition.at) - underWay(from);
    const days = (moving + fluid.atAnchor * (condition.at - from - moving)) / MS_A_DAY;
    return days > 0 ? [{ engine, days }] : [];
  });
}

/** Mean and variance of those hours, from what is thought of each engine's hours a day. */
export function hoursUnmetered(
  unmetered: readonly Unmetered[],
  waiting: ReadonlyMap<string, WaitingBelief>,
): { readonly mean: number; readonly variance: number } {
  let [mean, variance] = [0, 0];
  for (const { engine, days } of unmetered) {
    const aDay = waiting.get(engine);
    if (aDay === undefined || 'fixed' in aDay) continue;
    mean += (days * aDay.shape) / aDay.rate;
    variance += (days * days * aDay.shape) / aDay.rate ** 2;
  }
  return { mean, variance };
}

/** A usual day is one of the last fortnight: model 3. */
const FORTNIGHT_MS = 14 * MS_A_DAY;

/** Weighted running hours a day over the last fortnight its engines' meters tell of; where they tell of less than a day, the usual hours of the boat file, lying. */
export function hoursOnAUsualDay(fluid: Fluid, engines: readonly Engine[], condition: Condition): number {
  let hours = 0;
  for (const id of new Set(enginesOf(fluid))) {
    const record = condition.engines.get(id)!;
    const to = record.readAt;
    const from = Math.max(record.readings[0]?.at ?? 0, (to ?? 0) - FORTNIGHT_MS);
    if (to === null || to - from < MS_A_DAY) {
      hours += fluid.atAnchor * engines.find((engine) => engine.id === id)!.usualHoursPerDay;
      continue;
    }
    const at = weightedHours({ ...fluid, engine: id }, condition.engines, condition.spans);
    hours += ((at(to) - at(from)) * MS_A_DAY) / (to - from);
  }
  return hours;
}
