const rootOfTwoPi = Math.sqrt(2 * Math.PI);
const logRootOfTwoPi = Math.log(rootOfTwoPi);

/** Density of the standard normal. */
export function normalDensity(x: number): number {
  return Math.exp(-x * x * 0.5) / rootOfTwoPi;
}

/** Chance that a standard normal lies below x. Right to about 1e-13 of itself in the lower tail, down to x = -37. */
export function normalCdf(x: number): number {
  return normalUpperTail(-x);
}

/** Chance that a standard normal lies above x, right to about 1e-13 of itself however small: never take 1 minus a cdf instead. */
export function normalUpperTail(x: number): number {
  return x < 0 ? 1 - normalUpperTail(-x) : millsRatio(x) * normalDensity(x);
}

/** Natural log of `normalCdf(x)`, for any x: where the chance itself would be 0, the log still holds. */
export function logNormalCdf(x: number): number {
  return logNormalUpperTail(-x);
}

/** Natural log of `normalUpperTail(x)`, for any x. */
export function logNormalUpperTail(x: number): number {
  if (x < 0) return Math.log1p(-normalUpperTail(-x));
  return Math.log(millsRatio(x)) - x * x * 0.5 - logRootOfTwoPi;
}

/** Density over upper tail: how fast the tail falls, relative to itself. For any x. */
export function normalHazard(x: number): number {
  return x < 0 ? normalDensity(x) / normalUpperTail(x) : 1 / millsRatio(x);
}

/**
 * Upper tail over density, for x >= 0, relative error about 1e-15.
 *
 * Method and coefficients: W. J. Cody, "Rational Chebyshev approximations for the error function", Mathematics of Computation 23 (1969), 631-637,
 * in the form for the normal integral of W. J. Cody, ACM Transactions on Mathematical Software 19 (1993), 22-32.
 */
function millsRatio(x: number): number {
  if (x <= 0.67448975) return (0.5 - x * ratioAt(x * x, near)) / normalDensity(x);
  if (x <= Math.sqrt(32)) return ratioAt(x, middle) * rootOfTwoPi;
  const inverseSquare = 1 / (x * x);
  return (1 - rootOfTwoPi * inverseSquare * ratioAt(inverseSquare, far)) / x;
}

/** Two polynomials, coefficients from the highest power down. */
interface Ratio {
  readonly above: readonly number[];
  readonly below: readonly number[];
}

function ratioAt(x: number, { above, below }: Ratio): number {
  let top = 0;
  let bottom = 0;
  for (let i = 0; i < above.length; i += 1) {
    top = top * x + above[i]!;
    bottom = bottom * x + below[i]!;
  }
  return top / bottom;
}

const near: Ratio = {
  above: [0.06568233791820745, 2.2352520354606837, 161.02823106855587, 1067.6894854603709, 18154.98125334356],
  below: [1, 47.202581904688245, 976.0985517377767, 10260.932208618979, 45507.78933502673],
};

const middle: Ratio = {
  above: [
    1.0765576773720192e-8, 0.39894151208813466, 8.883149794388377, 93.50665613217785, 597.2702763948002,
    2494.5375852903726, 6848.190450536283, 11602.65143764735, 9842.714838383978,
  ],
  below: [
    1, 22.266688044328117, 235.387901782625, 1519.3775994075547, 6485.558298266761, 18615.571640885097,
    34900.95272114598, 38912.00328609327, 19685.429676859992,
  ],
};

const far: Ratio = {
  above: [
    0.023073441764940174, 0.215898534057957, 0.12740116116024736, 0.022235277870649807, 0.0014216191932278934,
    0.000029112874951168793,
  ],
  below: [
    1, 1.284260096144911, 0.4682382124808651, 0.06598813786892856, 0.0037823963320275824,
    0.00007297515550839662,
  ],
};
