import type { Anode } from '../boat/anode.ts';
import type { Condition, Fitting } from '../condition/condition.ts';
import { normalQuantile } from '../maths/normal-quantile.ts';
import { positiveCdf, positivePart, positiveQuantile } from '../maths/positive-normal.ts';
import { gaussLegendre } from '../maths/quadrature.ts';
import type { Stream } from '../maths/stream.ts';
import { inOneGo, type Turns } from '../maths/turns.ts';
import { isWrongAlloy, meanCurrentA } from './anode-current.ts';
import type { AnodeBelief, Spread } from './belief.ts';
import { chooserOf } from './chooser.ts';
import { foretold, ownWear, type PlaceWear, usualWear, type WearSeen, wearAfter, wearSeen } from './wear.ts';

const MS_A_DAY = 86_400_000;

/** What the looks at an anode, and at those fitted in its place before, say of it (model 4); null where none was ever seen. */
export function believeAnode(anode: Anode, condition: Condition): AnodeBelief | null {
  return inOneGo(believingAnode(anode, condition));
}

/** The same in turns. */
export function* believingAnode(anode: Anode, condition: Condition): Turns<AnodeBelief | null> {
  const { fittings } = condition.anodes.get(anode.id)!;
  const fitting = fittings.at(-1);
  if (fitting === undefined) return null;
  const seen = fittings.map(wearSeen);
  const now = seen.at(-1)!;
  const earlier = seen.slice(0, -1);
  let before = usualWear(anode);
  for (const one of earlier) {
    before = wearAfter(before, one);
    yield;
  }
  const kinds = kindsOf(wearAfter(before, now), now);
  const days = (condition.at - now.from!) / MS_A_DAY;
  yield;
  const points = pointsOver(kinds, now);
  yield;
  const wear = spreadOf(points, ({ wear: own }) => own);
  yield;
  const share = spreadOf(points, (point) => Math.max(0, point.start - point.wear * days));
  yield;
  const reaches = spreadOf(points, (point) => (point.start - anode.limit) / point.wear);
  yield;
  const on = (afterDays: number) => now.from! + Math.min(afterDays, FOREVER_DAYS) * MS_A_DAY;
  return {
    share,
    wear,
    flakes: fitting.looks.some(({ flakes }) => flakes),
    reachesLimit: { p10: on(reaches.p10), p50: on(reaches.p50), p90: on(reaches.p90) },
    wearsFast: wearsFast(before, earlier, kinds),
    noWearDays: noWearDays(before, fitting, now),
    wrongAlloy: isWrongAlloy(anode),
    currentA: anode.massKg === undefined ? null : meanCurrentA(anode.metal, anode.massKg * wear.mean, 1),
    draw: (count, streamOf) => drawsOf(kinds, now, days, count, streamOf),
  };
}

/** Dates are told no further off: a hundred years. */
const FOREVER_DAYS = 36_525;

