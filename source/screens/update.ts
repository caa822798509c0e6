import type { Boat } from '../boat/boat.ts';
import type { Draft, Entry } from '../logbook/entries.ts';
import type { State } from '../readiness/answer.ts';
import type { ForecastAge } from '../readiness/weather-bars.ts';
import type { Result, Trouble } from '../trouble.ts';
import { cleaned } from '../words/cleaned.ts';
import type { VerdictDocument } from '../words/document.ts';
import { entryWords } from '../words/entry-words.ts';
import { stayingPresses } from '../words/staying.ts';
import type { TraceAsked, TraceTold } from '../words/traced.ts';
import { sayNotSaved } from '../words/troubles.ts';
import { bindingOf } from './bindings.ts';
import { boatChanged } from './boat/boat-moves.ts';
import { fillIn } from './forms/form-moves.ts';
import { takenIn } from './heard-moves.ts';
import { worded, wordedAnew } from './log/log-moves.ts';
import {
  type BoatShown,
  FRESH,
  type Loaded,
  type Message,
  type Model,
  type Page,
  type Request,
  type Step,
} from './model.ts';
import { moves } from './moves.ts';
import { roundJudged, roundSaved } from './round/round-saved.ts';
import { traceTold, withTrace } from './trace/trace.ts';
import { traceReckoned, traceSaved } from './trace/trace-moves.ts';
import { isTrial, type Trial } from './trial.ts';
import { pastedInto, typedInto } from './typing.ts';

/** An answer older than this is made anew while the board stands open; an hour is the step in which departures are judged. */
const STALE_MS = 5 * 60_000;

/** From better to worse, to see which items have become worse. */
const WORSE: readonly State[] = ['fit', 'watch', 'unseen', 'unfit'];

const AGES: readonly ForecastAge[] = ['fresh', 'old', 'too old'];

/** What the board makes of a message: the next model, and what the world is asked to do. Pure. */
export function update(model: Model, message: Message): Step {
  return withTrace(taken(model, message));
}

function taken(model: Model, message: Message): Step {
  switch (message.is) {
    case 'key':
      return pressed({ ...model, notice: null, now: message.now ?? model.now }, message.key);
    case 'pasted':
      return [pastedInto(model, message.text) ?? { ...model, notice: 'nothing here to paste into' }, []];
    case 'resized':
      return [{ ...model, size: message.size }, []];
    case 'tick':
      return ticked({ ...model, now: message.now });
    case 'log changed':
      return [model, [{ do: 'load' }]];
    case 'loaded':
      return message.result.ok
        ? opened(model, message.result.value)
        : [{ ...model, boat: { is: 'shut', troubles: message.result.troubles } }, []];
    case 'saved':
      return saved(model, message.drafts, message.result);
    case 'boat changed':
      return boatChanged(model, message.what, message.result);
    case 'taken in':
      return takenIn(model, message.content, message.result);
    case 'begun':
      return begun(model, message.what, message.result);
    case 'worded':
      return worded(model, message.of, message.upTo);
    case 'judged':
      return judged(model, message.of, message.document);
    case 'traced':
      return traced(model, message.of, message.asked, message.told);
    case 'tried':
      return tried(model, message.of, message.trial, message.document);
  }
}

function pressed(model: Model, key: string): Step {
  const typed = typedInto(model, key);
  if (typed) return [typed, []];
  const binding = bindingOf(model, key);
  if (!binding) return [model, []];
  const { act } = binding;
  return typeof act === 'string' ? moves[act](model) : fillIn(act.fillIn)(model);
}

/** The form that asked for it closes once it is saved; else it stays as it was typed, with what stood in the way. */
function saved(model: Model, drafts: readonly Draft[], result: Result<readonly Entry[]>): Step {
  const inRound = roundSaved(model, drafts, result);
  if (inRound) return inRound;
  const [board, ...rest] = traceSaved(model.pages, drafts, result) ?? model.pages;
  const isOf = (page: Page) => page.page === 'form' && page.saving === drafts;
  if (!result.ok) {
    const told = rest.map((page) =>
      page.page === 'form' && isOf(page) ? { ...page, saving: null, told: result.troubles } : page,
    );
    const notice = rest.some(isOf) ? null : notSavedWords(drafts, result.troubles, model);
    return [{ ...model, pages: [board, ...told], notice }, []];
  }
  const pages: Model['pages'] = [board, ...rest.filter((page) => !isOf(page))];
  const notice = model.boat.is === 'open' ? savedWords(drafts, model.boat.loaded.boat) : 'saved';
  return [{ ...model, pages, notice }, [{ do: 'load' }]];
}

