import type { Candidate } from './actions.ts';

/** A tenth of a decilitre: less is not worth unscrewing a cap for. */
export const LEAST_POURED_L = 0.01;

/**
 * Which of several things can be done with what is aboard and what of it is bought, each as it then is. What takes parts gets them first, in order, or is left out; fluids are topped up with what is left
 * of their stock, each with its share where that is too little for all of them.
 */
export function doable(
  list: readonly Candidate[],
  aboard: (spare: string) => number,
): ReadonlyMap<Candidate, Candidate> {
  const left = new Map<string, number>();
  const leftOf = (spare: string) => left.get(spare) ?? aboard(spare);
  for (const { item, buys } of list) if (buys !== null) left.set(item, leftOf(item) + buys);
  const done = new Map<Candidate, Candidate>();
  for (const candidate of list) {
    if (isPoured(candidate)) continue;
    if (candidate.takes.some(({ spare, count }) => count > leftOf(spare) + DUST)) continue;
    for (const { spare, count } of candidate.takes) left.set(spare, leftOf(spare) - count);
    done.set(candidate, candidate);
  }
  const pours = list.filter(isPoured);
  const wanted = sumBy(pours);
  for (const candidate of pours) {
    const [{ spare }] = candidate.takes;
    const share = Math.min(1, leftOf(spare) / wanted.get(spare)!);
    const pouredL = Math.floor((candidate.pouredL * share + DUST) * 100) / 100;
    if (pouredL >= LEAST_POURED_L)
      done.set(candidate, { ...candidate, pouredL, takes: [{ spare, count: pouredL }] });
  }
  return done;
}

/** Litres added and taken in hundredths leave dust behind. */
const DUST = 1e-9;

interface Pour extends Candidate {
  readonly pouredL: number;
  readonly takes: readonly [{ readonly spare: string; readonly count: number }];
}

/** Poured in from a stock. */
function isPoured(candidate: Candidate): candidate is Pour {
  return candidate.pouredL !== null && candidate.takes.length > 0;
}

function sumBy(pours: readonly Pour[]): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const { takes, pouredL } of pours) sums.set(takes[0].spare, (sums.get(takes[0].spare) ?? 0) + pouredL);
  return sums;
}
