import { boatSchema } from '../boat/boat.ts';
import { templateBoat } from '../boat/template.ts';
import type { Template } from '../boat/template-answers.ts';
import { firstEntries } from '../logbook/first-entries.ts';
import type { Trouble } from '../trouble.ts';
import { entryWords } from './entry-words.ts';
import { instant } from './figures.ts';
import { blankBoat, type Clock, type NewBoat, type Question } from './new-boat.ts';
import { questionsOf } from './questions.ts';
import { quoted } from './quoted.ts';
import { sayShortly } from './troubles.ts';

const FIRST: Template = 'single';

/** Answers as typed, by the questions' fields; what is not among them, or empty, stands at its default. */
export type Answers = { readonly [field: string]: string };

/** What the answers come to: the boat, all the questions she is asked, and what was wrong with an answer, by field. */
export interface Answered {
  readonly boat: NewBoat;
  readonly questions: readonly Question[];
  readonly troubles: { readonly [field: string]: readonly Trouble[] };
}

/** The answers taken in order. An answer can bring further questions, so they are asked for anew after each. */
export function answered(given: Answers, clock: Clock): Answered {
  const troubles: { [field: string]: readonly Trouble[] } = {};
  let boat = blankBoat(FIRST);
  let questions = questionsOf(boat);
  for (let n = 0; n < questions.length; n += 1) {
    const question = questions[n]!;
    const typed = (Object.hasOwn(given, question.field) && given[question.field]!.trim()) || '';
    if (typed === '' && question.usual !== null) continue;
    const read =
      typed === '' ? { ok: false as const, troubles: [wanting(question)] } : question.read(typed, clock);
    if (!read.ok) {
      troubles[question.field] = read.troubles;
      continue;
    }
    boat = read.value;
    questions = questionsOf(boat);
  }
  return { boat, questions, troubles };
}

function wanting({ field, ask }: Question): Trouble {
  return { kind: 'wanting', what: `an answer to "${ask}"`, example: `"${field}": "Whimbrel"` };
}

/** What was wrong with an answer, beside its question. */
export function sayBeside(trouble: Trouble): string {
  if (trouble.kind !== 'not understood') return sayShortly(trouble);
  const such = trouble.example === undefined ? '' : ` Such as: ${trouble.example}.`;
  return `${quoted(trouble.text)} is not understood here. It takes ${trouble.expected}.${such}`;
}

/** What an answer was understood as: the first entry it becomes, or the default it takes the place of. Null where there is no more to say than was typed. */
export function understoodAs({ answers, readings }: NewBoat, field: string, clock: Clock): string | null {
  const file = templateBoat({ ...answers, name: answers.name || '-' });
  const only = <T>(of: { readonly [id: string]: T }) =>
    Object.hasOwn(of, field) ? { [field]: of[field]! } : {};
  const { hours, levels, checks } = readings;
  const at = instant(clock.now);
  const [draft] = firstEntries(
    file,
    { hours: only(hours), levels: only(levels), checks: only(checks), oilChange: null },
    { at, by: null },
  );
  if (draft) return entryWords(draft, boatSchema.parse(file));
  const question = questionsOf({ answers, readings, from: null }).find((one) => one.field === field);
  return question?.usual?.from === undefined ? null : question.usual.text;
}
