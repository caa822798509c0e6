import type { BoatChange } from '../boat/change.ts';
import type { Content } from '../forecast/content.ts';
import type { Draft, Entry } from '../logbook/entries.ts';
import type { Result } from '../trouble.ts';
import type { VerdictDocument } from '../words/document.ts';
import type { NewBoat } from '../words/new-boat.ts';
import type { Kept } from '../words/preference-fields.ts';
import type { TraceAsked, TraceTold } from '../words/traced.ts';
import { waitsForTrace } from './bindings.ts';
import { wordFrom } from './log/rows.ts';
import { type Loaded, type Message, type Model, pageOf, type Request, type Step } from './model.ts';
import type { PaletteName } from './palette.ts';
import { boatOnTrial } from './trial.ts';
import { typedAhead } from './typed-ahead.ts';
import { update } from './update.ts';

/** What the board needs done: reading the folder and reckoning the answer. */
export interface BoardWork {
  load(): Promise<Result<Loaded>>;
  /** The readiness run, in turns of some milliseconds. Null where it was given up, since it was no longer wanted. */
  judge(loaded: Loaded, wanted: () => boolean): Promise<VerdictDocument | null>;
  /** A trace, in the same turns; null where it was given up. */
  trace(loaded: Loaded, asked: TraceAsked, wanted: () => boolean): Promise<TraceTold | null>;
  /** Calls back when the log has changed on the disk; returns how to stop. */
  watch(changed: () => void): () => void;
  /** Ok only when all of them are on the disk. */
  save(drafts: readonly Draft[]): Promise<Result<readonly Entry[]>>;
  /** Takes a forecast in, typed as `text` at `now`. Ok only when it is on the disk. */
  takeIn(content: Content, text: string, now: number): Promise<Result<string>>;
  /** Makes the folder of a new boat, and opens it: what is loaded from here on is hers. */
  begin(boat: NewBoat, folder: string): Promise<Result<null>>;
  /** The same with a fresh copy of the sample boat. */
  sample(): Promise<Result<null>>;
  keepPalette(palette: PaletteName): void;
  /** Writes boat.json, whole or not at all. */
  changeBoat(change: BoatChange): Promise<Result<null>>;
  /** All that is worded from here on is in what was preferred. */
  keepPreferences(change: Partial<Kept>): void;
}

/** Holds the model, takes messages one at a time, and runs what `update` asks for. */
export interface Driver {
  model(): Model;
  subscribe(changed: () => void): () => void;
  send(message: Message): void;
}

export interface DriverOptions {
  readonly first: Step;
  readonly work: BoardWork;
  /** Runs after the frame that is due has been drawn. */
  readonly afterFrame: (run: () => void) => void;
  readonly suspend: () => void;
  /** Hands the terminal to an editor on boat.json. */
  readonly edit: () => void;
  readonly redraw: () => void;
  readonly quit: () => void;
  readonly fault: (fault: unknown) => void;
}

type JudgeRequest = Extract<Request, { do: 'judge' }>;
type TryRequest = Extract<Request, { do: 'try' }>;
type TraceRequest = Extract<Request, { do: 'trace' }>;

