import type { Fluid } from '../boat/fluid.ts';
import type { FluidEvent } from '../condition/condition.ts';

/** A place along a fluid's life: what can go by, go in, or be drained between two of them. */
export interface Moment {
  /** Instant, ms since 1970 UTC. */
  readonly at: number;
  /** Weighted running hours since the log began. */
  readonly runHours: number;
  /** All poured in since the log began, L. */
  readonly pouredL: number;
  /** Which fill this is, counted from 0: a drain and refill starts the next. */
  readonly fill: number;
}

/** One reading as the sums take it. */
export interface Reading extends Moment {
  /** The level read, L; off the stick, that of the stick's end. */
  readonly levelL: number;
  readonly off: 'on' | 'below' | 'above';
  /** How it was taken, where that is not this fluid's usual way; null where it is. */
  readonly way: string | null;
  /** How far it strays, L. */
  readonly sd: number;
}

/** Work done on a fluid. */
export interface Job extends Moment {
  readonly text: string;
  /** How many readings stand before it. */
  readonly readings: number;
}

/** What was poured in at once, and the moment before it was. */
export interface Pour {
  readonly before: Moment;
  readonly amountL: number;
}

/** A fluid's life in order. */
export interface FluidLife {
  readonly readings: readonly Reading[];
  readonly jobs: readonly Job[];
  readonly pours: readonly Pour[];
  /** After the last event: what was poured in, and which fill it is. */
  readonly end: Pick<Moment, 'pouredL' | 'fill'>;
}

/** A reading with the boat rolling strays this much further: model 3.1. */
const ROUGH = 2.5;
/** Readings stray by this part of low to full, where the boat file does not say: model 3.1. */
const USUAL_ERROR = 1 / 20;

/** How far a reading of a fluid strays, L. */
export function readingErrorL({ readingError, full, low }: Fluid): number {
  return readingError ?? (full - low) * USUAL_ERROR;
}

/** Readings and jobs, with what was poured in and drained up to each. */
export function lifeOf(fluid: Fluid, events: readonly FluidEvent[]): FluidLife {
  const readings: Reading[] = [];
  const jobs: Job[] = [];
  const pours: Pour[] = [];
  const error = readingErrorL(fluid);
  let pouredL = 0;
  let fill = 0;
  for (const event of events) {
    const moment = { at: event.at, runHours: event.runHours, pouredL, fill };
    switch (event.kind) {
      case 'topup':
        pours.push({ before: moment, amountL: event.amountL });
        pouredL += event.amountL;
        break;
      case 'change':
        fill += 1;
        break;
      case 'job':
        jobs.push({ ...moment, text: event.text, readings: readings.length });
        break;
      case 'reading': {
        const { levelL, off, how, rough } = event;
        const way = how === (fluid.how ?? null) ? null : how;
        readings.push({ ...moment, levelL, off, way, sd: rough ? error * ROUGH : error });
        break;
      }
      case 'leak':
        break;
    }
  }
  return { readings, jobs, pours, end: { pouredL, fill } };
}
