import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { passageNm } from '../passage/distance.ts';
import type { Trouble } from '../trouble.ts';
import { allCandidates, type Candidate } from './actions.ts';
import type { Action, Answer } from './answer.ts';
import { sizeOf } from './bits.ts';
import { itemAnswer } from './item-answer.ts';
import { isNear, type Judged, type JudgedItem, judgeItems, standardError } from './judged.ts';
import { lastGoodHour } from './latest.ts';
import type { Passages } from './passages.ts';
import type { Requirement } from './requirements.ts';
import { toGetReady } from './to-get-ready.ts';
import { reasonsOf } from './verdict.ts';
import { whileHeld } from './while-held.ts';

const MS_AN_HOUR = 3_600_000;
/** Model 1: near a threshold more passages are simulated, up to so many. */
const MOST_PASSAGES = 65_536;
const MORE = 4;

export interface JudgeInput {
  readonly boat: Boat;
  readonly condition: Condition;
  readonly beliefs: Beliefs;
  readonly seed: number;
  /** Passages to begin with. */
  readonly simulations: number;
  readonly trouble: readonly Trouble[];
}

/** The readiness model: is she fit to leave, why not, for how long, and what would make her so. A pure function of what it is given. */
export function judge(input: JudgeInput): Answer {
  const limits = limitsOf(input.boat, input.condition.crew);
  const withPassages = (count: number) =>
    judgeItems(input.boat, input.condition, input.beliefs, {
      count,
      seed: input.seed,
      threshold: limits.boat / 100,
    });
  let judged = withPassages(input.simulations);
  while (isNear(judged) && judged.passages.count * MORE <= MOST_PASSAGES)
    judged = withPassages(judged.passages.count * MORE);
  return answerFrom(input, limits, judged);
}

/** The limits that hold: with one aboard those given for it take the place of the others. */
function limitsOf({ limits }: Boat, crew: number): Boat['limits'] {
  if (crew > 1 || limits.alone === undefined) return limits;
  const given = Object.entries(limits.alone).filter(([, value]) => value !== undefined);
  return { ...limits, ...Object.fromEntries(given) };
}

function answerFrom(input: JudgeInput, limits: Boat['limits'], judged: Judged): Answer {
  const { boat, condition, beliefs, seed } = input;
  const { passages, requirements, items, boatHeld } = judged;
  const { count, now, threshold } = passages;
  const curve = Float64Array.from(boatHeld, sizeOf);
  const at = (hour: number) => now + hour * MS_AN_HOUR;
  const ready = readyActions(input, judged);
  const boatScore = (100 * curve[0]!) / count;
  const onTheLine = isNear(judged);
  const { verdict, reasons } = reasonsOf({
    boat,
    condition,
    limits,
    items,
    boatScore,
    onTheLine,
    trouble: input.trouble,
  });
  return {
    at: now,
    passage: condition.passage && {
      id: condition.passage.id,
      name: condition.passage.name,
      nm: passageNm(condition.passage),
      hours: passageNm(condition.passage) / condition.passage.speed.mean,
    },
    forecast: null,
    verdict,
    reasons,
    threshold: { boat: limits.boat, go: limits.go },
    score: { now: null, boat: boatScore, weather: null, error: 100 * standardError(curve[0]!, count) },
    onTheLine,
    windows: [],
    weatherAlone: null,
    best: null,
    endurance: enduranceOf(items, curve, passages),
    staying: null,
    shelter: [],
    curve: Array.from(curve, (held, hour) => ({
      at: at(hour),
      score: null,
      boat: (100 * held) / count,
      weather: null,
    })),
    items: items.map((one) => {
      const last = lastGoodHour(one.curve, count, threshold);
      const goodUntil = typeof last === 'number' ? at(last) : last;
      return itemAnswer(boat, condition, beliefs, requirements, passages, one, goodUntil);
    }),
    toGetReady: ready.actions,
    toGetReadySuffices: ready.suffices,
    whileHeld: whileHeld(boat, condition, beliefs, passages, items, ready.actions, boatScore),
    beforeLeaving: boat.checks
      .filter(({ when }) => when === 'leaving')
      .map((check) => {
        const { madeSinceArrival, unsettledBy } = condition.checks.get(check.id)!;
        return {
          check: check.id,
          made: madeSinceArrival && unsettledBy === null,
          minutes: check.minutes ?? 1,
        };
      }),
    trouble: input.trouble,
    simulations: count,
    seed,
  };
}

/** The last departure at which the boat still reaches her threshold, and the vital item that fails most just after. */
function enduranceOf(
  items: readonly JudgedItem[],
  curve: Float64Array,
  { count, threshold, now }: Passages,
): Answer['endurance'] {
  const last = lastGoodHour(curve, count, threshold);
  if (typeof last !== 'number') return null;
  const failing = items
    .filter(({ vital }) => vital)
    .map(({ item, curve: held }) => ({ id: item.id, held: held[last + 1]! }))
    .reduce((worst, one) => (one.held < worst.held ? one : worst));
  return { until: now + last * MS_AN_HOUR, item: failing.id };
}

function readyActions(
  { boat, condition, beliefs }: JudgeInput,
  { requirements, items, passages }: Judged,
): { actions: readonly Action[]; suffices: boolean } {
  const vital = requirements.all
    .map((requirement) => ({
      requirement,
      places: requirement.items.flatMap((id, place) =>
        items.some(({ item, vital }) => item.id === id && vital) ? [place] : [],
      ),
    }))
    .filter(({ places }) => places.length > 0);
  const candidates = allCandidates(boat, condition, beliefs);
  const owed = items.flatMap((one) => owedFor(one, candidates));
  const helpful = candidates.filter(
    (candidate) =>
      !owed.includes(candidate) &&
      helps(
        candidate,
        items,
        vital.map(({ requirement }) => requirement),
      ),
  );
  const { count, threshold } = passages;
  return toGetReady({
    vital,
    passages: count,
    hour: 0,
    enough: threshold * count,
    owed,
    candidates: helpful,
  });
}

/** Whatever the score: a look that is owed where not having it bars leaving, and what puts right a vital thing past its limit. */
function owedFor(
  { item, vital, finding }: JudgedItem,
  candidates: readonly Candidate[],
): readonly Candidate[] {
  if (vital && finding.pastLimit.length > 0)
    return candidates.filter((candidate) => candidate.item === item.id);
  const bars = finding.unseenBars === 'always' || (vital && finding.unseenBars === 'when vital');
  if (finding.unseen.length === 0 || !bars) return [];
  return [{ do: 'look', item: item.id, takes: [], minutes: item.minutes ?? 5, pouredL: null, buys: null }];
}

/** Only what a vital item that may fail asks for: its own work, or filling the stock it goes by. */
function helps(candidate: Candidate, items: readonly JudgedItem[], vital: readonly Requirement[]): boolean {
  const mayFail = (id: string) =>
    items.some(({ item, chance, vital }) => item.id === id && vital && chance < 1);
  if (mayFail(candidate.item) && candidate.do !== 'look') return true;
  return (
    candidate.buys !== null &&
    vital.some(({ stores, items: ids }) => stores.includes(candidate.item) && ids.some(mayFail))
  );
}
