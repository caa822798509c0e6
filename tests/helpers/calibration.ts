import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Spread } from '../../source/inference/belief.ts';
import { believe } from '../../source/inference/believe.ts';
import { believeFluid } from '../../source/inference/fluid.ts';
import { historyOf } from '../../source/inference/history.ts';
import { type TwoParts, usualPriors } from '../../source/inference/rate-prior.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { gammaQuantile } from '../../source/maths/gamma-quantile.ts';
import { positiveQuantile } from '../../source/maths/positive-normal.ts';
import { type Stream, stream } from '../../source/maths/stream.ts';
import { aBoat, sandpiper } from './a-boat.ts';
import { anEntry } from './an-entry.ts';
import { aFluid, conditionOf, FluidLife, hoursOfADay } from './fluid-life.ts';

const DAY = 86_400_000;

/** A range told of something, and what it really was. */
interface Told {
  readonly what: string;
  readonly truth: number;
  readonly p10: number;
  readonly p90: number;
}

/** A chance told, and whether it came to be. */
interface Foretold {
  readonly chance: number;
  readonly held: boolean;
}

interface FluidCase {
  readonly told: readonly Told[];
  readonly foretold: Foretold;
}

/**
 * One invented fluid: its losses drawn from the very priors it is read with, its life lived and read, on every other one some work done, after which its new losses are drawn from what the
 * readings so far say of them. What is then told of it, against the truth.
 */
export function fluidCase(seed: number, vary: number): FluidCase {
  const chance = stream(seed, `calibration/fluid/${vary}`);
  const fluid = aFluid({ vary });
  const priors = usualPriors(fluid, fluid.loss.leakChance);
  const life = new FluidLife(fluid, chance, {
    run: rateFrom(priors.run, chance),
    rest: rateFrom(priors.rest, chance),
  });
  const mostHours = 4 * chance.uniform();
  const live = (readings: number) => {
    for (let i = 0; i < readings; i += 1) {
      const days = chance.uniform() < 0.7 ? 1 : 1 + 3 * chance.uniform();
      life.live(days * hoursOfADay(chance, mostHours), days);
      life.read();
      if (life.needsTopUp()) life.topUp();
    }
  };
  life.read();
  live(2 + Math.floor(18 * chance.uniform()));
  if (seed % 2 === 1) {
    const { present } = historyOf(fluid, life.events, { at: life.at, runHours: life.runHours })!;
    life.work();
    life.run = positiveQuantile(0, 1.5 * present.posterior.run, chance.uniform());
    life.rest = positiveQuantile(0, 1.5 * present.posterior.rest, chance.uniform());
    live(1 + Math.floor(15 * chance.uniform()));
  }
  const engines = [{ id: 'main', name: 'Main engine', usualHoursPerDay: 1 }];
  const belief = believeFluid(fluid, engines, conditionOf(fluid, life), new Map())!;
  const after = seed % 2 === 1 ? 'after work' : 'before any work';
  const told = [
    tell(`run, ${after}`, life.run, belief.run),
    tell(`rest, ${after}`, life.rest, belief.rest),
    tell(`level, ${after}`, life.levelL, belief.level),
  ];
  const days = 200 ** chance.uniform();
  const hours = days * mostHours * chance.uniform();
  const draws = belief.draw(
    1024,
    (part) => stream(seed, `calibration/draw/${part}`),
    () => new Float64Array(1024),
  );
  const factors = stream(seed, 'calibration/factor');
  let holds = 0;
  for (let i = 0; i < 1024; i += 1) {
    const factor = Math.max(0, 1 + (vary * factors.normal()) / Math.sqrt(days));
    const lost = factor * (draws.run[i]! * hours + draws.rest[i]! * days);
    if (draws.levelL[i]! - lost >= fluid.low) holds += 1;
  }
  life.live(hours, days);
  return { told, foretold: { chance: holds / 1024, held: life.levelL >= fluid.low } };
}

