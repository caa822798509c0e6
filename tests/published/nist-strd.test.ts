// NIST Statistical Reference Datasets (StRD), linear least squares: Norris, NoInt1, NoInt2, Filip, Wampler1, Wampler3,
// certified values; www.itl.nist.gov/div898/strd/lls. The fit is the very one that splits a fluid's loss.
import { test } from 'vitest';
import { leastSquares, residualSd, standardErrors } from '../../source/maths/least-squares.ts';
import { expectNear, testPublished } from '../helpers/published.ts';

interface Certified {
  readonly estimates: readonly number[];
  readonly standardErrors: readonly number[];
  readonly residualSd: number;
}

function powers(x: readonly number[], from: number, count: number): Float64Array[] {
  return Array.from({ length: count }, (_, k) => Float64Array.from(x, (value) => value ** (from + k)));
}

function check(
  columns: readonly Float64Array[],
  y: readonly number[],
  certified: Certified,
  relative: number,
): void {
  const fit = leastSquares(columns, Float64Array.from(y));
  const sd = residualSd(fit);
  const near = { relative, absolute: relative };
  expectNear(sd, certified.residualSd, { ...near, what: 'residual sd' });
  const errors = standardErrors(fit, sd);
  for (const [j, estimate] of certified.estimates.entries()) {
    expectNear(fit.estimates[j]!, estimate, { ...near, what: `b${j}` });
    expectNear(errors[j]!, certified.standardErrors[j]!, { ...near, what: `standard error of b${j}` });
  }
}

test('Norris: a line', () => {
  const x = [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
    447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3,
    229.2, 669.1, 448.9, 0.5,
  ];
  const y = [
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
    448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6,
    228.9, 668.4, 449.2, 0.2,
  ];
  const certified = {
    estimates: [-0.262323073774029, 1.00211681802045],
    standardErrors: [0.232818234301152, 0.429796848199937e-3],
    residualSd: 0.884796396144373,
  };
  check(powers(x, 0, 2), y, certified, 1e-11);
});

test('NoInt1: a line through nothing', () => {
  const x = Array.from({ length: 11 }, (_, i) => 60 + i);
  const y = Array.from({ length: 11 }, (_, i) => 130 + i);
  const certified = {
    estimates: [2.07438016528926],
    standardErrors: [0.0165289256198347],
    residualSd: 3.56753034006338,
  };
  check(powers(x, 1, 1), y, certified, 1e-12);
});

test('Wampler3: a fifth-degree curve whose columns nearly hang together, with large errors', () => {
  const x = Array.from({ length: 21 }, (_, i) => i);
  const y = [
    760, -2042, 2111, -1684, 3888, 1858, 11379, 17560, 39287, 64382, 113159, 175108, 273291, 400186, 581243,
    811568, 1121004, 1506550, 2002767, 2611612, 3369180,
  ];
  const certified = {
    estimates: [1, 1, 1, 1, 1, 1],
    standardErrors: [
      2152.3262467817, 2363.55173469681, 779.343524331583, 101.47550755035, 5.64566512170752,
      0.112324854679312,
    ],
    residualSd: 2360.14502379268,
  };
  check(powers(x, 0, 6), y, certified, 1e-7);
});

interface Dataset {
  readonly intercept: boolean;
  readonly p: number;
  readonly input: { readonly x: readonly number[]; readonly y: readonly number[] };
  readonly expected: Certified;
  readonly tolerance: { readonly relative: number };
}

for (const name of ['norris', 'noint1', 'noint2', 'filip', 'wampler1', 'wampler3']) {
  testPublished<Dataset>(`${name}, certified`, `statistics/nist-strd-${name}.json`, (dataset) => {
    const columns = powers(dataset.input.x, dataset.intercept ? 0 : 1, dataset.p);
    check(columns, dataset.input.y, dataset.expected, dataset.tolerance.relative);
  });
}