/** The board opens on the boat that was begun; or the interview stays as it was typed, with what stood in the way. */
function begun(model: Model, what: string, result: Result<null>): Step {
  const [board, ...rest] = model.pages;
  if (result.ok)
    return [{ ...model, pages: [board], boat: { is: 'loading' }, notice: what }, [{ do: 'load' }]];
  const told = rest.map((page) =>
    page.page === 'first run' ? { ...page, making: null, told: result.troubles } : page,
  );
  return [{ ...model, pages: [board, ...told] }, []];
}

/** Of a page that was left meanwhile: what was typed is said with what stood in the way. */
function notSavedWords(drafts: readonly Draft[], troubles: readonly Trouble[], { boat }: Model): string {
  const words = boat.is === 'open' && drafts[0] ? `: ${entryWords(drafts[0], boat.loaded.boat)}` : '';
  return `${sayNotSaved(troubles)}${words}`;
}

function savedWords(drafts: readonly Draft[], boat: Boat): string {
  const [first] = drafts;
  const more = drafts.length > 1 ? `, and ${drafts.length - 1} more` : '';
  return first ? `saved: ${entryWords(first, boat)}${more}` : 'saved';
}

function opened(model: Model, loaded: Loaded): Step {
  const before = model.boat.is === 'open' ? model.boat : null;
  const boat: BoatShown = { is: 'open', loaded, document: before?.document ?? null, working: true };
  const trials = model.pages.flatMap((page): Request[] =>
    page.page === 'weather' && isTrial(page.trial) ? [{ do: 'try', loaded, trial: page.trial }] : [],
  );
  const [next, wording] = wordedAnew({ ...model, boat }, loaded);
  return [next, [{ do: 'judge', loaded }, ...trials, ...wording]];
}

/** A trace that reckons with its last answer now asks the next. */
function traced(model: Model, of: Loaded, asked: TraceAsked, told: TraceTold): Step {
  const next = traceTold(model, of, asked, told);
  return [next === model ? model : traceReckoned(next, of), []];
}

/** What was tried meanwhile, or stands on an older reading, is dropped. */
function tried(model: Model, of: Loaded, trial: Trial, document: VerdictDocument): Step {
  if (model.boat.is !== 'open' || model.boat.loaded !== of) return [model, []];
  const [board, ...rest] = model.pages;
  const answered = rest.map((page) =>
    page.page === 'weather' && page.trial === trial
      ? { ...page, tried: cleaned(document, ['trouble']), trying: false }
      : page,
  );
  return [{ ...model, pages: [board, ...answered] }, []];
}

/** An answer to an older reading of the folder is dropped: a newer one is on its way. */
function judged(model: Model, of: Loaded, document: VerdictDocument): Step {
  if (model.boat.is !== 'open' || model.boat.loaded !== of) return [model, []];
  const before = model.boat.document;
  const fresh = before ? worseIn(before, document, model.fresh) : model.fresh;
  const shown = cleaned(document, ['trouble']);
  const pages = roundJudged(model.pages, of, shown);
  return [{ ...model, pages, fresh, boat: { ...model.boat, document: shown, working: false } }, []];
}

function worseIn(before: VerdictDocument, after: VerdictDocument, fresh: ReadonlySet<string>) {
  const states = new Map(before.items.map(({ id, state }) => [id, state]));
  const worse = after.items.filter(({ id, state }) => {
    const was = states.get(id);
    return was !== undefined && WORSE.indexOf(state) > WORSE.indexOf(was);
  });
  const older = AGES.indexOf(after.forecast?.age ?? 'fresh') > AGES.indexOf(before.forecast?.age ?? 'fresh');
  return new Set([
    ...fresh,
    ...worse.map(({ id }) => id),
    ...(older ? [FRESH.forecast] : []),
    ...(!stayingPresses(before) && stayingPresses(after) ? [FRESH.staying] : []),
  ]);
}

function ticked(model: Model): Step {
  const { boat, now } = model;
  if (boat.is !== 'open' || boat.working || boat.document === null) return [model, []];
  const stale = now - Date.parse(boat.document.at) >= STALE_MS;
  return stale ? [model, [{ do: 'load' }]] : [model, []];
}
