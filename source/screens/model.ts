import type { BoatChange } from '../boat/change.ts';
import type { Condition } from '../condition/condition.ts';
import type { Content } from '../forecast/content.ts';
import type { Draft, Entry } from '../logbook/entries.ts';
import type { LoadedBoat, OwnTables } from '../outside.ts';
import type { Result, Trouble } from '../trouble.ts';
import type { VerdictDocument } from '../words/document.ts';
import type { NewBoat } from '../words/new-boat.ts';
import type { Kept } from '../words/preference-fields.ts';
import { FILE_UNITS } from '../words/preferred.ts';
import type { TraceAsked, TraceTold } from '../words/traced.ts';
import type { BoatItemPage, BoatPage } from './boat/part.ts';
import { type FirstRunPage, firstRun } from './first-run/first-run.ts';
import type { FormPage } from './forms/form.ts';
import type { HeardPage } from './heard.ts';
import type { EntryPage } from './log/entry-page.ts';
import type { LogPage } from './log/log-page.ts';
import type { PaletteName } from './palette.ts';
import type { PreferencesPage } from './preferences/preferences.ts';
import type { RoundPage } from './round/round.ts';
import type { StoresPage } from './stores/stores.ts';
import type { FoundPage, TracedNow, TracePage } from './trace/trace.ts';
import type { Trial, TrialField } from './trial.ts';

/** All the board knows. Only `update` makes a new one; views are functions of it. */
export interface Model {
  /** ms since 1970 UTC: the clock, or the instant asked for. */
  readonly now: number;
  /** The person's zone, as an IANA name. */
  readonly zone: string;
  /** Who types, for the entries; null where the preferences give no name. */
  readonly by: string | null;
  readonly size: Size;
  readonly boat: BoatShown;
  /** The page on top is the last; below it lie those to come back to. The first is always the board. */
  readonly pages: readonly [Page, ...Page[]];
  /** The stop the choice rests on, on the board; null until the first move. */
  readonly chosen: string | null;
  /** Folds that were opened. */
  readonly unfolded: ReadonlySet<string>;
  /** Items, and those of `FRESH`, that have become worse since the board was opened and have not been looked at: they say NEW. */
  readonly fresh: ReadonlySet<string>;
  readonly palette: PaletteName;
  /** What the person prefers, as it is kept. */
  readonly kept: Kept;
  /** The zone where none is preferred. */
  readonly machineZone: string;
  /** False where the terminal has no colour or was asked for none. */
  readonly colour: boolean;
  /** False where arrows cannot be drawn, or are read out: keys are then in words. */
  readonly arrows: boolean;
  /** When the boat folder was last copied to the second place and the copy checked, ms since 1970 UTC or null; `copy` null: no place is named. */
  readonly copy: { readonly at: number | null } | null;
  /** The round left last: what it asked for may still be on its way to the disk. */
  readonly leftRound: RoundPage | null;
  /** What was last asked of a trace, and told. */
  readonly traced: TracedNow | null;
  /** One line that answers the last key or the last change; null once another key is pressed. */
  readonly notice: string | null;
}

export interface Size {
  readonly columns: number;
  readonly rows: number;
}

export type BoatShown =
  | { readonly is: 'loading' }
  /** `document` is null until the first reckoning is done; `working` while one runs. */
  | {
      readonly is: 'open';
      readonly loaded: Loaded;
      readonly document: VerdictDocument | null;
      readonly working: boolean;
    }
  | { readonly is: 'shut'; readonly troubles: readonly Trouble[] };

/** What one reading of the boat folder gives. */
export interface Loaded extends LoadedBoat {
  readonly condition: Condition;
  /** The owner's own tables for a trace, and what is wrong with those that cannot be used. */
  readonly own: OwnTables;
  /** The moment asked for: what happened after it is not listed. Null where the clock runs. */
  readonly seenUntil: number | null;
}

/** A page turned to. `from` is the first line shown. */
export type Page =
  | { readonly page: 'board' }
  | { readonly page: 'item'; readonly id: string; readonly from: number }
  | { readonly page: 'engine'; readonly id: string; readonly from: number }
  | { readonly page: 'answer'; readonly from: number }
  /** `hour`: the departure pointed at, hours from now. `tried` answers the trial; null until the first is worked out. */
  | {
      readonly page: 'weather';
      readonly from: number;
      readonly hour: number;
      readonly field: TrialField;
      readonly trial: Trial;
      readonly tried: VerdictDocument | null;
      readonly trying: boolean;
    }
  /** `at`: the forecast pointed at, from 0 in the order of the document. */
  | { readonly page: 'forecasts'; readonly from: number; readonly at: number }
  | FormPage
  | BoatPage
  | BoatItemPage
  | StoresPage
  | LogPage
  | EntryPage
  | HeardPage
  | FirstRunPage
  | RoundPage
  | TracePage
  | FoundPage
  | PreferencesPage
  | { readonly page: 'trouble'; readonly from: number }
  | { readonly page: 'keys'; readonly of: PageName; readonly from: number };

