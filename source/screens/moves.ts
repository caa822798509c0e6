import { boardStops } from './board.ts';
import {
  addPart,
  changePart,
  openBoat,
  retirePart,
  saveItem,
  toBoatField,
  toPart,
} from './boat/boat-moves.ts';
import { leaveUnmade, openSample, takeAnswer, toQuestion } from './first-run/first-run-moves.ts';
import { countForecast, forecasts, pointForecast } from './forecasts-moves.ts';
import { enter, toRow } from './forms/form-moves.ts';
import { enterHeard, hear, toHeardRow } from './heard-moves.ts';
import type { Stop } from './lines.ts';
import {
  chooseEntry,
  chooseEntryPage,
  leaveLog,
  log,
  onlyItem,
  onlyKind,
  onlyWrong,
  openEntry,
  searching,
} from './log/log-moves.ts';
import { FRESH, type Model, type Page, pageOf, type Step, turnedBack, turnedTo, withTop } from './model.ts';
import { nextPalette } from './palette.ts';
import {
  choosePreference,
  leavePreferences,
  preferences,
  takePreference,
  toPreference,
} from './preferences/preferences-moves.ts';
import { begin, enterRow, leaveRound, restUnchanged, strikeLast, toRoundRow } from './round/round-moves.ts';
import { shownItems } from './shown-item.ts';
import { chooseStore, leaveStores, openStores, toShopping, turnToStore } from './stores/stores-moves.ts';
import { answer, found, nextTable, strikeClue, trace, turnFound, workForIt } from './trace/trace-moves.ts';
import { isTrial, stepped, TRIAL_FIELDS, triedWords } from './trial.ts';
import { mostFrom, pageRows } from './turned.ts';

/** Every move a key can make, by name. A new key is its line in `bindings.ts` and, where it does something new, a line here. */
export const moves = {
  'choose next': choose(1),
  'choose before': choose(-1),
  'choose next part': choosePart(1),
  'choose part before': choosePart(-1),
  'choose nothing': chooseNothing,
  'choose last': chooseLast,
  open,
  'line down': scroll(1),
  'line up': scroll(-1),
  'page down': scrollPage(1),
  'page up': scrollPage(-1),
  'to the top': scroll(Number.NEGATIVE_INFINITY),
  'to the bottom': scroll(Number.POSITIVE_INFINITY),
  'next item': turnItem(1),
  'item before': turnItem(-1),
  back,
  weather,
  'hour later': pointHour(1),
  'hour before': pointHour(-1),
  'hours later': pointHour(6),
  'hours before': pointHour(-6),
  'try another': chooseField(1),
  'try the one before': chooseField(-1),
  'try more': tryStep(1),
  'try less': tryStep(-1),
  'try nothing': tryNothing,
  stores: openStores,
  'next store': chooseStore(1),
  'store before': chooseStore(-1),
  'stores on': chooseStore(10),
  'stores back': chooseStore(-10),
  'page of store': turnToStore,
  'shopping list': toShopping,
  'leave stores': leaveStores,
  'save form': enter,
  'next row': toRow(1),
  'row before': toRow(-1),
  boat: openBoat,
  'next part': toPart(1),
  'part before': toPart(-1),
  'parts on': toPart(10),
  'parts back': toPart(-10),
  'first part': toPart(Number.NEGATIVE_INFINITY),
  'last part': toPart(Number.POSITIVE_INFINITY),
  'change part': changePart,
  'add part': addPart,
  'retire part': retirePart,
  'edit boat': (model: Model): Step => [model, [{ do: 'edit boat' }]],
  'save item': saveItem,
  'next boat field': toBoatField(1),
  'boat field before': toBoatField(-1),
  preferences,
  'next choice': choosePreference(1),
  'choice before': choosePreference(-1),
  'take preference': takePreference,
  'next preference': toPreference(1),
  'preference before': toPreference(-1),
  'leave preferences': leavePreferences,
  forecasts,
  'next forecast': pointForecast(1),
  'forecast before': pointForecast(-1),
  'count it': countForecast,
  hear,
  'end line': enterHeard,
  'next line': toHeardRow(1),
  'line before': toHeardRow(-1),
  'take answer': takeAnswer,
  'next question': toQuestion(1),
  'question before': toQuestion(-1),
  'last question': toQuestion(Number.POSITIVE_INFINITY),
  'first question': toQuestion(Number.NEGATIVE_INFINITY),
  'open sample': openSample,
  'leave unmade': leaveUnmade,
  round: begin,
  'save row': enterRow,
  'round next': toRoundRow(1),
  'round before': toRoundRow(-1),
  'rest unchanged': restUnchanged,
  'strike last': strikeLast,
  'leave round': leaveRound,
  trace,
  found,
  'older hunt': turnFound(1),
  'newer hunt': turnFound(-1),
  'clue seen': answer(true),
  'clue not seen': answer(false),
  'clue cannot tell': answer(null),
  'strike clue': strikeClue,
  'work for it': workForIt,
  'next table': nextTable,
  log,
  'next entry': chooseEntry(1),
  'entry before': chooseEntry(-1),
  'entries on': chooseEntryPage(1),
  'entries back': chooseEntryPage(-1),
  'newest entry': chooseEntry(Number.NEGATIVE_INFINITY),
  'oldest entry': chooseEntry(Number.POSITIVE_INFINITY),
  'open entry': openEntry,
  search: searching(true),
  'search done': searching(false),
  'only kind': onlyKind,
  'only item': onlyItem,
  'only wrong': onlyWrong,
  'leave log': leaveLog,
  trouble,
  keys,
  palette,
  afresh,
  suspend,
  quit,
} satisfies Record<string, (model: Model) => Step>;