export function driverOf(options: DriverOptions): Driver {
  const { work, fault } = options;
  let [model] = options.first;
  let reading = false;
  let readAgain = false;
  let judging: JudgeRequest | null = null;
  let trying: TryRequest | null = null;
  /** How many answers of the disk are to come. */
  let asked = 0;
  let tracing: TraceRequest | null = null;
  const listeners = new Set<() => void>();

  /** A round is walked on while its rows are still on their way: nothing in it waits for the disk. Of a trace only those keys wait that hang on it, or move over it. */
  const ahead = typedAhead(take, (typed) => {
    const disk = (asked > 0 || reading || readAgain) && pageOf(model).page !== 'round';
    return disk || (typed.is === 'key' && waitsForTrace(model, typed.key));
  });

  function take(message: Message): void {
    guarded(() => {
      const [next, requests] = update(model, message);
      if (next !== model) {
        model = next;
        for (const listener of listeners) listener();
      }
      for (const request of requests) run(request);
    });
  }

  function run(request: Request): void {
    switch (request.do) {
      case 'load':
        void load();
        return;
      case 'judge':
        judging = request;
        options.afterFrame(() => void judge(request));
        return;
      case 'word':
        options.afterFrame(() => word(request));
        return;
      case 'try':
        trying = request;
        options.afterFrame(() => void tryOut(request));
        return;
      case 'trace':
        tracing = request;
        options.afterFrame(() => void trace(request));
        return;
      case 'save':
        void ask(work.save(request.drafts), (result) => ({ is: 'saved', drafts: request.drafts, result }));
        return;
      case 'change boat':
        void ask(work.changeBoat(request.change), (result) => ({
          is: 'boat changed',
          what: request.what,
          result,
        }));
        return;
      case 'edit boat':
        options.edit();
        return;
      case 'take in':
        void ask(work.takeIn(request.content, request.text, request.now), (result) => ({
          is: 'taken in',
          content: request.content,
          result,
        }));
        return;
      case 'begin':
        void ask(work.begin(request.boat, request.folder), (result) => ({
          is: 'begun',
          what: `saved: her folder is ${request.folder}`,
          result,
        }));
        return;
      case 'open sample':
        void ask(work.sample(), (result) => ({
          is: 'begun',
          what: 'the sample boat: a copy, gone when the board is left',
          result,
        }));
        return;
      case 'keep palette':
        work.keepPalette(request.palette);
        return;
      case 'keep preferences':
        work.keepPreferences(request.change);
        return;
      case 'draw afresh':
        options.redraw();
        return;
      case 'suspend':
        options.suspend();
        return;
      case 'quit':
        options.quit();
    }
  }

  /** A part at a time, each after a frame, so that keys come first. */
  function word({ loaded, from }: Extract<Request, { do: 'word' }>): void {
    guarded(() => ahead({ is: 'worded', of: loaded, upTo: wordFrom(loaded, from) }));
  }

  /** Of several readings only the last is judged to the end. */
  async function judge(request: JudgeRequest): Promise<void> {
    const { loaded } = request;
    const document = await judged(loaded, () => request === judging);
    if (document) ahead({ is: 'judged', of: loaded, document });
  }

  /** Of several trials only the last is worked out. */
  async function tryOut(request: TryRequest): Promise<void> {
    const { loaded, trial } = request;
    const document = await judged(boatOnTrial(loaded, trial), () => request === trying);
    if (document) ahead({ is: 'tried', of: loaded, trial, document });
  }

  /** Of several traces only the last is worked out. */
  async function trace(request: TraceRequest): Promise<void> {
    const { loaded, asked } = request;
    const wanted = () => request === tracing;
    try {
      const told = wanted() ? await work.trace(loaded, asked, wanted) : null;
      if (told) ahead({ is: 'traced', of: loaded, asked, told });
    } catch (thrown) {
      fault(thrown);
    }
  }

  async function judged(loaded: Loaded, wanted: () => boolean): Promise<VerdictDocument | null> {
    try {
      return wanted() ? await work.judge(loaded, wanted) : null;
    } catch (thrown) {
      fault(thrown);
      return null;
    }
  }

  /** Asks the disk, and sends its answer on. */
  async function ask<T>(answer: Promise<T>, told: (result: T) => Message): Promise<void> {
    asked += 1;
    try {
      const message = told(await answer);
      asked -= 1;
      ahead(message);
    } catch (thrown) {
      fault(thrown);
    }
  }

  /** One reading at a time: what changes while one runs is read after it. */
  async function load(): Promise<void> {
    if (reading) {
      readAgain = true;
      return;
    }
    reading = true;
    try {
      const result = await work.load();
      reading = false;
      ahead({ is: 'loaded', result });
    } catch (thrown) {
      fault(thrown);
      return;
    }
    if (readAgain) {
      readAgain = false;
      void load();
    }
  }

  function guarded(act: () => void): void {
    try {
      act();
    } catch (thrown) {
      fault(thrown);
    }
  }

  for (const request of options.first[1]) run(request);
  return {
    model: () => model,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    send: ahead,
  };
}
