import { readPeriod } from '../../source/inference/period.ts';
import { usualPriors } from '../../source/inference/rate-prior.ts';
import { lifeOf } from '../../source/inference/readings.ts';
import { daySpread, runSpread } from '../../source/inference/spreads.ts';
import { stream } from '../../source/maths/stream.ts';
import { rateFrom } from './calibration.ts';
import { exactRanges } from './exact-posterior.ts';
import { aFluid, FluidLife, hoursOfADay } from './fluid-life.ts';

/** The mean width of the 80 % ranges of run and rest over so many invented fluids, as a part of the exact posterior's; those read off the stick are left out. */
export function widthsAgainstExact(count: number, vary: number, seed: number): { run: number; rest: number } {
  const fluid = aFluid({ vary });
  const priors = usualPriors(fluid, fluid.loss.leakChance);
  const told = { run: 0, rest: 0 };
  const exact = { run: 0, rest: 0 };
  for (let i = 0; i < count; i += 1) {
    const chance = stream(seed + i, `widths/${vary}`);
    const life = new FluidLife(fluid, chance, {
      run: rateFrom(priors.run, chance),
      rest: rateFrom(priors.rest, chance),
    });
    const mostHours = 4 * chance.uniform();
    life.read();
    for (let readings = 2 + Math.floor(18 * chance.uniform()); readings > 0; readings -= 1) {
      const days = chance.uniform() < 0.7 ? 1 : 1 + 3 * chance.uniform();
      life.live(days * hoursOfADay(chance, mostHours), days);
      life.read();
      if (life.needsTopUp()) life.topUp();
    }
    const { readings, end } = lifeOf(fluid, life.events);
    if (readings.some(({ off }) => off !== 'on')) continue;
    const ranges = exactRanges(readings, priors, vary, 10 * (fluid.full - fluid.low));
    const { posterior } = readPeriod({
      fluid,
      priors,
      start: null,
      readings,
      end: { at: life.at, runHours: life.runHours, ...end },
      ways: new Map(),
    });
    const [run, rest] = [runSpread(posterior), daySpread(posterior, 0)];
    told.run += run.p90 - run.p10;
    told.rest += rest.p90 - rest.p10;
    exact.run += ranges.run.p90 - ranges.run.p10;
    exact.rest += ranges.rest.p90 - ranges.rest.p10;
  }
  return { run: told.run / exact.run, rest: told.rest / exact.rest };
}
