import { type Boat, boatSchema, consequenceOf } from '../boat/boat.ts';
import type { Check } from '../boat/check.ts';
import { templateBoat } from '../boat/template.ts';
import { type Template, templates } from '../boat/template-answers.ts';
import {
  blankBoat,
  type NewBoat,
  NOT_LOOKED_AT,
  type Question,
  usual,
  withAnswers,
  withReadings,
} from './new-boat.ts';
import { amountIn, choiceOf, nameIn, wholeIn, yesNoIn } from './question-answers.ts';
import { levelQuestion, machinery, oilChange, tanks } from './questions-machinery.ts';
import { limits, passage } from './questions-passage.ts';

/** What is asked of a new boat as she stands, in order. An answer can bring further questions after it, so ask anew after each. */
export function questionsOf(so: NewBoat): readonly Question[] {
  const boat = boatSchema.parse(templateBoat({ ...so.answers, name: so.answers.name || '-' }));
  return [
    ...herself(so),
    ...machinery(so, boat),
    ...tanks(so),
    ...boat.fluids.map((fluid) => levelQuestion(so, fluid)),
    ...oilChange(so, boat),
    ...surroundings(so),
    ...looksOf(boat).map((check) => lookQuestion(so, check)),
    ...passage(so),
    ...limits(so, boat),
  ];
}

function herself(so: NewBoat): readonly Question[] {
  const { answers } = so;
  const which = Object.entries(templates).map(([word, says]) => `${word} (${says})`);
  return [
    {
      field: 'template',
      ask: `What drives her: ${which.join(', ')}`,
      usual: { text: answers.template },
      read: choiceOf('template', Object.keys(templates) as Template[], (template) => {
        const { name, crew } = answers;
        const blank = blankBoat(template);
        return { ...blank, answers: { ...blank.answers, name, crew } };
      }),
    },
    {
      field: 'name',
      ask: 'Her name',
      usual: answers.name === '' ? null : { text: answers.name },
      read: nameIn('name', (name) => withAnswers(so, { name })),
    },
    {
      field: 'crew',
      ask: 'How many are aboard',
      usual: usual(answers.crew),
      read: wholeIn('crew', 'people', 1, 100, (crew) => withAnswers(so, { crew })),
    },
  ];
}

function surroundings(so: NewBoat): readonly Question[] {
  const { houseBank = 'lead', tropics = false } = so.answers;
  return [
    {
      field: 'bank',
      ask: 'House bank: lead, or lithium (iron phosphate)',
      usual: { text: houseBank },
      read: choiceOf('bank', ['lead', 'lithium'] as const, (kind) => withAnswers(so, { houseBank: kind })),
    },
    {
      field: 'tropics',
      ask: 'Does she lie where tropical storms come: yes or no',
      usual: { text: tropics ? 'yes' : 'no' },
      read: yesNoIn('tropics', (yes) => withAnswers(so, { tropics: yes })),
    },
  ];
}

/** The looks without which she is never ready, but for those made anew before every departure. */
function looksOf(boat: Boat): readonly Check[] {
  return boat.checks.filter(
    (check) => check.when !== 'leaving' && consequenceOf(boat, { ...check, kind: 'check' }) === 'vital',
  );
}

function lookQuestion(so: NewBoat, { id, name, ask, unit, atLeast, atMost }: Check): Question {
  const wanted = [
    ...(atLeast === undefined ? [] : [`at least ${atLeast}`]),
    ...(atMost === undefined ? [] : [`at most ${atMost}`]),
  ].join(', ');
  const saw = (answer: boolean | number) =>
    withReadings(so, { checks: { ...so.readings.checks, [id]: answer } });
  if (ask === 'yes-no')
    return { field: id, ask: `${name}, all well: yes or no`, usual: NOT_LOOKED_AT, read: yesNoIn(id, saw) };
  return {
    field: id,
    ask: [
      name,
      ...(unit === undefined || name.endsWith(unit) ? [] : [unit]),
      ...(wanted === '' ? [] : [wanted]),
    ].join(', '),
    usual: NOT_LOOKED_AT,
    read: amountIn(id, unit ?? null, { least: -1e9, most: 1e9 }, saw),
  };
}
