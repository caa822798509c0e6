import type { Draft } from '../../logbook/entries.ts';
import { cleaned } from '../../words/cleaned.ts';
import type { Flooding } from '../../words/trace-document.ts';
import { type TraceAsked, type TraceTold, tablesOf } from '../../words/traced.ts';
import { type Loaded, type Model, pageOf, type Step } from '../model.ts';

/** Where a loss or a fault of an item or engine comes from, hunted look by look. */
export interface TracePage {
  readonly page: 'trace';
  readonly from: number;
  /** The id of the item or engine. */
  readonly id: string;
  /** The table it is traced by. */
  readonly table: string;
  /** An opening and a pump set against each other. */
  readonly flooding: Flooding | null;
  /** An answer, or the strike of one, that the page does not reckon with yet; null where it reckons with all. */
  readonly asked: Answering | null;
}

interface Answering {
  readonly drafts: readonly Draft[];
  /** The ids in the log; null while it is on its way there. */
  readonly ids: readonly string[] | null;
}

/** A hunt that work has closed. */
export interface FoundPage {
  readonly page: 'found';
  readonly from: number;
  readonly id: string;
  /** When the work was done, as the list of closed hunts has it. */
  readonly found: string;
}

/** What the page on top wants told of a trace, and the last that was told of the same thing: null until the first is worked out. */
export interface TracedNow {
  readonly of: Loaded;
  readonly asked: TraceAsked;
  readonly told: TraceTold | null;
  /** Whether what is asked is still being worked out. */
  readonly working: boolean;
}

/** A step, and the request for what its page wants told of a trace, where that is not asked yet. */
export function withTrace([model, requests]: Step): Step {
  const wanted = wantedBy(model);
  if (!wanted || model.boat.is !== 'open') return [model, requests];
  const { loaded } = model.boat;
  const { traced } = model;
  const same = traced !== null && isSame(traced.asked, wanted);
  if (same && traced.of === loaded) return [model, requests];
  const asked = same ? traced.asked : wanted;
  const told = traced?.asked.id === asked.id ? traced.told : null;
  const next = { ...model, traced: { of: loaded, asked, told, working: true } };
  return [next, [...requests, { do: 'trace', loaded, asked }]];
}

/** The answer, unless something else is wanted meanwhile. */
export function traceTold(model: Model, of: Loaded, asked: TraceAsked, told: TraceTold): Model {
  const { traced } = model;
  if (traced?.of !== of || traced.asked !== asked) return model;
  return { ...model, traced: { of, asked, told: cleaned(told), working: false } };
}

/** Whether the page on top is still to be told its trace. */
export function isTracing(model: Model): boolean {
  return wantedBy(model) !== null && (model.traced?.working ?? false);
}

/** What is told of the thing of the page on top, or of the page below a form; null until it is worked out. */
export function toldOf({ traced }: Model, id: string): TraceTold | null {
  return traced?.asked.id === id ? traced.told : null;
}

function wantedBy(model: Model): TraceAsked | null {
  const page = pageOf(model);
  if (model.boat.is !== 'open') return null;
  if (page.page === 'trace') {
    const { id, table, flooding } = page;
    return { id, table, flooding, found: null };
  }
  if (page.page === 'found') return { id: page.id, table: null, flooding: null, found: page.found };
  if (page.page !== 'item' && page.page !== 'engine') return null;
  // The trace that its key turns to, so that it is there by then.
  const [first] = tablesOf(model.boat.loaded, page.id);
  return first ? { id: page.id, table: first.id, flooding: null, found: null } : null;
}

function isSame(one: TraceAsked, other: TraceAsked): boolean {
  return (
    one.id === other.id &&
    one.table === other.table &&
    one.flooding === other.flooding &&
    one.found === other.found
  );
}
