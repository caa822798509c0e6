/**
 * x^shape * e^-x / Gamma(shape + 1), for shape > 0 and x > 0, without overflow and right to about 1e-13 of itself for shapes up to 10,000.
 * The Poisson chance of k events is this with shape k; the gamma density is shape / x times this.
 *
 * Method: C. Loader, "Fast and accurate computation of binomial probabilities" (2000): Stirling's error and the deviance apart, so that large
 * terms cancel on paper instead of in the machine.
 */
export function gammaTerm(shape: number, x: number): number {
  return Math.exp(-stirlingError(shape) - deviance(shape, x)) / Math.sqrt(2 * Math.PI * shape);
}

/** ln Gamma(a + 1) less Stirling's formula for it, (a + 1/2) ln a - a + ln sqrt(2 pi), for a > 0. */
export function stirlingError(a: number): number {
  let error = 0;
  let at = a;
  while (at < 12) {
    error += (at + 0.5) * Math.log1p(1 / at) - 1;
    at += 1;
  }
  const inverseSquare = 1 / (at * at);
  return error + stirlingSeries.reduceRight((sum, coefficient) => sum * inverseSquare + coefficient, 0) / at;
}

/** Abramowitz and Stegun 6.1.41. */
const stirlingSeries = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];

/** ln Gamma(a + 1), for a > 0. */
export function logGammaOfNext(a: number): number {
  return stirlingError(a) + (a + 0.5) * Math.log(a) - a + 0.5 * Math.log(2 * Math.PI);
}

/** a ln(a / x) + x - a: how far x lies from a, 0 where they meet. */
export function deviance(a: number, x: number): number {
  const apart = (x - a) / a;
  return apart < -0.5 ? a * (Math.log(a / x) + apart) : a * (apart - Math.log1p(apart));
}
