/** What a campaign found out. All is well when nothing was lost and nothing went undetected. */
export interface Outcome {
  count: number;
  /** Saved and then not there, or there without having been saved; for a parser, thrown at. */
  lost: number;
  /** Wrong, and nothing was said; for a parser, too slow or too large; for a planted fault, not found out. */
  undetected: number;
  /** The first few of either, with the seed that shows them again. */
  readonly notes: string[];
}

/** One row of tries, each by its own seed, so that any of them can be shown again. */
export interface Campaign {
  readonly name: string;
  /** How many tries a whole run makes. */
  readonly count: number;
  run(count: number, seed: number): Promise<Outcome>;
}

const mostNotes = 5;

export function anOutcome(): Outcome {
  return { count: 0, lost: 0, undetected: 0, notes: [] };
}

export function found(outcome: Outcome, what: 'lost' | 'undetected', note: string): void {
  outcome[what] += 1;
  if (outcome.notes.length < mostNotes) outcome.notes.push(note);
}
