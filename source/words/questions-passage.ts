import type { Boat } from '../boat/boat.ts';
import { type TemplateAnswers, usualSpeed } from '../boat/template-answers.ts';
import { rhumbLine } from '../passage/distance.ts';
import { type NewBoat, type Question, usual, withAnswers } from './new-boat.ts';
import { amountIn, nameIn, numberOf, orOff, positionIn } from './question-answers.ts';
import { amountWords } from './say.ts';

/** One passage, or none yet; its length and speed once it has both ends. */
export function passage(so: NewBoat): readonly Question[] {
  const { from, answers } = so;
  const begins: Question = {
    field: 'from',
    ask: 'A passage she is to be ready for, from (56.41 -5.47)',
    usual: { text: 'none yet' },
    read: positionIn('from', (position) => ({ ...so, from: position })),
  };
  if (from === null) return [begins];
  const ends: Question = {
    field: 'to',
    ask: 'To (56.62 -6.07)',
    usual: answers.passage === undefined ? null : { text: 'as answered' },
    read: positionIn('to', (to) =>
      withAnswers(so, { passage: { name: 'First passage', legs: [{ from, to }] } }),
    ),
  };
  return answers.passage === undefined
    ? [begins, ends]
    : [begins, ends, ...aboutPassage(so, answers.passage)];
}

function aboutPassage(so: NewBoat, passage: NonNullable<TemplateAnswers['passage']>): readonly Question[] {
  const { name, legs, speed = usualSpeed[so.answers.template] } = passage;
  const [leg] = legs;
  const direct = leg === undefined ? 0 : rhumbLine(leg.from, leg.to).nm;
  const change = (own: Partial<typeof passage>) => withAnswers(so, { passage: { ...passage, ...own } });
  return [
    {
      field: 'passage',
      ask: 'What the passage is called',
      usual: { text: name },
      read: nameIn('passage', (own) => change({ name: own })),
    },
    {
      field: 'nm',
      ask: 'Its length as sailed',
      usual: { text: amountWords(leg?.nm ?? direct, 'nm'), from: 'the rhumb line' },
      read: amountIn('nm', 'nm', { above: 0, most: 10_000 }, (nm) =>
        change({ legs: legs.map((one) => ({ ...one, nm })) }),
      ),
    },
    {
      field: 'speed',
      ask: 'Speed made good: usual?',
      usual: usual(speed.mean, 'kn'),
      read: amountIn('speed', 'kn', { above: 0.1, most: 60 }, (mean) =>
        change({ speed: { ...speed, mean } }),
      ),
    },
    {
      field: 'speed-bad-day',
      ask: 'Speed made good: on a bad day?',
      usual: usual(numberOf(Math.max(0, speed.mean - BAD_DAY_SDS * speed.sd), 2), 'kn'),
      read: amountIn('speed-bad-day', 'kn', { least: 0, most: speed.mean }, (slow) =>
        change({ speed: { ...speed, sd: numberOf((speed.mean - slow) / BAD_DAY_SDS, 3) } }),
      ),
    },
  ];
}

/** A bad day is the worst of ten: 1.3 standard deviations from the usual one. */
const BAD_DAY_SDS = 1.3;

export function limits(so: NewBoat, boat: Boat): readonly Question[] {
  const { wind, gust, seas, headwind } = boat.limits;
  const knots = { above: 0, most: 100 };
  const own = (limit: NonNullable<TemplateAnswers['limits']>) =>
    withAnswers(so, { limits: { ...so.answers.limits, ...limit } });
  return [
    {
      field: 'wind',
      ask: 'The most wind you would leave in (off: not to be judged)',
      usual: usual(wind, 'kn'),
      read: orOff(
        amountIn('wind', 'kn', knots, (most) => own({ wind: most })),
        () => own({ wind: false }),
      ),
    },
    {
      field: 'gust',
      ask: 'The hardest gust',
      usual: usual(gust, 'kn'),
      read: amountIn('gust', 'kn', knots, (most) => own({ gust: most })),
    },
    {
      field: 'headwind',
      ask: 'The most wind on the bow',
      usual: usual(headwind, 'kn'),
      read: amountIn('headwind', 'kn', knots, (most) => own({ headwind: most })),
    },
    {
      field: 'seas',
      ask: 'The highest seas (off: not to be judged)',
      usual: usual(seas, 'm'),
      read: orOff(
        amountIn('seas', 'm', { above: 0, most: 20 }, (most) => own({ seas: most })),
        () => own({ seas: false }),
      ),
    },
  ];
}
