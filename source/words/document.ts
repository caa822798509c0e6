import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import type { Answer, Reason, Verdict } from '../readiness/answer.ts';
import type { ForecastMet } from '../readiness/forecast-met.ts';
import type { Aboard } from '../readiness/forecasts-aboard.ts';
import type { Sky } from '../readiness/sky.ts';
import type { ForecastAge } from '../readiness/weather-bars.ts';
import type { WeatherNow } from '../readiness/weather-now.ts';
import { type ActionDocument, actionDocument } from './action-document.ts';
import { instant, six, sixOrNull } from './figures.ts';
import {
  type AboardDocument,
  aboardDocument,
  type DecisionDocument,
  decisionDocument,
  type MetDocument,
  metDocument,
  type NowDocument,
  nowDocument,
} from './forecasts-document.ts';
import { type ItemDocument, itemDocument } from './item-document.ts';
import { reasonSentence } from './reasons.ts';
import { sayTrouble } from './troubles.ts';
import { type WeatherDocument, weatherDocument } from './weather-document.ts';
import { edgePhrase, stayingPhrase } from './weather-reasons.ts';
import { whereaboutsOf } from './whereabouts.ts';

/** The document of `verdict --json` (contract: names, units and meanings are relied on by scripts). Instants are ISO 8601 UTC, scores percentages, chances 0..1, 6 significant digits. */
export interface VerdictDocument {
  format: 1;
  boat: string;
  at: string;
  passage: {
    id: string;
    name: string;
    nm: number;
    hours: number;
    /** What is left of it at the usual speed, under way; else null. */
    toGo: { nm: number; hours: number } | null;
  } | null;
  forecast: {
    issuedAt: string;
    ageHours: number;
    source: string;
    age: ForecastAge;
    name: string;
    issuer: string;
    /** It counts because the skipper said so, not because it is the newest. */
    chosen: boolean;
  } | null;
  verdict: Verdict;
  reasons: string[];
  threshold: { boat: number; go: number };
  score: { now: number | null; boat: number; weather: number | null; error: number };
  windows: { at: string; until: string; score: number; opens: string | null; closes: string | null }[];
  weatherAlone: { at: string; until: string; startWorkBy: string | null } | null;
  best: { at: string; score: number } | null;
  endurance: { until: string; item: string } | null;
  staying: { until: string; why: string } | null;
  shelter: { passage: string; verdict: Verdict; score: number | null; name: string }[];
  curve: { at: string; score: number | null; boat: number; weather: number | null }[];
  items: ItemDocument[];
  toGetReady: ActionDocument[];
  whileHeld: ActionDocument[];
  beforeLeaving: { check: string; made: boolean; minutes: number }[];
  trouble: string[];
  engines: { id: string; name: string; hours: number | null; readAt: string | null; perDay: number }[];
  underWaySince: string | null;
  anchorage: { id: string; name: string; since: string | null } | null;
  /** False where `toGetReady`, or anything else known here, does not bring her to the boat threshold. */
  toGetReadySuffices: boolean;
  simulations: number;
  seed: number;
  /** What each of `reasons` is about, in the same order: words for programs. */
  reasonKinds: Reason['reason'][];
  /** Sunset to sunrise over the hours of the curve, where she lies. */
  sky: { nights: { from: string; until: string }[]; sun: Sky['sun'] } | null;
  /** The forecast against the limits; null without one for the passage. */
  weather: WeatherDocument | null;
  /** Those received by then, the newest issued first; compared, never mixed. */
  forecasts: AboardDocument[];
  /** The last look at the weather beside the forecast; null where there was none of late. */
  now: NowDocument | null;
  /** How far forecasts have been off what was met. */
  met: MetDocument;
  /** What the skipper decided last. */
  decision: DecisionDocument | null;
}

