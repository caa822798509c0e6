import type { Anode } from '../boat/anode.ts';
import type { Fitting } from '../condition/condition.ts';
import { logNormalCdf } from '../maths/normal.ts';

const MS_A_DAY = 86_400_000;

/** What the looks at one anode say of its wear w, share a day, up to a factor: exp(pull w - w² information / 2); and its share, when first known of, given w. */
export interface WearSeen {
  /** The instant its share is known from, ms: when it was fitted, or first looked at. Null: neither. */
  readonly from: number | null;
  readonly information: number;
  readonly pull: number;
  /** Share then: mean + slope w, and its sd. 1, exactly, for one whose fitting is known. */
  readonly start: { readonly mean: number; readonly slope: number; readonly sd: number };
}

/** Of an anode never seen new: at the first look it may have any share. Judgement: between nothing and new at one sd. */
const ANY_SHARE = { mean: 0.5, sd: 0.5 };

/** Least squares of share = start - wear * days over its looks, each with its own sd (model 4). */
export function wearSeen({ fittedAt, looks }: Fitting): WearSeen {
  const from = fittedAt ?? looks[0]?.at ?? null;
  if (from === null) return { from, information: 0, pull: 0, start: { mean: 1, slope: 0, sd: 0 } };
  const prior = fittedAt === null ? 1 / ANY_SHARE.sd ** 2 : Number.POSITIVE_INFINITY;
  let [weight, weightDays, weightDaysDays, weightShare, weightDaysShare] = [0, 0, 0, 0, 0];
  const reference = fittedAt === null ? ANY_SHARE.mean : 1;
  for (const { at, share, sd } of looks) {
    const days = (at - from) / MS_A_DAY;
    const own = 1 / (sd * sd);
    weight += own;
    weightDays += own * days;
    weightDaysDays += own * days * days;
    weightShare += own * (share - reference);
    weightDaysShare += own * days * (share - reference);
  }
  const all = weight + prior;
  return {
    from,
    information: weightDaysDays - (weightDays * weightDays) / all,
    pull: -weightDaysShare + (weightDays * weightShare) / all,
    start: { mean: reference + weightShare / all, slope: weightDays / all, sd: 1 / Math.sqrt(all) },
  };
}

/** The place's usual wear as points, ln of how likely each is, up to what all share, and their weights, which add up to 1. */
export interface PlaceWear {
  readonly usual: Float64Array;
  readonly logs: Float64Array;
  readonly weights: Float64Array;
}

/** One anode's wear, given the place's usual: normal with this sd as a part of the usual: model 4. */
const OWN_SPREAD = 0.3;
/** The place's usual wear strays by this part of what the boat file says: model 4. */
const PLACE_SPREAD = 0.5;
/** Points over the usual wear, evenly in its logarithm, from a thousandth of what the boat file says to a hundred times it: a pencil can go in a week. */
const POINTS = 400;
const LEAST = 1e-3;
const MOST = 1e2;

/** What is thought of a place's usual wear before an anode was seen there (model 4). */
export function usualWear(anode: Anode): PlaceWear {
  const expected = (1 - anode.limit) / anode.usualLifeDays;
  const usual = Float64Array.from(
    { length: POINTS },
    (_, i) => expected * LEAST * (MOST / LEAST) ** (i / (POINTS - 1)),
  );
  const logs = usual.map((wear) => {
    const z = (wear / expected - 1) / PLACE_SPREAD;
    // Evenly in the logarithm: each point stands for a stretch as long as itself.
    return Math.log(wear) - 0.5 * z * z;
  });
  return weighed(usual, logs);
}

/** The same once one anode more was seen there. */
export function wearAfter({ usual, logs }: PlaceWear, seen: WearSeen): PlaceWear {
  return weighed(
    usual,
    logs.map((log, i) => log + foretold(usual[i]!, seen)),
  );
}

function weighed(usual: Float64Array, logs: Float64Array): PlaceWear {
  const top = logs.reduce((most, value) => Math.max(most, value));
  const weights = logs.map((value) => Math.exp(value - top));
  const total = weights.reduce((sum, value) => sum + value, 0);
  return { usual, logs, weights: weights.map((value) => value / total) };
}

/** An anode's own wear given the place's usual and what was seen of it: normal before truncation at zero. */
export function ownWear(usual: number, { information, pull }: WearSeen): { mean: number; sd: number } {
  const prior = 1 / (OWN_SPREAD * usual) ** 2;
  const precision = prior + information;
  return { mean: (prior * usual + pull) / precision, sd: 1 / Math.sqrt(precision) };
}

const LOG_ABOVE_ZERO = logNormalCdf(1 / OWN_SPREAD);

/** ln of how well a usual wear foretold what was seen of one anode, up to what all usual wears share: the chance of it if that anode did not wear at all is 0 on this scale. */
export function foretold(usual: number, seen: WearSeen): number {
  const { mean, sd } = ownWear(usual, seen);
  const prior = OWN_SPREAD * usual;
  const z = mean / sd;
  return Math.log(sd / prior) + 0.5 * (z * z - OWN_SPREAD ** -2) + logNormalCdf(z) - LOG_ABOVE_ZERO;
}
