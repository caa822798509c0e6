import type { Anode } from '../boat/anode.ts';
import type { Boat, Item } from '../boat/boat.ts';
import type { Check } from '../boat/check.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Service } from '../boat/service.ts';
import type { Spare } from '../boat/spare.ts';
import type { Condition } from '../condition/condition.ts';
import { isStale } from '../condition/look.ts';
import type { AnodeBelief, Beliefs, CheckTrend, FluidBelief } from '../inference/belief.ts';
import type { Why } from './answer.ts';
import { standingAnswer } from './checks.ts';
import { endOfDate } from './dated.ts';
import { reserveL } from './fluids.ts';
import { fuelLeaks } from './requirements.ts';
import { dueOf } from './services.ts';

const MS_A_DAY = 86_400_000;
/** Model 1: nine chances in ten; over its full mark a stick shows it as surely (p10). */
const LIKELY = 0.9;
/** Model 1: a date this near is worth watching. */
const DATE_NEAR_DAYS = 30;
/** Model 5: two unplanned uses this close ask what ate the last one. */
const USES_CLOSE_HOURS = 100;

/** What is to be said of one item besides its chance. */
export interface Finding {
  readonly pastLimit: readonly Why[];
  /** Not looked at, or not since work touched it. */
  readonly unseen: readonly Why[];
  /** Whether being unseen bars leaving: a look before leaving and a thing never entered never do, a check that work has touched always does (model 7). */
  readonly unseenBars: 'never' | 'when vital' | 'always';
  readonly watch: readonly Why[];
}

const nothing: Finding = { pastLimit: [], unseen: [], unseenBars: 'when vital', watch: [] };

export function findingOf(boat: Boat, item: Item, condition: Condition, beliefs: Beliefs): Finding {
  switch (item.kind) {
    case 'fluid':
      return fluidFinding(item, condition, beliefs.fluids.get(item.id) ?? null);
    case 'anode':
      return anodeFinding(item, condition, beliefs.anodes.get(item.id) ?? null);
    case 'check':
      return checkFinding(item, condition, beliefs.trends.get(item.id) ?? null);
    default:
      return findingAtOnce(boat, item, condition);
  }
}

/** What counts, meters and the calendar alone tell: nothing of it hangs on what is believed of a rate. */
export function findingAtOnce(
  boat: Boat,
  item: Extract<Item, { kind: 'spare' | 'service' | 'dated' }>,
  condition: Condition,
): Finding {
  switch (item.kind) {
    case 'spare':
      return spareFinding(item, condition);
    case 'service':
      return serviceFinding(boat, item, condition);
    case 'dated':
      return datedFinding(condition.dated.get(item.id)!.expires, condition.at);
  }
}

function fluidFinding(fluid: Fluid, condition: Condition, belief: FluidBelief | null): Finding {
  const { events, lookedAt } = condition.fluids.get(fluid.id)!;
  if (belief === null) return { ...nothing, unseen: [{ why: 'never looked at' }] };
  const pastLimit: Why[] = [];
  if (fuelLeaks(fluid, belief.leakClass)) pastLimit.push({ why: 'fuel leak' });
  const limit = reserveL(fluid);
  if (belief.level.mean < limit)
    pastLimit.push({ why: 'past limit', value: Math.max(0, belief.level.mean), limit, unit: 'L' });
  const watch: Why[] = [];
  if (belief.changedAt !== null) watch.push({ why: 'changed', at: belief.changedAt });
  if (belief.rising >= LIKELY) watch.push({ why: 'rising', chance: belief.rising });
  if (!fluid.fuel && (belief.leakClass === 'drops' || belief.leakClass === 'falls'))
    watch.push({ why: 'leak', class: belief.leakClass });
  const last = events.findLast((event) => event.kind === 'reading');
  if (last?.off === 'above' || (fluid.low > 0 && belief.level.p10 > fluid.full))
    watch.push({ why: 'over full' });
  return { ...nothing, pastLimit, unseen: stale(fluid, lookedAt, condition.at), watch };
}

