import { assert } from '../trouble.ts';
import { logNormalCdf, logNormalUpperTail, normalCdf, normalHazard, normalUpperTail } from './normal.ts';
import { normalQuantile } from './normal-quantile.ts';
import { gaussLegendre } from './quadrature.ts';

/** What is known before truncation, and the bounds (in the same unit); `high` may be Infinity, `low` -Infinity. */
export interface Bounds {
  readonly mean: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
}

/** A normal of which only the part between two bounds is left. */
export interface TruncatedNormal {
  readonly mean: number;
  readonly variance: number;
  /** Natural log of the share of the whole normal that lies between the bounds. */
  readonly logMass: number;
  density(x: number): number;
  cdf(x: number): number;
  /** The value below which a share p lies: given a uniform, a draw. */
  quantile(p: number): number;
}

/**
 * The normal truncated between two bounds, right however far out the bounds lie and however narrow they are.
 *
 * Mean, variance and mass by quadrature of the density relative to its highest point between the bounds: every term is positive, so nothing cancels
 * (the textbook formulas subtract nearly equal numbers in the tails). Cdf and quantile from whichever tail is the smaller.
 */
export function truncatedNormal(bounds: Bounds): TruncatedNormal {
  const { mean, sd } = bounds;
  assert(sd > 0 && bounds.high > bounds.low, 'a normal is truncated to nothing');
  const low = (bounds.low - mean) / sd;
  const high = (bounds.high - mean) / sd;
  const moments = momentsBetween(low, high);
  const quantile = standardQuantile(low, high);
  return {
    mean: within(mean + sd * moments.mean, bounds),
    variance: sd * sd * moments.variance,
    logMass: moments.logMass,
    density(x) {
      const z = (x - mean) / sd;
      return z < low || z > high ? 0 : Math.exp(-z * z * 0.5 - logRootOfTwoPi - moments.logMass) / sd;
    },
    cdf: (x) => standardCdf(Math.min(Math.max((x - mean) / sd, low), high), low, high),
    quantile: (p) => within(mean + sd * quantile(p), bounds),
  };
}

const logRootOfTwoPi = 0.5 * Math.log(2 * Math.PI);

function within(x: number, { low, high }: Bounds): number {
  return Math.min(Math.max(x, low), high);
}

/** Past this fall in log density below the highest point, what is left is under 1e-17 of the whole. */
const fallToNothing = 40;

function momentsBetween(low: number, high: number): { mean: number; variance: number; logMass: number } {
  const peak = Math.min(Math.max(0, low), high);
  const reach = Math.sqrt(peak * peak + 2 * fallToNothing);
  const from = Math.max(low, -reach);
  const to = Math.min(high, reach);
  const { places, weights } = gaussLegendre(64);
  const half = (to - from) / 2;
  const offsets = places.map((place) => from - peak + half * (place + 1));
  const shares = weights.map((weight, i) => weight * Math.exp(-offsets[i]! * (peak + 0.5 * offsets[i]!)));
  const sum = shares.reduce((total, share) => total + share, 0);
  const offset = shares.reduce((total, share, i) => total + share * offsets[i]!, 0) / sum;
  const variance = shares.reduce((total, share, i) => total + share * (offsets[i]! - offset) ** 2, 0) / sum;
  return {
    mean: peak + offset,
    variance,
    logMass: Math.log(sum * half) - 0.5 * peak * peak - logRootOfTwoPi,
  };
}

function standardCdf(z: number, low: number, high: number): number {
  if (low >= 0) {
    const atLow = logNormalUpperTail(low);
    return Math.expm1(logNormalUpperTail(z) - atLow) / Math.expm1(logNormalUpperTail(high) - atLow);
  }
  if (high <= 0) {
    const [atLow, atZ, atHigh] = [logNormalCdf(low), logNormalCdf(z), logNormalCdf(high)];
    return (Math.exp(atZ - atHigh) * Math.expm1(atLow - atZ)) / Math.expm1(atLow - atHigh);
  }
  const total = normalCdf(high) - normalCdf(low);
  if (z < 0) return (normalCdf(z) - normalCdf(low)) / total;
  return 1 - (normalUpperTail(z) - normalUpperTail(high)) / total;
}

/** Beyond this many sds tails come near the smallest number there is, and are handled by their logs. */
const farOut = 30;

function standardQuantile(low: number, high: number): (p: number) => number {
  if (low > farOut) return farQuantile(low, high);
  if (high < -farOut) {
    const mirrored = farQuantile(-high, -low);
    return (p) => -mirrored(1 - p);
  }
  const below = { low: normalCdf(low), high: normalCdf(high) };
  const above = { low: normalUpperTail(low), high: normalUpperTail(high) };
  return (p) => {
    const share = (1 - p) * below.low + p * below.high;
    return share < 0.5 ? normalQuantile(share) : -normalQuantile((1 - p) * above.low + p * above.high);
  };
}

function farQuantile(low: number, high: number): (p: number) => number {
  const logAtLow = logNormalUpperTail(low);
  const ratio = Math.exp(logNormalUpperTail(high) - logAtLow);
  return (p) => {
    const logTail = logAtLow + Math.log(1 - p + p * ratio);
    let z = Math.sqrt(low * low + 2 * (logAtLow - logTail));
    for (let step = 0; step < 4; step += 1) z += (logNormalUpperTail(z) - logTail) / normalHazard(z);
    return z;
  };
}
