import type { Limits } from '../boat/limits.ts';
import type { Condition } from '../condition/condition.ts';
import { placeFor } from '../forecast/at.ts';
import type { Forecast, Headline, PlaceForecast } from '../forecast/forecast.ts';
import { passageNm } from '../passage/distance.ts';
import { piecesOf, whereOf } from '../passage/pieces.ts';
import type { Reason } from './answer.ts';
import { SMALL_SEAS_M } from './hour-bars.ts';
import { hoursUnderWay } from './passages.ts';
import { MUST_COVER_HOURS } from './weather.ts';
import { isGale, isSmallCraft } from './weather-table.ts';

const MS_AN_HOUR = 3_600_000;

/** What is to be said of the weather on the way, leaving now at the usual speed, though it does not bar leaving (model 8): what is warned of, what is left out, what lies beyond. */
export function weatherSaid(forecast: Forecast, limits: Limits, condition: Condition): readonly Reason[] {
  const { passage, at } = condition;
  if (passage === null) return [];
  const sailedHours = hoursUnderWay(condition);
  const hours = Math.max(0, passageNm(passage) / passage.speed.mean - sailedHours);
  const until = at + hours * MS_AN_HOUR;
  const ahead = piecesOf(passage).filter(({ fromNm, nm }) => fromNm + nm > sailedHours * passage.speed.mean);
  const places = [...new Set(ahead.map((piece) => placeFor(forecast, whereOf(piece))))].filter(
    (place) => place !== null,
  );
  const warned = places
    .flatMap(({ headlines }) => headlines)
    .filter((one) => isToMind(one, limits, at, until));
  const beyond = (until - endOf(places.at(-1), at)) / MS_AN_HOUR;
  const isPeriodMissing =
    limits.periodPerMetre !== undefined && places.some((one) => lacksPeriod(one, at, until));
  return [
    ...[...new Set(warned.map(({ text }) => text))].map((text) => ({
      reason: 'warning to mind' as const,
      text,
    })),
    ...(isPeriodMissing ? [{ reason: 'period not said' as const }] : []),
    ...(beyond > 0 && hours - beyond >= (limits.forecastMustCover ?? MUST_COVER_HOURS)
      ? [{ reason: 'beyond forecast' as const, hours: beyond }]
      : []),
  ];
}

/** Small craft unless they are to stop, a watch, fog, ice. */
function isToMind(headline: Headline, { smallCraft }: Limits, at: number, until: number): boolean {
  const { level, from, to } = headline;
  if (level === 'other' || isGale(headline)) return false;
  if (isSmallCraft(headline) && smallCraft === 'stop') return false;
  return (to === null || Date.parse(to) > at) && (from === null || Date.parse(from) < until);
}

function lacksPeriod({ steps }: PlaceForecast, at: number, until: number): boolean {
  return steps.some(
    ({ from, to, seas, period }) =>
      period === null &&
      seas !== null &&
      seas[1] > SMALL_SEAS_M &&
      Date.parse(to) > at &&
      Date.parse(from) < until,
  );
}

/** When a forecast says nothing more of a place. */
function endOf(place: PlaceForecast | undefined, at: number): number {
  const last = place?.steps.at(-1);
  return last === undefined ? at : Date.parse(last.to);
}