/** The anode's own wear: normals above zero, each with its weight. */
interface Kind {
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

/** Weights below this are left out. */
const LIGHT = 1e-8;

function kindsOf({ usual, weights }: PlaceWear, seen: WearSeen): readonly Kind[] {
  return Array.from(usual, (wear, i) => ({ weight: weights[i]!, ...ownWear(wear, seen) })).filter(
    ({ weight }) => weight > LIGHT,
  );
}

interface Point {
  readonly weight: number;
  readonly wear: number;
  readonly start: number;
}

/** Points over wear, and over the share it began with where that is not known. */
const WEAR_POINTS = 8;
const START_POINTS = 5;

function pointsOver(kinds: readonly Kind[], { start }: WearSeen): readonly Point[] {
  const wears = gaussLegendre(WEAR_POINTS);
  const starts = start.sd === 0 ? null : gaussLegendre(START_POINTS);
  return kinds.flatMap(({ weight, mean, sd }) =>
    Array.from(wears.places).flatMap((place, i) => {
      const wear = positiveQuantile(mean, sd, (1 + place) / 2);
      const begun = start.mean + start.slope * wear;
      const share = (weight * wears.weights[i]!) / 2;
      if (starts === null) return [{ weight: share, wear, start: begun }];
      return Array.from(starts.places, (along, j) => ({
        weight: (share * starts.weights[j]!) / 2,
        wear,
        start: begun + start.sd * normalQuantile((1 + along) / 2),
      }));
    }),
  );
}

function spreadOf(
  points: readonly Point[],
  figure: (point: Point) => number,
): Spread & { readonly p50: number } {
  const found = points.map((point) => ({ value: figure(point), weight: point.weight }));
  found.sort((a, b) => a.value - b.value);
  const total = found.reduce((sum, { weight }) => sum + weight, 0);
  const mean = found.reduce((sum, { value, weight }) => sum + weight * value, 0) / total;
  const square = found.reduce((sum, { value, weight }) => sum + weight * (value - mean) ** 2, 0) / total;
  const at = (share: number) => {
    let below = 0;
    const reached = found.find(({ weight }) => {
      below += weight;
      return below >= share * total;
    });
    return reached!.value;
  };
  return { mean, sd: Math.sqrt(square), p10: at(0.1), p90: at(0.9), p50: at(0.5) };
}

/** Model 4: so many times what the earlier anodes wore. */
const FAST = 1.5;

/** The chance that it wears at more than so many times what the earlier anodes there wore on average; null where none earlier was looked at. */
function wearsFast(place: PlaceWear, earlier: readonly WearSeen[], kinds: readonly Kind[]): number | null {
  const lookedAt = earlier.filter(({ information }) => information > 0);
  if (lookedAt.length === 0) return null;
  const means = lookedAt.map((seen) => meanOf(kindsOf(place, seen)));
  const limit = (FAST * means.reduce((sum, mean) => sum + mean, 0)) / means.length;
  return kinds.reduce((sum, { weight, mean, sd }) => sum + weight * (1 - positiveCdf(mean, sd, limit)), 0);
}

function meanOf(kinds: readonly Kind[]): number {
  const total = kinds.reduce((sum, { weight }) => sum + weight, 0);
  return kinds.reduce((sum, { weight, mean, sd }) => sum + weight * positivePart(mean, sd).mean, 0) / total;
}

/**
 * No wear is told from so many days on (model 4), once it is likelier than not, by the chance beforehand that an anode does nothing: no contact, painted, passivated. Both chances are judgement, no
 * source: to look at a bond costs little, and an anode that looks new after half its usual life is not asked about too soon.
 */
const LEAST_DAYS = 30;
const LIKELIER = 0.5;
const DOES_NOTHING = 0.1;

function noWearDays({ usual, weights }: PlaceWear, { looks }: Fitting, seen: WearSeen): number | null {
  const last = looks.at(-1);
  if (last === undefined) return null;
  const days = (last.at - seen.from!) / MS_A_DAY;
  if (days < LEAST_DAYS) return null;
  const wears = usual.reduce((sum, wear, i) => sum + weights[i]! * Math.exp(foretold(wear, seen)), 0);
  const chance = DOES_NOTHING / (DOES_NOTHING + (1 - DOES_NOTHING) * wears);
  return chance >= LIKELIER ? days : null;
}

function drawsOf(
  kinds: readonly Kind[],
  { start }: WearSeen,
  days: number,
  count: number,
  streamOf: (part: string) => Stream,
) {
  const [which, wears, shares] = ['kind', 'wear', 'share'].map(streamOf) as [Stream, Stream, Stream];
  const choose = chooserOf(kinds.map(({ weight }) => weight));
  const share = new Float64Array(count);
  const wear = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const { mean, sd } = kinds[choose(which.uniform())]!;
    wear[i] = positiveQuantile(mean, sd, wears.uniform());
    share[i] = start.mean + start.slope * wear[i]! + start.sd * shares.normal() - wear[i]! * days;
  }
  return { share, wear };
}
