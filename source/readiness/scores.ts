import type { Answer } from './answer.ts';
import { type Bits, keepCommon, sizeOf } from './bits.ts';
import type { Judged, JudgedItem } from './judged.ts';
import type { Passages } from './passages.ts';

const MS_AN_HOUR = 3_600_000;

/** The scores for every departure: the boat's, the weather's, and both in the same passages; the last two null without a forecast. */
export function curveOf({ boatHeld, weather, passages: { count, now } }: Judged): Answer['curve'] {
  const percent = (bits: Bits) => (100 * sizeOf(bits)) / count;
  return boatHeld.map((boat, hour) => {
    const at = now + hour * MS_AN_HOUR;
    if (weather === null) return { at, score: null, boat: percent(boat), weather: null };
    const both = weather.held[hour]!.slice();
    keepCommon(both, boat);
    return { at, score: percent(both), boat: percent(boat), weather: percent(weather.held[hour]!) };
  });
}

/** The departure with the highest score, the earliest of several; for a curve with the weather. */
export function bestOf(curve: Answer['curve']): Answer['best'] {
  const best = curve.reduce((most, one) => (one.score! > most.score! ? one : most));
  return { at: best.at, score: best.score! };
}

/** The last departure at which the boat still reaches her threshold, and the vital item that fails most just after. */
export function enduranceOf(
  items: readonly JudgedItem[],
  curve: Answer['curve'],
  { threshold }: Passages,
): Answer['endurance'] {
  const first = curve.findIndex(({ boat }) => boat < 100 * threshold);
  if (first <= 0) return null;
  const failing = items
    .filter(({ vital }) => vital)
    .reduce((worst, one) => (one.curve[first]! < worst.curve[first]! ? one : worst));
  return { until: curve[first - 1]!.at, item: failing.item.id };
}