function anodeFinding(anode: Anode, condition: Condition, belief: AnodeBelief | null): Finding {
  if (belief === null) return { ...nothing, unseen: [{ why: 'never looked at' }] };
  const pastLimit: Why[] = [];
  if (belief.flakes) pastLimit.push({ why: 'flakes' });
  if (belief.share.mean < anode.limit)
    pastLimit.push({ why: 'past limit', value: belief.share.mean, limit: anode.limit, unit: 'share' });
  const watch: Why[] = [];
  if (belief.wearsFast !== null && belief.wearsFast >= LIKELY)
    watch.push({ why: 'wears fast', chance: belief.wearsFast });
  if (belief.noWearDays !== null) watch.push({ why: 'no wear', days: belief.noWearDays });
  if (belief.wrongAlloy) watch.push({ why: 'wrong alloy', metal: anode.metal, water: anode.water });
  const { lookedAt } = condition.anodes.get(anode.id)!;
  return { ...nothing, pastLimit, unseen: stale(anode, lookedAt, condition.at), watch };
}

function spareFinding(spare: Spare, condition: Condition): Finding {
  const { count, uses } = condition.spares.get(spare.id)!;
  if (count === null) return { ...nothing, unseen: [{ why: 'not counted' }], unseenBars: 'never' };
  const watch: Why[] = [];
  if (spare.wanted !== undefined && count < spare.wanted)
    watch.push({ why: 'below wanted', count, wanted: spare.wanted });
  const [before, last] = uses.slice(-2);
  if (before && last && before.engineHours !== null && last.engineHours !== null) {
    const hours = last.engineHours - before.engineHours;
    if (hours <= USES_CLOSE_HOURS) watch.push({ why: 'used twice', hours });
  }
  return { ...nothing, watch };
}

function serviceFinding(boat: Boat, service: Service, condition: Condition): Finding {
  const { done } = condition.services.get(service.id)!;
  if (done.length === 0) return { ...nothing, unseen: [{ why: 'never done' }], unseenBars: 'never' };
  const due = dueOf(boat, service, condition);
  const overHours = due.hours === null || due.nowHours === null ? 0 : due.nowHours - due.hours;
  const overDays = due.on === null ? 0 : (condition.at - due.on) / MS_A_DAY;
  if (overHours <= 0 && overDays <= 0) return nothing;
  const overdue: Why = {
    why: 'overdue',
    hours: overHours > 0 ? overHours : null,
    days: overDays > 0 ? overDays : null,
  };
  const past = overHours > service.graceHours || overDays > service.graceDays;
  const watch = service.uses.flatMap(({ spare, count }): Why[] => {
    const aboard = condition.spares.get(spare)?.count ?? null;
    return (aboard ?? 0) < count ? [{ why: 'parts not aboard', spare, wants: count, aboard }] : [];
  });
  return past ? { ...nothing, pastLimit: [overdue], watch } : { ...nothing, watch: [overdue, ...watch] };
}

function checkFinding(check: Check, condition: Condition, trend: CheckTrend | null): Finding {
  const record = condition.checks.get(check.id)!;
  if (record.unsettledBy !== null) {
    const { item, at } = record.unsettledBy;
    return { ...nothing, unseen: [{ why: 'unsettled', by: item, at }], unseenBars: 'always' };
  }
  const answer = standingAnswer(check, record);
  if (answer === null && check.when === 'leaving')
    return { ...nothing, unseen: [{ why: 'before leaving' }], unseenBars: 'never' };
  const { unit = null, atLeast = null, atMost = null } = check;
  const pastLimit: Why[] =
    answer?.ok === false ? [{ why: 'wrong answer', value: answer.value, unit, atLeast, atMost }] : [];
  const watch: Why[] = trend === null ? [] : [{ why: 'drifts', ...trend, unit }];
  return { ...nothing, pastLimit, unseen: stale(check, record.lookedAt, condition.at), watch };
}

function datedFinding(expires: string | null, at: number): Finding {
  if (expires === null) return { ...nothing, unseen: [{ why: 'not entered' }], unseenBars: 'never' };
  const days = (endOfDate(expires) - at) / MS_A_DAY;
  if (days < 0) return { ...nothing, pastLimit: [{ why: 'expired', expires }] };
  return days <= DATE_NEAR_DAYS ? { ...nothing, watch: [{ why: 'expires soon', expires, days }] } : nothing;
}

function stale(
  item: { readonly everyDays?: number | undefined },
  lookedAt: number | null,
  at: number,
): Why[] {
  if (lookedAt === null) return [{ why: 'never looked at' }];
  if (item.everyDays === undefined || !isStale(item.everyDays, lookedAt, at)) return [];
  return [{ why: 'looked at long ago', days: (at - lookedAt) / MS_A_DAY, everyDays: item.everyDays }];
}
