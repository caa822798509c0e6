import { type Boat, consequenceOf, type Item, itemsOf } from '../boat/boat.ts';
import type { Limits } from '../boat/limits.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import { inOneGo, type Turns } from '../maths/turns.ts';
import type { OnTheLine, State, Why } from './answer.ts';
import { type Bits, bitsAt, keepCommon, sizeOf } from './bits.ts';
import { type Finding, findingOf } from './findings.ts';
import { always, both, curveOf } from './latest.ts';
import { drawPassages, type Passages } from './passages.ts';
import { type Holding, nothingDone, type Requirements, requiring } from './requirements.ts';
import { type Course, simulatingWeather, type Weather } from './weather.ts';

/** Model, Terms: without a forecast departures are looked at for a week. */
const LAST_HOUR = 168;
/** Model 1: an item holding in fewer passages than this is worth watching. */
const FIT_CHANCE = 0.98;

/** One item with how often it holds and what was found of it. */
export interface JudgedItem {
  readonly item: Item;
  readonly vital: boolean;
  /** In how many passages it holds, for every departure. */
  readonly curve: Float64Array;
  /** Leaving now, 0..1. */
  readonly chance: number;
  readonly finding: Finding;
  readonly state: State;
  readonly why: readonly Why[];
}

/** The boat judged over one set of simulated passages. */
export interface Judged {
  readonly passages: Passages;
  readonly requirements: Requirements;
  readonly weather: Weather | null;
  readonly items: readonly JudgedItem[];
  /** The passages in which all that is vital holds, for every departure. */
  readonly boatHeld: readonly Bits[];
}

export interface JudgeOptions {
  readonly count: number;
  readonly seed: number;
  /** The boat's, 0..1. */
  readonly threshold: number;
  readonly limits: Limits;
  /** The forecast along the passage; null where there is none. */
  readonly course: Course | null;
}

/** Judges every item, and the weather where there is a forecast, over `count` passages. */
export function judgeItems(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  options: JudgeOptions,
): Judged {
  return inOneGo(judgingItems(boat, condition, beliefs, options));
}

/** The same in turns. */
export function* judgingItems(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
  { count, seed, threshold, limits, course }: JudgeOptions,
): Turns<Judged> {
  const drawn = drawPassages(boat, condition, beliefs, { count, seed, lastHour: LAST_HOUR, threshold });
  const weather = course && (yield* simulatingWeather(course, condition, limits, drawn));
  const passages = weather === null ? drawn : motoredByWeather(drawn, weather, condition);
  const requirements = yield* requiring(boat, condition, beliefs, passages);
  const vitalIds = new Set(
    itemsOf(boat).flatMap((item) => (consequenceOf(boat, item) === 'vital' ? [item.id] : [])),
  );
  const { curves, boatHeld } = yield* heldOver(requirements, vitalIds, passages);
  const items = itemsOf(boat).map((item) => {
    const vital = vitalIds.has(item.id);
    const curve = curves.get(item.id)!;
    const chance = curve[0]! / count;
    const finding = findingOf(boat, item, condition, beliefs);
    return { item, vital, curve, chance, finding, ...stateOf(finding, vital, chance, threshold) };
  });
  const boatChance = sizeOf(boatHeld[0]!) / count;
  return { passages, requirements, weather, boatHeld, items: together(items, boatChance, threshold) };
}

/** Where a forecast decides how much is motored: every engine the passage is motored with runs together. */
function motoredByWeather(passages: Passages, weather: Weather, { passage }: Condition): Passages {
  const none = new Float64Array(passages.count);
  const byAll = (engines: readonly string[], motored: Float64Array) => {
    const running = engines.filter((engine) => passage?.motoring[engine] !== undefined).length;
    if (running === 0) return none;
    return running === 1 ? motored : motored.map((hours) => running * hours);
  };
  const most = mostOf(weather, passages.count);
  return {
    ...passages,
    lastHour: weather.lastHour,
    motoringIsFixed: false,
    motoredBy: (engines, hour) => byAll(engines, weather.motored(hour)),
    mostMotored: (engines) => byAll(engines, most),
  };
}

