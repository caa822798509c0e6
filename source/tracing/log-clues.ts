import type { Boat } from '../boat/boat.ts';
import { enginesOf } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import { MS_A_DAY } from '../condition/time.ts';
import type { Beliefs, FluidBelief } from '../inference/belief.ts';
import { pumpRate } from './pump.ts';
import type { LogFact } from './table.ts';

/** What the log answers by itself of a thing: whether each fact was seen; those it cannot tell are not there. */
export function logClues(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  id: string,
): ReadonlyMap<LogFact, boolean> {
  const facts = new Map<LogFact, boolean>();
  const tell = (fact: LogFact, yes: boolean, no: boolean) => {
    if (yes || no) facts.set(fact, yes);
  };
  const fluid = beliefs.fluids.get(id);
  if (fluid) fluidFacts(boat, condition, fluid, id, tell);
  const anode = beliefs.anodes.get(id);
  if (anode) {
    const { wearsFast, noWearDays, wrongAlloy } = anode;
    tell('wears-fast', (wearsFast ?? 0) >= SURE, wearsFast !== null && wearsFast <= 1 - SURE);
    tell('no-wear', noWearDays !== null, anode.share.mean + 2 * anode.share.sd < 1);
    tell('wrong-alloy', wrongAlloy, !wrongAlloy);
  }
  const check = condition.checks.get(id);
  const rate = check ? pumpRate(check) : null;
  if (rate) tell('pumps-more', rate.before !== null && rate.perDay > rate.before.perDay, true);
  return facts;
}

/** Model 3.6: a kind of leak is told from here on; and 9 in 10 for all else. */
const TOLD_APART = 0.8;
const SURE = 0.9;
/** Fewer readings than this tell nothing of a rise. Judgement. */
const READINGS = 3;
/** What begins within so many days of work began with it. Judgement. */
const AFTER_WORK_MS = 14 * MS_A_DAY;

function fluidFacts(
  boat: Boat,
  condition: Condition,
  { leak, rising, leakClass, changedAt }: FluidBelief,
  id: string,
  tell: (fact: LogFact, yes: boolean, no: boolean) => void,
): void {
  const { events } = condition.fluids.get(id)!;
  const lying = Math.max(leak.lying, leak.both) >= TOLD_APART;
  const onlyRunning = leak.running >= TOLD_APART;
  tell('only-running', onlyRunning, lying);
  tell('lying-too', lying, onlyRunning);
  const readings = events.filter((event) => event.kind === 'reading');
  if (readings.length >= READINGS) tell('rising', rising >= SURE, rising <= 1 - SURE);
  tell('no-drops', leakClass === 'dry', leakClass !== null);
  const off = readings.at(-1)?.off;
  tell('over-full', off === 'above', off !== undefined);
  if (changedAt === null) return;
  const since = (at: number) => at <= changedAt && changedAt - at <= AFTER_WORK_MS;
  const engines = enginesOf(boat.fluids.find((fluid) => fluid.id === id)!);
  const work =
    events.some((event) => (event.kind === 'job' || event.kind === 'change') && since(event.at)) ||
    boat.services.some(
      ({ id: service, engine }) =>
        (engine === undefined || engines.includes(engine)) &&
        condition.services.get(service)!.done.some(({ at }) => since(at)),
    );
  tell('sudden', true, false);
  tell('after-work', work, true);
}