export type PageName = Page['page'];
export type ForecastsPage = Extract<Page, { page: 'forecasts' }>;
export type WeatherPage = Extract<Page, { page: 'weather' }>;

export type Message =
  /** `now`: the moment it was pressed, where the clock runs. */
  | { readonly is: 'key'; readonly key: string; readonly now?: number }
  | { readonly is: 'pasted'; readonly text: string }
  | { readonly is: 'resized'; readonly size: Size }
  | { readonly is: 'tick'; readonly now: number }
  | { readonly is: 'log changed' }
  | { readonly is: 'loaded'; readonly result: Result<Loaded> }
  | { readonly is: 'saved'; readonly drafts: readonly Draft[]; readonly result: Result<readonly Entry[]> }
  | { readonly is: 'boat changed'; readonly what: string; readonly result: Result<null> }
  | { readonly is: 'taken in'; readonly content: Content; readonly result: Result<string> }
  /** A boat was begun, or the sample opened; `what` says so. */
  | { readonly is: 'begun'; readonly what: string; readonly result: Result<null> }
  /** So many of the newest entries can be searched. */
  | { readonly is: 'worded'; readonly of: Loaded; readonly upTo: number }
  | { readonly is: 'judged'; readonly of: Loaded; readonly document: VerdictDocument }
  | { readonly is: 'traced'; readonly of: Loaded; readonly asked: TraceAsked; readonly told: TraceTold }
  | {
      readonly is: 'tried';
      readonly of: Loaded;
      readonly trial: Trial;
      readonly document: VerdictDocument;
    };

/** What the world is asked to do; the answer comes back as a message. */
export type Request =
  | { readonly do: 'load' }
  | { readonly do: 'judge'; readonly loaded: Loaded }
  | { readonly do: 'trace'; readonly loaded: Loaded; readonly asked: TraceAsked }
  /** Words some more entries, for a search, from this one of the newest on. */
  | { readonly do: 'word'; readonly loaded: Loaded; readonly from: number }
  | { readonly do: 'try'; readonly loaded: Loaded; readonly trial: Trial }
  /** Saves entries, all or none; the answer names the drafts by identity. */
  | { readonly do: 'save'; readonly drafts: readonly Draft[] }
  /** Takes a forecast in as typed; `text` is what was typed, `now` when. The answer names the content by identity. */
  | { readonly do: 'take in'; readonly content: Content; readonly text: string; readonly now: number }
  | { readonly do: 'begin'; readonly boat: NewBoat; readonly folder: string }
  | { readonly do: 'open sample' }
  /** Changes boat.json; the answer says `what` was done, or what stood in the way. */
  | { readonly do: 'change boat'; readonly change: BoatChange; readonly what: string }
  /** Hands the terminal to the person's editor on boat.json, and reads it again. */
  | { readonly do: 'edit boat' }
  | { readonly do: 'keep preferences'; readonly change: Partial<Kept> }
  | { readonly do: 'keep palette'; readonly palette: PaletteName }
  | { readonly do: 'draw afresh' }
  | { readonly do: 'suspend' }
  | { readonly do: 'quit' };

export type Step = readonly [Model, readonly Request[]];

/** The first model, before anything is read. */
export function firstModel(
  given: Pick<Model, 'now' | 'zone' | 'by' | 'size' | 'palette' | 'colour' | 'copy'> &
    Partial<Pick<Model, 'kept' | 'machineZone' | 'arrows'>>,
): Step {
  const model: Model = {
    kept: { ...FILE_UNITS, zone: null, palette: given.palette, name: given.by, backup: null },
    machineZone: given.zone,
    arrows: true,
    ...given,
    palette: given.colour ? given.palette : 'plain',
    boat: { is: 'loading' },
    pages: [{ page: 'board' }],
    chosen: null,
    unfolded: new Set(),
    fresh: new Set(),
    leftRound: null,
    traced: null,
    notice: null,
  };
  return [model, [{ do: 'load' }]];
}

/** The first model where there is no boat to open: the interview of a new one. */
export function modelWithoutBoat(told: readonly Trouble[]): typeof firstModel {
  return (given) => {
    const [model] = firstModel(given);
    return [
      { ...model, boat: { is: 'shut', troubles: told }, pages: [{ page: 'board' }, firstRun(given, told)] },
      [],
    ];
  };
}

/** What can say NEW and is no item: ids have no space in them. */
export const FRESH = { forecast: 'the forecast', staying: 'the anchorage' } as const;

/** The page on top. */
export function pageOf(model: Model): Page {
  return model.pages.at(-1)!;
}

/** Another page on top of those there are. */
export function turnedTo(model: Model, page: Page): Model {
  return { ...model, pages: [...model.pages, page] };
}

/** The page in the place of the one on top. */
export function withTop(model: Model, page: Page): Model {
  const [board, ...rest] = model.pages;
  return { ...model, pages: [board, ...rest.slice(0, -1), page] };
}

/** Without the page on top; the board stays. */
export function turnedBack(model: Model): Model {
  const [board, ...rest] = model.pages;
  return { ...model, pages: [board, ...rest.slice(0, -1)] };
}