export type Move = keyof typeof moves;

/** The choice moves `by` stops; from none to the first or the last. */
function choose(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const stops = boardStops(model);
    const at = stops.findIndex(({ key }) => key === model.chosen);
    const next = at < 0 ? (by > 0 ? 0 : stops.length - 1) : at + by;
    return chosen(model, stops[Math.max(0, Math.min(next, stops.length - 1))]);
  };
}

/** The choice moves to the first stop of the next part of the page, or the one before. */
function choosePart(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const stops = boardStops(model);
    const parts = [...new Set(stops.map(({ part }) => part))];
    const here = stops.find(({ key }) => key === model.chosen)?.part;
    const at = here === undefined ? (by > 0 ? -1 : parts.length) : parts.indexOf(here);
    const part = parts[Math.max(0, Math.min(parts.length - 1, at + by))];
    return chosen(
      model,
      stops.find((stop) => stop.part === part),
    );
  };
}

function chooseNothing(model: Model): Step {
  return [{ ...model, chosen: null, unfolded: new Set() }, []];
}

function chooseLast(model: Model): Step {
  return chosen(model, boardStops(model).at(-1));
}

/** Turns to what is chosen, or opens or closes the fold. */
function open(model: Model): Step {
  if (model.boat.is === 'loading') return [model, []];
  if (model.boat.is === 'shut') return trouble(model);
  const stop = boardStops(model).find(({ key }) => key === model.chosen);
  const opens = stop?.opens ?? { open: 'answer' };
  if (opens.open === 'item')
    return turnTo(lookedAt(model, opens.id), { page: 'item', id: opens.id, from: 0 });
  if (opens.open === 'engine') return turnTo(model, { page: 'engine', id: opens.id, from: 0 });
  if (opens.open === 'fold') return [{ ...model, unfolded: toggled(model.unfolded, opens.fold) }, []];
  const seen = opens.open === 'answer' ? weatherLookedAt(model) : model;
  return turnTo(seen, { page: opens.open, from: 0 });
}

/** The page on top moves by so many lines, never past its ends. */
function scroll(by: number): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page === 'board') return [model, []];
    const from = Math.max(0, Math.min(mostFrom(model), page.from + by));
    return [withTop(model, { ...page, from }), []];
  };
}

function scrollPage(by: 1 | -1): (model: Model) => Step {
  return (model) => scroll(by * Math.max(1, pageRows(model.size) - 2))(model);
}

/** From one item's page to the next, in the order of the boat file. */
function turnItem(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'item' || model.boat.is !== 'open') return [model, []];
    const ids = shownItems(model.boat).map(({ id }) => id);
    const at = ids.indexOf(page.id);
    const id = ids[Math.max(0, Math.min(ids.length - 1, at + by))] ?? page.id;
    return [withTop(lookedAt(model, id), { page: 'item', id, from: 0 }), []];
  };
}

