import { binsOf, boatCase, coverageOf, fluidCase } from '../helpers/calibration.ts';
import { callsOfALeak, everCalledLeaking } from '../helpers/leak-calls.ts';
import { widthsAgainstExact } from '../helpers/widths.ts';

/**
 * Whether what is told of losses, wear and demand comes true as often as it says, over 2,000 invented boats, and how seldom a healthy fluid is called leaking: 300 of them.
 *     node tests/soak/calibration.ts [count] [seed]        the whole is a count of 100,000; a smaller one takes that part of everything
 */
const WHOLE = 100_000;
const share = Number(process.argv[2] ?? WHOLE) / WHOLE;
const seed = Number(process.argv[3] ?? 1);
const some = (whole: number) =>
  Array.from({ length: Math.max(1, Math.round(whole * share)) }, (_, i) => seed * 1_000_003 + i);
/** Bounds are for the whole; fewer stray further. */
const slack = 1 / Math.sqrt(Math.min(1, share));
let failed = 0;

for (const vary of [0, 0.3, 0.6]) {
  const cases = some(2000).map((one) => fluidCase(one, vary));
  const told = cases.flatMap((one) => one.told);
  const whole = told.map((one) => ({ ...one, what: `${one.what.split(',')[0]!}, in all` }));
  for (const [what, { share: held, of }] of coverageOf([...told, ...whole])) {
    const bounded = !what.startsWith('level') && what.endsWith('in all');
    say(
      `${100 * vary} % daily variation: the 80 % range of ${what}`,
      `${percent(held)} of ${of}`,
      !bounded || isEighty(held),
    );
  }
  for (const { of, told: chance, held } of binsOf(cases.map((one) => one.foretold))) {
    if (of === 0) continue;
    const near = Math.abs(held - of * chance) < 3.5 * Math.sqrt(of * chance * (1 - chance)) + 1;
    say(
      `${100 * vary} % daily variation: told to hold, ${percent(chance)}`,
      `${percent(held / of)} of ${of}`,
      near,
    );
  }
  const { run, rest } = widthsAgainstExact(some(1000).length, vary, seed);
  const near = Math.max(Math.abs(run - 1), Math.abs(rest - 1)) < 0.05 * slack;
  say(
    `${100 * vary} % daily variation: widths beside the exact posterior's`,
    `run ${run.toFixed(3)}, rest ${rest.toFixed(3)}`,
    near,
  );
}
for (const [what, { share: held, of }] of coverageOf(some(2000).flatMap(boatCase)))
  say(`the 80 % range of ${what}`, `${percent(held)} of ${of}`, isEighty(held));

const healthy = some(300);
const called = healthy.filter((one) => everCalledLeaking(one, 1)).length;
say(
  'healthy fluids ever called leaking in a year of daily readings',
  `${called} of ${healthy.length}`,
  called <= Math.ceil((healthy.length / 15) * slack),
);
for (const [kind, readings] of [
  ['lying', 5],
  ['running', 9],
] as const) {
  const calls = some(1000).map((one) => callsOfALeak(one, kind));
  const part = (holds: (call: (typeof calls)[number]) => boolean) =>
    calls.filter(holds).length / calls.length;
  const soon = part(({ at }) => at <= readings);
  const right = part(({ right: is }) => is);
  say(`leaks ${kind} called within ${readings} readings`, percent(soon), soon >= 1 - 0.1 * slack);
  say(`leaks ${kind} of the right kind within 13 readings`, percent(right), right >= 1 - 0.15 * slack);
}
process.exitCode = failed > 0 ? 1 : 0;

function say(what: string, found: string, holds: boolean): void {
  if (!holds) failed += 1;
  process.stdout.write(`calibration  ${what}: ${found}${holds ? '' : '  OUT OF BOUNDS'}\n`);
}

function isEighty(held: number): boolean {
  return Math.abs(held - 0.8) <= 0.03 * slack;
}

function percent(part: number): string {
  return `${(100 * part).toFixed(1)} %`;
}
