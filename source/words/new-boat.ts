import type { Template, TemplateAnswers } from '../boat/template-answers.ts';
import type { FirstReadings } from '../logbook/first-entries.ts';
import type { Result } from '../trouble.ts';
import { amountWords } from './say.ts';

/** A new boat as far as it has been answered; what has not been stands at its default. */
export interface NewBoat {
  readonly answers: TemplateAnswers & { readonly template: Template };
  readonly readings: FirstReadings;
  /** Where the passage begins; it is one once it ends somewhere. */
  readonly from: readonly [number, number] | null;
}

export interface Clock {
  readonly now: number;
  /** An IANA name. */
  readonly zone: string;
}

/** One question of the interview. */
export interface Question {
  /** Its name in answers given as JSON. */
  readonly field: string;
  readonly ask: string;
  /** What stands when nothing is answered, and where it comes from; null where it must be answered. */
  readonly usual: { readonly text: string; readonly from?: string } | null;
  /** The new boat with this answered, or what was expected. */
  read(typed: string, clock: Clock): Result<NewBoat>;
}

const PRACTICE = 'common practice';

/** What is entered where nothing is answered. All of it is judgement from common practice, no source; sizes are those of a boat of about 11 m. */
export function blankBoat(template: Template): NewBoat {
  return {
    answers: {
      template,
      name: '',
      crew: 2,
      engineName: template === 'outboard' ? 'Outboard' : 'Main engine',
      oil: template === 'outboard' ? { low: 0.8, full: 1 } : { low: 4, full: 5 },
      fuelTankL: template === 'outboard' ? 25 : 150,
      waterTankL: 250,
    },
    readings: { hours: {}, levels: {}, checks: {}, oilChange: null },
    from: null,
  };
}

/** What is entered of a thing nobody looked at: nothing. */
export const NOT_LOOKED_AT = { text: 'not looked at' };

/** A default figure, in the file unit it is of. */
export function usual(value: number | false | undefined, unit: string | null = null): Question['usual'] {
  return { text: typeof value === 'number' ? amountWords(value, unit) : 'off', from: PRACTICE };
}

export function withAnswers(so: NewBoat, answers: Partial<NewBoat['answers']>): NewBoat {
  return { ...so, answers: { ...so.answers, ...answers } };
}

export function withReadings(so: NewBoat, readings: Partial<FirstReadings>): NewBoat {
  return { ...so, readings: { ...so.readings, ...readings } };
}
