/** Beliefs over hypotheses are chances that add up to 1, in the order of the hypotheses. */
export type Chances = readonly number[];

/**
 * Bayes' rule for one clue: `shown` is the chance that each hypothesis shows it. `seen` may lie between 0 and 1 for a clue that is itself in doubt
 * (Pearl's virtual evidence). Where no hypothesis allows what was found, the beliefs stay as they are.
 */
export function updated(beliefs: Chances, shown: Chances, seen: boolean | number): Chances {
  const sure = typeof seen === 'boolean' ? Number(seen) : seen;
  return (
    normalised(beliefs.map((belief, h) => belief * (sure * shown[h]! + (1 - sure) * (1 - shown[h]!)))) ??
    beliefs
  );
}

/** What adds up to 1 in the same proportions; null where all is nothing. */
export function normalised(weights: readonly number[]): Chances | null {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return total > 0 ? weights.map((weight) => weight / total) : null;
}

/**
 * The chance that a clue shows when some causes stand at once, each showing it by itself with its own chance, and it may be there without them (`leak`): noisy-OR.
 * Source: Pearl, "Probabilistic Reasoning in Intelligent Systems" (1988), 4.3.2; the leak: Henrion (1989); from memory.
 */
export function noisyOr(chances: readonly number[], leak: number): number {
  return 1 - chances.reduce((missed, chance) => missed * (1 - chance), 1 - leak);
}

/** Entropy in bits; what cannot be adds nothing. */
export function entropyBits(beliefs: Chances): number {
  return beliefs.reduce((sum, belief) => (belief > 0 ? sum - belief * Math.log2(belief) : sum), 0);
}

/**
 * The bits a look is expected to tell: `outcomes[k][h]` is the chance of outcome k under hypothesis h. Exactly 0 where every hypothesis shows the same.
 * Source: Shannon's mutual information; Quinlan's information gain.
 */
export function expectedBits(beliefs: Chances, outcomes: readonly Chances[]): number {
  const says = outcomes.some((outcome) =>
    outcome.some((chance, h) => beliefs[h]! > 0 && chance !== outcome[firstPossible(beliefs)]),
  );
  if (!says) return 0;
  const left = outcomes.reduce((sum, outcome) => {
    const joint = beliefs.map((belief, h) => belief * outcome[h]!);
    const chance = joint.reduce((total, one) => total + one, 0);
    return chance > 0 ? sum + chance * entropyBits(joint.map((one) => one / chance)) : sum;
  }, 0);
  return Math.max(0, entropyBits(beliefs) - left);
}

function firstPossible(beliefs: Chances): number {
  return beliefs.findIndex((belief) => belief > 0);
}
