/** Places and weights of a rule on (-1, 1). */
export interface Rule {
  readonly places: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Integral of f from `from` to `to` (both finite) by Gauss-Legendre quadrature, exact for polynomials up to degree 2 * points - 1.
 * For a smooth bump spread over the range 64 points give full precision; split the range at a corner.
 */
export function integral(f: (x: number) => number, from: number, to: number, points = 64): number {
  const { places, weights } = gaussLegendre(points);
  const half = (to - from) / 2;
  const middle = (to + from) / 2;
  let sum = 0;
  for (let i = 0; i < points; i += 1) sum += weights[i]! * f(middle + half * places[i]!);
  return sum * half;
}

/**
 * The Gauss-Legendre rule of that many points: zeros of the Legendre polynomial, found by Newton steps from
 * Tricomi's estimate (Abramowitz and Stegun 25.4.29 and 22.16.6). Each rule is worked out once.
 */
export function gaussLegendre(points: number): Rule {
  const known = rules.get(points);
  if (known) return known;
  const rule = workedOut(points);
  rules.set(points, rule);
  return rule;
}

const rules = new Map<number, Rule>();

function workedOut(points: number): Rule {
  const places = new Float64Array(points);
  const weights = new Float64Array(points);
  for (let i = 0; i < Math.ceil(points / 2); i += 1) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    for (let step = 0; step < 6; step += 1) {
      const { value, slope } = legendre(points, x);
      x -= value / slope;
    }
    const { slope } = legendre(points, x);
    places[i] = -x;
    places[points - 1 - i] = x;
    weights[i] = weights[points - 1 - i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { places, weights };
}

function legendre(degree: number, x: number): { value: number; slope: number } {
  let before = 1;
  let value = x;
  for (let n = 2; n <= degree; n += 1) {
    const next = ((2 * n - 1) * x * value - (n - 1) * before) / n;
    before = value;
    value = next;
  }
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) };
}