/** One invented place for an anode, and one spare, with what is told of the wear and of the demand. */
export function boatCase(seed: number): readonly Told[] {
  const chance = stream(seed, 'calibration/boat');
  const boat = aBoat();
  const [anode] = boat.anodes;
  const [spare] = boat.spares;
  const entries: Entry[] = [];
  const usual = (1 - anode!.limit) / anode!.usualLifeDays;
  const place = positiveQuantile(usual, usual / 2, chance.uniform());
  let at = Date.UTC(2026, 0, 1);
  let wear = 0;
  for (let fitted = 1 + Math.floor(3 * chance.uniform()); fitted > 0; fitted -= 1) {
    wear = positiveQuantile(place, 0.3 * place, chance.uniform());
    entries.push(anEntry('renew', { anode: anode!.id }, at));
    const fittedAt = at;
    for (let looks = 1 + Math.floor(4 * chance.uniform()); looks > 0; looks -= 1) {
      at += (5 + 25 * chance.uniform()) * DAY;
      const byWeight = chance.uniform() < 0.5;
      const seen = 1 - (wear * (at - fittedAt)) / DAY + (byWeight ? 0.02 : 0.08) * chance.normal();
      const fields = byWeight ? { massKg: seen * anode!.massKg! } : { share: seen };
      entries.push(anEntry('anode', { anode: anode!.id, ...fields }, at));
      if (seen < 0.4) break;
    }
  }
  const rate = 0.02;
  const weight = 1;
  const demand = gammaQuantile(chance.uniform(), weight) * (rate / weight);
  const days = 20 + 300 * chance.uniform();
  const from = at - days * DAY;
  entries.push(anEntry('count', { spare: spare!.id, count: 9 }, from));
  let next = from - (Math.log(chance.uniform()) / demand) * DAY;
  while (next < at) {
    entries.push(anEntry('use', { spare: spare!.id, count: 1 }, next));
    next -= (Math.log(chance.uniform()) / demand) * DAY;
  }
  const perDay = aBoat({
    spares: [{ ...sandpiper.spares[0]!, expected: { perDay: rate, weight } }, ...sandpiper.spares.slice(1)],
  });
  const beliefs = believe(perDay, conditionAt(perDay, entries, at));
  const { shape, rate: exposure } = beliefs.demand.get(spare!.id)!;
  return [
    tell('wear', wear, beliefs.anodes.get(anode!.id)!.wear),
    tell('demand', demand, {
      p10: gammaQuantile(0.1, shape) / exposure,
      p90: gammaQuantile(0.9, shape) / exposure,
    }),
  ];
}

/** Of how many of each thing the range told held the truth. */
export function coverageOf(told: readonly Told[]): ReadonlyMap<string, { share: number; of: number }> {
  return new Map(
    [...Map.groupBy(told, ({ what }) => what)].map(([what, cases]) => {
      const held = cases.filter(({ truth, p10, p90 }) => truth >= p10 && truth <= p90).length;
      return [what, { share: held / cases.length, of: cases.length }];
    }),
  );
}

/** By tenths of the chance told: the mean told, and how often it came to be. */
export function binsOf(foretold: readonly Foretold[]) {
  return Array.from({ length: 10 }, (_, bin) => {
    const own = foretold.filter(({ chance }) => Math.min(9, Math.floor(10 * chance)) === bin);
    const told = own.reduce((sum, { chance }) => sum + chance, 0) / own.length;
    const held = own.filter((one) => one.held).length;
    return { of: own.length, told, held };
  });
}

function tell(what: string, truth: number, { p10, p90 }: Pick<Spread, 'p10' | 'p90'>): Told {
  return { what, truth, p10, p90 };
}

/** A loss drawn from its two-part prior. */
export function rateFrom({ usual, leak }: TwoParts, chance: Stream): number {
  const { mean, sd } = chance.uniform() < leak.chance ? leak : usual;
  return positiveQuantile(mean, sd, chance.uniform());
}