function mostOf({ lastHour, motored }: Weather, count: number): Float64Array {
  const most = new Float64Array(count);
  for (let hour = 0; hour <= lastHour; hour += 1) {
    const hours = motored(hour);
    for (let i = 0; i < count; i += 1) if (hours[i]! > most[i]!) most[i] = hours[i]!;
  }
  return most;
}

/** Every item's curve, and the passages in which all that is vital holds: by latest departures where those tell all, else hour by hour. */
function* heldOver(
  { all }: Requirements,
  vital: ReadonlySet<string>,
  { count, lastHour }: Passages,
): Turns<{ curves: ReadonlyMap<string, Float64Array>; boatHeld: readonly Bits[] }> {
  const curves = new Map<string, Float64Array>();
  const vitalLatest = always(count);
  const hourByHour: { readonly items: readonly string[]; readonly holding: Holding }[] = [];
  for (const { items, holding: holdingAfter } of all) {
    yield;
    const holding = holdingAfter(nothingDone);
    const [id] = items;
    if (holding.latest === null) {
      hourByHour.push({ items, holding });
      for (const each of items) curves.set(each, new Float64Array(lastHour + 1));
      continue;
    }
    curves.set(id!, curveOf(holding.latest, lastHour));
    if (vital.has(id!)) both(vitalLatest, holding.latest);
  }
  const boatHeld: Bits[] = [];
  for (let hour = 0; hour <= lastHour; hour += 1) {
    yield;
    const held = bitsAt(vitalLatest, hour);
    for (const { items, holding } of hourByHour)
      for (const [place, bits] of holding.heldAt(hour).entries()) {
        curves.get(items[place]!)![hour] = sizeOf(bits);
        if (vital.has(items[place]!)) keepCommon(held, bits);
      }
    boatHeld.push(held);
  }
  return { curves, boatHeld };
}

/** The first state that applies (model 1). */
function stateOf(
  { pastLimit, unseen, watch }: Finding,
  vital: boolean,
  chance: number,
  threshold: number,
): { state: State; why: readonly Why[] } {
  const mayFail: Why[] =
    chance < Math.max(FIT_CHANCE, threshold) && pastLimit.length === 0
      ? [{ why: 'may fail', chance: 1 - chance, threshold }]
      : [];
  const why = [...pastLimit, ...mayFail, ...unseen, ...watch];
  if (vital && (chance < threshold || pastLimit.length > 0)) return { state: 'unfit', why };
  if (unseen.length > 0) return { state: 'unseen', why: [...unseen, ...pastLimit, ...mayFail, ...watch] };
  return { state: why.length > 0 ? 'watch' : 'fit', why };
}

/** When no item is unfit but the boat falls short, the two vital ones failing most often are the ones to watch. */
function together(
  items: readonly JudgedItem[],
  boatChance: number,
  threshold: number,
): readonly JudgedItem[] {
  if (boatChance >= threshold || items.some(({ state }) => state === 'unfit')) return items;
  const most = items
    .filter(({ vital, chance }) => vital && chance < 1)
    .sort((a, b) => a.chance - b.chance)
    .slice(0, 2);
  return items.map((judged) =>
    most.includes(judged)
      ? {
          ...judged,
          state: judged.state === 'unseen' ? judged.state : 'watch',
          why: [{ why: 'no one thing', boat: 100 * boatChance }, ...judged.why],
        }
      : judged,
  );
}

/** One standard error of a chance held in k of N passages, from (k + 1) / (N + 2) (model 1). */
export function standardError(held: number, count: number): number {
  const chance = (held + 1) / (count + 2);
  return Math.sqrt((chance * (1 - chance)) / count);
}

/** Within two standard errors of the boat's threshold, or of the one to go, and which of them: more passages may tell. */
export function isNear(
  { boatHeld, weather, passages: { count, threshold } }: Judged,
  limits: Limits,
): OnTheLine {
  const near = (held: number, chance: number) =>
    Math.abs(held / count - chance) < 2 * standardError(held, count);
  if (near(sizeOf(boatHeld[0]!), threshold)) return 'boat';
  if (weather === null) return null;
  const both = boatHeld[0]!.slice();
  keepCommon(both, weather.held[0]!);
  return near(sizeOf(both), limits.go / 100) ? 'go' : null;
}
