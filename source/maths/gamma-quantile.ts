import { gammaCdf, gammaUpperTail } from './gamma.ts';
import { gammaTerm, logGammaOfNext } from './gamma-term.ts';
import { normalQuantile } from './normal-quantile.ts';

/** The value below which a share p of gamma variates of that shape and rate 1 lies, relative error about 1e-13. For a rate r divide by r. */
export function gammaQuantile(p: number, shape: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return Number.POSITIVE_INFINITY;
  return Math.exp(logGammaQuantile(p, 1 - p, shape));
}

/**
 * Natural log of the gamma quantile, given the share below it and the share above it (both, so that neither is lost to rounding).
 * Finite where the quantile itself is too small to be a number.
 *
 * Method: Newton's in ln x on the log of the smaller share. In ln x both logs are concave, so the steps cannot run away.
 * Start: Wilson and Hilferty (1931), or the power law that bounds the cdf from above, whichever is larger.
 */
export function logGammaQuantile(below: number, above: number, shape: number): number {
  const bound = (Math.log(below) + logGammaOfNext(shape)) / shape;
  if (bound < tiny) return bound;
  const lower = below < 0.5;
  const target = Math.log(lower ? below : above);
  let logX = Math.max(
    bound,
    wilsonHilferty(below < 0.5 ? normalQuantile(below) : -normalQuantile(above), shape),
  );
  for (let step = 0; step < 100; step += 1) {
    const x = Math.exp(logX);
    const share = lower ? gammaCdf(x, shape) : gammaUpperTail(x, shape);
    const slope = (shape * gammaTerm(shape, x)) / share;
    const change = (lower ? target - Math.log(share) : Math.log(share) - target) / slope;
    logX += change;
    if (Math.abs(change) < 1e-14 * Math.max(1, Math.abs(logX))) break;
  }
  return logX;
}

/** Below e^-40 the power law is exact to the last digit. */
const tiny = -40;

function wilsonHilferty(z: number, shape: number): number {
  const root = 1 - 1 / (9 * shape) + z / (3 * Math.sqrt(shape));
  return root > 0 ? Math.log(shape) + 3 * Math.log(root) : Number.NEGATIVE_INFINITY;
}
