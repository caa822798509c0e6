import type { Boat } from '../boat/boat.ts';
import type { Limits } from '../boat/limits.ts';
import type { Passage } from '../boat/passage.ts';
import type { Condition } from '../condition/condition.ts';
import { type Forecast, forecastName } from '../forecast/forecast.ts';
import { inOneGo, type Turns } from '../maths/turns.ts';
import { passageNm } from '../passage/distance.ts';
import type { Trouble } from '../trouble.ts';
import { minutesOf } from './actions.ts';
import type { Answer } from './answer.ts';
import { courseOf, judgeEnough, limitsOf, type ToJudge } from './enough.ts';
import { itemAnswer } from './item-answer.ts';
import { isNear, type Judged, standardError } from './judged.ts';
import { lastGoodHour } from './latest.ts';
import { hoursUnderWay } from './passages.ts';
import { readyActions } from './ready-actions.ts';
import { bestOf, curveOf, enduranceOf } from './scores.ts';
import { skyAlong } from './sky.ts';
import { hoursSaid, untenableFrom, weatherAtAnchor } from './staying.ts';
import { reasonsOf, type VerdictInput } from './verdict.ts';
import type { Course } from './weather.ts';
import { forecastAge } from './weather-bars.ts';
import { drawingPaths } from './weather-paths.ts';
import { weatherShown } from './weather-shown.ts';
import { whileHeld } from './while-held.ts';
import { edgesOf, runsOf, windowsOf } from './windows.ts';

const MS_AN_HOUR = 3_600_000;
const MS_A_MINUTE = 60_000;
type Departure = Answer['curve'][number];

export interface JudgeInput extends ToJudge {
  readonly trouble: readonly Trouble[];
}

/** The readiness model: is she fit to leave, why not, for how long, and what would make her so. A pure function of what it is given. */
export function judge(input: JudgeInput): Answer {
  return inOneGo(judging(input));
}

/** The same in turns. */
export function* judging(input: JudgeInput): Turns<Answer> {
  const answer = yield* judgePassage(input);
  return answer.staying === null ? answer : { ...answer, shelter: yield* sheltersFrom(input) };
}

/** The passages to safety, each judged as if it were the one planned. */
function* sheltersFrom(input: JudgeInput): Turns<Answer['shelter']> {
  const shelters: Answer['shelter'][number][] = [];
  for (const passage of input.boat.passages) {
    if (!passage.shelter || passage.id === input.condition.passage?.id) continue;
    const condition = { ...input.condition, passage, reserveDays: passage.reserveDays };
    shelters.push({ passage: passage.id, ...(yield* leavingNow({ ...input, condition })) });
  }
  return shelters;
}

/** The verdict alone, for which no later departure is looked at. */
function* leavingNow(input: JudgeInput): Turns<{ verdict: Answer['verdict']; score: number | null }> {
  const limits = limitsOf(input.boat, input.condition.crew);
  const course = courseOf(input, limits);
  const judged = yield* judgeEnough(input, limits, course && { ...course, lastHour: 0 });
  const [first] = curveOf(judged);
  const { verdict } = verdictOf(input, limits, judged, { first: first!, windows: [], edgeNow: null });
  return { verdict, score: first!.score };
}

function* judgePassage(input: JudgeInput): Turns<Answer> {
  const limits = limitsOf(input.boat, input.condition.crew);
  const course = courseOf(input, limits);
  return yield* answerFrom(input, limits, course, yield* judgeEnough(input, limits, course));
}