function back(model: Model): Step {
  return [turnedBack(model), []];
}

function weather(model: Model): Step {
  if (model.boat.is !== 'open') return [model, []];
  return turnTo(weatherLookedAt(model), NEW_WEATHER);
}

const NEW_WEATHER: Page = {
  page: 'weather',
  from: 0,
  hour: 0,
  field: 'wind',
  trial: {},
  tried: null,
  trying: false,
};

/** Points at a later or an earlier departure, never past those looked at. */
function pointHour(by: number): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'weather' || model.boat.is !== 'open') return [model, []];
    const document = page.tried ?? model.boat.document;
    const last = (document?.curve.length ?? 1) - 1;
    const hour = Math.max(0, Math.min(last, page.hour + by));
    return [withTop(model, { ...page, hour }), []];
  };
}

/** From one thing that can be tried to the next, round and round. */
function chooseField(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    const { boat } = model;
    if (page.page !== 'weather' || boat.is !== 'open' || boat.document === null) return [model, []];
    const at = TRIAL_FIELDS.indexOf(page.field) + by + TRIAL_FIELDS.length;
    const field = TRIAL_FIELDS[at % TRIAL_FIELDS.length]!;
    const words = triedWords(page.trial, field, { loaded: boat.loaded, document: boat.document });
    return [{ ...withTop(model, { ...page, field }), notice: `${words}: + and - try another` }, []];
  };
}

/** Tries the thing chosen a step higher or lower: the boat file is left as it is. */
function tryStep(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    const { boat } = model;
    if (page.page !== 'weather' || boat.is !== 'open' || boat.document === null) return [model, []];
    if (boat.document.forecast === null)
      return [{ ...model, notice: 'without a forecast there is nothing to try' }, []];
    const ground = { loaded: boat.loaded, document: boat.document };
    const trial = stepped(page.trial, page.field, by, ground);
    if (!isTrial(trial)) return tryNothing(model);
    return [withTop(model, { ...page, trial, trying: true }), [{ do: 'try', loaded: boat.loaded, trial }]];
  };
}

/** Back to what the boat file says. */
function tryNothing(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'weather') return [model, []];
  return [withTop(model, { ...page, trial: {}, tried: null, trying: false }), []];
}

function trouble(model: Model): Step {
  return pageOf(model).page === 'trouble' ? [model, []] : turnTo(model, { page: 'trouble', from: 0 });
}

function keys(model: Model): Step {
  const { page } = pageOf(model);
  return page === 'keys' ? back(model) : turnTo(model, { page: 'keys', of: page, from: 0 });
}

function palette(model: Model): Step {
  if (!model.colour)
    return [{ ...model, notice: 'plain: this terminal has no colour, or was asked for none' }, []];
  const next = nextPalette(model.palette);
  return [{ ...model, palette: next, notice: next }, [{ do: 'keep palette', palette: next }]];
}

function afresh(model: Model): Step {
  return [model, [{ do: 'draw afresh' }, { do: 'load' }]];
}

function suspend(model: Model): Step {
  return [model, [{ do: 'suspend' }]];
}

function quit(model: Model): Step {
  return [model, [{ do: 'quit' }]];
}

function turnTo(model: Model, page: Page): Step {
  return [turnedTo(model, page), []];
}

function chosen(model: Model, stop: Stop | undefined): Step {
  return [{ ...model, chosen: stop?.key ?? null }, []];
}

/** What was turned to is no longer new. */
function lookedAt(model: Model, id: string): Model {
  if (!model.fresh.has(id)) return model;
  return { ...model, fresh: new Set([...model.fresh].filter((one) => one !== id)) };
}

/** The answer in full, and the weather, tell of the forecast's age and of staying. */
function weatherLookedAt(model: Model): Model {
  return lookedAt(lookedAt(model, FRESH.forecast), FRESH.staying);
}

function toggled(set: ReadonlySet<string>, one: string): ReadonlySet<string> {
  const next = new Set(set);
  if (!next.delete(one)) next.add(one);
  return next;
}
