import type { LevelHistory, LevelPoint, Spread } from '../inference/belief.ts';
import { instant, six } from './figures.ts';

/** How a level has gone in the last two months, oldest first, and how it will go. L. */
export interface LevelsDocument {
  /** `below` and `above`: off the stick there, beyond its mark at `value`. */
  readings: { at: string; value: number; off: 'on' | 'below' | 'above' }[];
  /** What was done, by the kinds of entry. */
  done: ({ at: string; kind: 'topup'; amount: number } | { at: string; kind: 'change' | 'job' })[];
  /** The line all readings together make, to now. */
  line: LevelPointDocument[];
  /** Now, and the end of the stretch when leaving now; empty where that is not simulated. */
  ahead: LevelPointDocument[];
}

export interface LevelPointDocument {
  at: string;
  mean: number;
  p10: number;
  p90: number;
}

/** `endL` and `endsAt`: the level at the end of the stretch when leaving now; null where that is not simulated. */
export function levelsDocument(
  { readings, done, line }: LevelHistory,
  { endL, endsAt }: { readonly endL: Spread | null; readonly endsAt: number | null },
): LevelsDocument {
  const told = line.map(pointOf);
  const end = endL === null || endsAt === null ? null : pointOf({ at: endsAt, ...endL });
  return {
    readings: readings.map(({ at, levelL, off }) => ({ at: instant(at), value: six(levelL), off })),
    done: done.map((deed) =>
      deed.kind === 'topup'
        ? { at: instant(deed.at), kind: deed.kind, amount: six(deed.amountL) }
        : { at: instant(deed.at), kind: deed.kind },
    ),
    line: told,
    ahead: end === null ? [] : [...told.slice(-1), end],
  };
}

/** No level is below nothing. */
function pointOf({ at, mean, p10, p90 }: LevelPoint): LevelPointDocument {
  const level = (litres: number) => six(Math.max(0, litres));
  return { at: instant(at), mean: level(mean), p10: level(p10), p90: level(p90) };
}