function* answerFrom(
  input: JudgeInput,
  limits: Limits,
  course: Course | null,
  judged: Judged,
): Turns<Answer> {
  const { boat, condition, beliefs, forecast, seed } = input;
  const { passages, requirements, items, weather } = judged;
  const { count, now, threshold } = passages;
  const at = (hour: number) => now + hour * MS_AN_HOUR;
  const curve = curveOf(judged);
  const scores = curve.map(({ score }) => score ?? Number.NaN);
  const edgeAt =
    weather && condition.passage ? edgesOf(weather, items, condition.passage, limits, count) : () => null;
  const windows = windowsOf(runsOf(scores, limits.go), scores, now, edgeAt);
  const alone = weatherAloneOf(curve, limits);
  yield;
  const ready = readyActions(boat, condition, beliefs, judged, alone?.first ?? 0);
  const workMinutes = minutesOf(ready.actions);
  yield;
  const itemAnswers: Answer['items'][number][] = [];
  for (const one of items) {
    const last = one.finding.pastLimit.length > 0 ? null : lastGoodHour(one.curve, count, threshold);
    const goodUntil = typeof last === 'number' ? at(last) : last;
    itemAnswers.push(itemAnswer(boat, condition, beliefs, requirements, passages, one, goodUntil));
    yield;
  }
  const [first] = curve;
  const edgeNow = edgeAt(0);
  const { verdict, reasons } = verdictOf(input, limits, judged, { first: first!, windows, edgeNow });
  yield;
  const staying = yield* stayingFor(input, limits, judged);
  yield;
  const held = whileHeld(boat, condition, beliefs, passages, items, {
    already: ready.actions,
    boatScore: first!.boat,
    waitMinutes: waitOf(verdict, windows[0]?.at ?? (alone && at(alone.first)), now),
  });
  yield;
  return {
    at: now,
    passage: condition.passage && passageFacts(condition.passage, condition),
    forecast: forecast && forecastFacts(forecast, condition),
    verdict,
    reasons,
    threshold: { boat: limits.boat, go: limits.go },
    score: {
      now: first!.score,
      boat: first!.boat,
      weather: first!.weather,
      error: 100 * standardError(((first!.score ?? first!.boat) / 100) * count, count),
    },
    onTheLine: isNear(judged, limits),
    windows,
    weatherAlone: alone
      ? {
          at: at(alone.first),
          until: at(alone.last),
          startWorkBy: workMinutes > 0 ? at(alone.first) - workMinutes * MS_A_MINUTE : null,
        }
      : null,
    best: weather === null ? null : bestOf(curve),
    endurance: enduranceOf(items, curve, passages),
    staying,
    shelter: [],
    curve,
    items: itemAnswers,
    toGetReady: ready.actions,
    toGetReadySuffices: ready.suffices,
    whileHeld: held,
    beforeLeaving: beforeLeaving(boat, condition),
    trouble: input.trouble,
    simulations: count,
    seed,
    sky: skyAlong(boat, condition, now, curve.at(-1)!.at),
    weather:
      weather &&
      weatherShown(course!, weather, limits, { now, count, sailedHours: hoursUnderWay(condition) }),
  };
}

function verdictOf(
  input: JudgeInput,
  limits: Limits,
  judged: Judged,
  { first, windows, edgeNow }: { first: Departure } & Pick<VerdictInput, 'windows' | 'edgeNow'>,
): ReturnType<typeof reasonsOf> {
  const { boat, condition, forecast, trouble } = input;
  return reasonsOf({
    boat,
    condition,
    limits,
    items: judged.items,
    forecast,
    forecastReaches: judged.weather !== null,
    score: first.score,
    boatScore: first.boat,
    windows,
    edgeNow,
    onTheLine: isNear(judged, limits),
    trouble,
  });
}

/** How long she is held, in minutes. What opens now and yet holds her, as an old forecast does, may do so for who knows how long. */
function waitOf(verdict: Answer['verdict'], opens: number | undefined, now: number): number {
  if (opens === undefined || (verdict === 'hold' && opens <= now)) return Infinity;
  return (opens - now) / MS_A_MINUTE;
}

/** The first run of departures the weather alone is good enough for. */
function weatherAloneOf(curve: Answer['curve'], limits: Limits) {
  const scores = curve.map(({ weather }) => weather ?? Number.NaN);
  return runsOf(scores, limits.go)[0];
}

function passageFacts(passage: Passage, condition: Condition): Answer['passage'] {
  const nm = passageNm(passage);
  const { mean } = passage.speed;
  const left = Math.max(0, nm - hoursUnderWay(condition) * mean);
  const toGo = condition.underWay === null ? null : { nm: left, hours: left / mean };
  return { id: passage.id, name: passage.name, nm, hours: nm / mean, toGo };
}

function forecastFacts(forecast: Forecast, { at, forecastChoice }: Condition): Answer['forecast'] {
  const { issuedAt, source, issuer } = forecast;
  const ageHours = (at - Date.parse(issuedAt)) / MS_AN_HOUR;
  const name = forecastName(forecast);
  const chosen = forecastChoice?.counts === name;
  return {
    issuedAt: Date.parse(issuedAt),
    ageHours,
    source,
    age: forecastAge(ageHours),
    name,
    issuer,
    chosen,
  };
}

/** The looks to make before she leaves, and whether each was made since she arrived. */
function beforeLeaving(boat: Boat, condition: Condition): Answer['beforeLeaving'] {
  return boat.checks
    .filter(({ when }) => when === 'leaving')
    .map((check) => {
      const { madeSinceArrival, unsettledBy } = condition.checks.get(check.id)!;
      const made = madeSinceArrival && unsettledBy === null;
      return { check: check.id, made, minutes: check.minutes ?? 1 };
    });
}

/** When the forecast makes the anchorage no place to stay, whether or not it speaks of a passage; null under way, at no named anchorage, or past the forecast. */
function* stayingFor(
  { boat, condition, forecast }: JudgeInput,
  limits: Limits,
  { weather, passages }: Judged,
): Turns<Answer['staying']> {
  const anchorage = boat.anchorages.find(({ id }) => id === condition.anchorage);
  if (!anchorage || forecast === null || condition.underWay !== null) return null;
  const hours = weather?.hours ?? hoursSaid(anchorage, forecast, condition.at);
  const paths = weather?.paths ?? (yield* drawingPaths(passages.count, hours, passages.streamOf));
  const here = weatherAtAnchor(anchorage, forecast, condition.at, hours, limits.forecastError);
  return yield* untenableFrom(anchorage, here, paths, condition.at);
}
