import { describe, expect, it } from 'vitest';
import { type Fluid, fluidSchema } from '../../source/boat/fluid.ts';
import { levelSdOf, readPeriod } from '../../source/inference/period.ts';
import { priorsAfter, usualPriors } from '../../source/inference/rate-prior.ts';
import type { Reading } from '../../source/inference/readings.ts';
import { type Stream, stream } from '../../source/maths/stream.ts';
import { bruteForce } from '../helpers/brute-force.ts';

const DAY = 86_400_000;
const LOGS = 40;
const kinds = [
  'plain',
  'hours and days hand in hand',
  'two readings only',
  'all off the stick',
  'after work',
] as const;

describe('the posterior of run, rest and level is that of plain integration over 200 random logs: means within 2 % of an sd, sds within 2 %', () => {
  it.each(kinds)('%s', (kind) => {
    for (let i = 0; i < LOGS; i += 1) {
      const { fluid, readings, priors } = randomLog(kind, stream(i, `brute force/${kind}`));
      const end = { ...readings.at(-1)!, at: readings.at(-1)!.at + DAY / 3 };
      const { posterior } = readPeriod({ fluid, priors, start: null, readings, end, ways: new Map() });
      const slow = bruteForce({
        readings,
        end: { at: end.at, runHours: end.runHours, pouredL: end.pouredL, fill: end.fill },
        priors,
        vary: fluid.vary,
        levelSd: (reading) => levelSdOf(fluid, reading as Reading),
        waySd: (fluid.full - fluid.low) / 2,
      });
      for (const [name, mean, variance, wanted] of [
        ['run', posterior.run, posterior.varRun, slow.run],
        ['rest', posterior.rest, posterior.varRest, slow.rest],
        ['level', posterior.level, posterior.varLevel, slow.level],
      ] as const) {
        const what = `${kind}, log ${i}: ${name}`;
        expect(Math.abs(mean - wanted.mean) / wanted.sd, `${what}, mean`).toBeLessThan(0.02);
        expect(Math.abs(Math.sqrt(variance) / wanted.sd - 1), `${what}, sd`).toBeLessThan(0.02);
      }
    }
  });
});

/** A litre between the marks, readings straying a twentieth of it; losses usual or large; levels off the stick told so. */
function randomLog(kind: (typeof kinds)[number], chance: Stream) {
  const u = () => chance.uniform();
  const allOff = kind === 'all off the stick';
  const vary = [0, 0.3, 0.6][Math.floor(3 * u())]!;
  const fluid = fluidSchema.parse({ id: 'oil', name: 'Oil', engine: 'main', low: 1, full: 2, vary }) as Fluid;
  const run = u() < 0.5 ? 0.15 * u() : 0.01 * u();
  const rest = u() < 0.5 ? 0.25 * u() : 0.02 * u();
  const count = kind === 'two readings only' ? 2 : 2 + Math.floor((allOff ? 3 : 6) * u());
  // What plain integration can do: one reading off the stick, or several where only the level joins them.
  const plain = vary === 0 && (allOff || u() < 0.3);
  const mostOff = plain ? count : 1;
  const otherWays = !plain && u() < 0.4;
  const readings: Reading[] = [];
  let [level, at, runHours, pouredL, fill, off] = [allOff ? 0.8 : 1.2 + 0.8 * u(), 0, 0, 0, 0, 0];
  for (let i = 0; i < (allOff && !plain ? 1 : count); i += 1) {
    if (i > 0) {
      const together = kind === 'hours and days hand in hand';
      const days = together ? 1 : 0.2 + 2 * u();
      const hours = together ? 1.3 : u() < 0.4 ? 0 : 3 * u();
      at += days * DAY;
      runHours += hours;
      level -= (run * hours + rest * days) * Math.max(0, 1 + vary * chance.normal());
      const poured = u() < 0.2 ? 0.4 : 0;
      pouredL += poured;
      level += poured;
      if (u() < 0.07 && !plain) {
        fill += 1;
        level = 2;
      }
    }
    const sd = u() < 0.15 ? 0.125 : 0.05;
    const seen = level + sd * chance.normal();
    const side = off < mostOff ? (seen < 1 ? 'below' : seen > 2.1 ? 'above' : 'on') : 'on';
    if (side !== 'on') off += 1;
    const levelL = side === 'below' ? 1 : side === 'above' ? 2 : seen;
    const way = otherWays && side === 'on' && u() < 0.4 ? 'stopped-hot' : null;
    readings.push({ at, runHours, pouredL, fill, levelL, off: side, way, sd });
  }
  const before = { run, rest };
  const priors =
    kind === 'after work' ? priorsAfter(fluid, before, u() < 0.5 ? 0 : 0.9) : usualPriors(fluid, 0.1);
  return { fluid, readings, priors };
}