/** The answer as the document scripts and screens read: facts rounded to 6 significant digits, instants in UTC, keys in the contract's order, reasons as sentences. */
export function documentOf(from: {
  boat: Boat;
  condition: Condition;
  beliefs: Beliefs;
  answer: Answer;
  forecasts: { aboard: readonly Aboard[]; now: WeatherNow | null; met: ForecastMet };
}): VerdictDocument {
  const { boat, condition, beliefs, answer, forecasts } = from;
  return {
    format: 1,
    boat: boat.name,
    at: instant(answer.at),
    passage: answer.passage && {
      id: answer.passage.id,
      name: answer.passage.name,
      nm: six(answer.passage.nm),
      hours: six(answer.passage.hours),
      toGo: answer.passage.toGo && {
        nm: six(answer.passage.toGo.nm),
        hours: six(answer.passage.toGo.hours),
      },
    },
    forecast: answer.forecast && {
      issuedAt: instant(answer.forecast.issuedAt),
      ageHours: six(answer.forecast.ageHours),
      source: answer.forecast.source,
      age: answer.forecast.age,
      name: answer.forecast.name,
      issuer: answer.forecast.issuer,
      chosen: answer.forecast.chosen,
    },
    verdict: answer.verdict,
    reasons: answer.reasons.map((reason) => reasonSentence(reason, { boat, answer })),
    threshold: { boat: six(answer.threshold.boat), go: six(answer.threshold.go) },
    score: {
      now: sixOrNull(answer.score.now),
      boat: six(answer.score.boat),
      weather: sixOrNull(answer.score.weather),
      error: six(answer.score.error),
    },
    ...timesOf(answer, boat),
    items: answer.items.map((item) => itemDocument(item, boat)),
    toGetReady: answer.toGetReady.map(actionDocument),
    whileHeld: answer.whileHeld.map(actionDocument),
    beforeLeaving: answer.beforeLeaving.map(({ check, made, minutes }) => ({
      check,
      made,
      minutes: six(minutes),
    })),
    trouble: answer.trouble.map((trouble) => sayTrouble(trouble)),
    simulations: answer.simulations,
    seed: answer.seed,
    ...whereaboutsOf(boat, condition, beliefs),
    toGetReadySuffices: answer.toGetReadySuffices,
    reasonKinds: answer.reasons.map(({ reason }) => reason),
    sky: answer.sky && {
      nights: answer.sky.nights.map(({ from, to }) => ({ from: instant(from), until: instant(to) })),
      sun: answer.sky.sun,
    },
    weather: answer.weather && weatherDocument(answer.weather),
    forecasts: forecasts.aboard.map(aboardDocument),
    now: forecasts.now && nowDocument(forecasts.now),
    met: metDocument(forecasts.met),
    decision: condition.decision && decisionDocument(condition.decision),
  };
}

function timesOf(
  answer: Answer,
  boat: Boat,
): Pick<
  VerdictDocument,
  'windows' | 'weatherAlone' | 'best' | 'endurance' | 'staying' | 'shelter' | 'curve'
> {
  const { weatherAlone, best, endurance, staying } = answer;
  return {
    windows: answer.windows.map((window) => ({
      at: instant(window.at),
      until: instant(window.until),
      score: six(window.score),
      opens: window.opens && edgePhrase(window.opens, boat),
      closes: window.closes && edgePhrase(window.closes, boat),
    })),
    weatherAlone: weatherAlone && {
      at: instant(weatherAlone.at),
      until: instant(weatherAlone.until),
      startWorkBy: weatherAlone.startWorkBy === null ? null : instant(weatherAlone.startWorkBy),
    },
    best: best && { at: instant(best.at), score: six(best.score) },
    endurance: endurance && { until: instant(endurance.until), item: endurance.item },
    staying: staying && {
      until: instant(staying.until),
      why: stayingPhrase(staying.why),
    },
    shelter: answer.shelter.map(({ passage, verdict, score }) => ({
      passage,
      verdict,
      score: sixOrNull(score),
      name: boat.passages.find(({ id }) => id === passage)?.name ?? passage,
    })),
    curve: answer.curve.map(({ at, score, boat, weather }) => ({
      at: instant(at),
      score: sixOrNull(score),
      boat: six(boat),
      weather: sixOrNull(weather),
    })),
  };
}
