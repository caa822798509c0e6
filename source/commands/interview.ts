import { nearest } from '../boat/nearest.ts';
import { type Template, templates } from '../boat/template-answers.ts';
import type { Outside } from '../outside.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { answered } from '../words/answered.ts';
import { cleanLine } from '../words/clean.ts';
import { blankBoat, type Clock, type NewBoat, type Question } from '../words/new-boat.ts';
import { questionsOf } from '../words/questions.ts';
import { sayTrouble } from '../words/troubles.ts';
import { unknownWord } from '../words/unknown-word.ts';

const FIRST: Template = 'single';
/** So many answers in a row that are not understood come from no person. */
const MOST_TRIES = 100;

/** Asks line by line; an answer that is not understood is asked for again. Null where the person leaves, by q or the end of the input. `onlyNeeded`: what has a default is not asked. */
export async function interview(
  outside: Outside,
  { now, onlyNeeded }: { readonly now: number; readonly onlyNeeded: boolean },
): Promise<NewBoat | null> {
  let boat = blankBoat(FIRST);
  let question: Question | undefined;
  for (let n = 0; ; n += 1) {
    question = questionsOf(boat)[n];
    if (question === undefined) return boat;
    if (onlyNeeded && question.usual !== null) continue;
    const answered = await answerTo(question, boat, now, outside);
    if (answered === null) return null;
    boat = answered;
  }
}

async function answerTo(
  question: Question,
  boat: NewBoat,
  now: number,
  outside: Outside,
): Promise<NewBoat | null> {
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const typed = await outside.ask(prompt(question));
    if (typed === null || typed.trim() === 'q') return null;
    const read = readAnswer(question, typed, boat, { now, zone: outside.zone });
    if (read.ok) return read.value;
    outside.complain(`${read.troubles.map((trouble) => sayTrouble(trouble)).join('\n')}\n`);
  }
  return null;
}

function prompt({ ask, usual }: Question): string {
  const from = usual?.from === undefined ? '' : `, ${usual.from}`;
  return `${ask}${usual === null ? '' : ` [${cleanLine(usual.text)}${from}]`}: `;
}

function readAnswer(question: Question, typed: string, boat: NewBoat, clock: Clock): Result<NewBoat> {
  if (typed.trim() !== '') return question.read(typed, clock);
  return question.usual === null ? bad(wanting(question)) : good(boat);
}

function wanting({ field, ask }: Question): Trouble {
  return { kind: 'wanting', what: `an answer to "${ask}"`, example: `"${field}": "Whimbrel"` };
}

/** The same from answers given all at once, by the questions' fields; what is not among them stands at its default. Every trouble at once. */
export function answersFrom(given: { readonly [field: string]: unknown }, clock: Clock): Result<NewBoat> {
  const typed = Object.fromEntries(Object.entries(given).map(([field, value]) => [field, asTyped(value)]));
  const { boat, questions, troubles: wrong } = answered(typed, clock);
  const asked = questions.map(({ field }) => field);
  const others = Object.keys(given).filter((field) => !asked.includes(field));
  const troubles = [...Object.values(wrong).flat(), ...others.map((field) => notAsked(field, asked))];
  return troubles.length > 0 ? bad(...troubles) : good(boat);
}

function asTyped(value: unknown): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (value === null) return '';
  return typeof value === 'string' || typeof value === 'number' ? String(value) : JSON.stringify(value);
}

function notAsked(field: string, asked: readonly string[]): Trouble {
  if (nearest(field, asked) === undefined && questionFields().includes(field))
    return { kind: 'not understood', field, text: field, expected: 'no answer with the others as they are' };
  return unknownWord('field', field, asked);
}

/** The fields of every question there can be, in the order they are asked. */
export function questionFields(): readonly string[] {
  const here = [0, 0] as const;
  const fields = (Object.keys(templates) as Template[]).flatMap((template) => {
    const blank = blankBoat(template);
    const engines =
      template === 'twin' ? ['port', 'starboard'] : [template === 'outboard' ? 'outboard' : 'main'];
    const hours = Object.fromEntries(engines.map((id) => [id, 0]));
    return questionsOf({
      answers: { ...blank.answers, passage: { name: '-', legs: [{ from: here, to: here }] } },
      readings: { ...blank.readings, hours, oilChange: { at: 0, hours: {} } },
      from: here,
    }).map(({ field }) => field);
  });
  return [...new Set(fields)];
}
