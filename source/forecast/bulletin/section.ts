import type { Issue } from './issue-time.ts';
import type { TimedPeriod } from './periods.ts';

/** The part of a text that is for one stretch of water, whatever form the text has. */
export interface Section {
  /** What the caller chooses by and legs name: zone codes, the names of areas. Empty where the text names none. */
  readonly zones: readonly string[];
  /** The waters in words; empty where nothing is said beyond `zones`. */
  readonly name: string;
  readonly issue: Issue | null;
  /** DDHHMM, UTC. */
  readonly purge: string | null;
  readonly headlines: readonly string[];
  /** Whether the text goes on to its end mark. */
  readonly ended: boolean;
  /** The waters are so wide that no boat meets all of it. */
  readonly wide: boolean;
  /** No hours were said, and a day is taken. */
  readonly hoursTaken: boolean;
  readonly periods: (issue: Issue) => readonly TimedPeriod[];
}
