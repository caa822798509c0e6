import { z } from 'zod';
import { amount, group, id, itemFields, type Known, meanAndSd, oneOf, part, yesNo } from './fields.ts';
import { WAYS_TO_READ } from './ways-to-read.ts';

const loss = (unit: string, most: number) =>
  group(
    {
      ...meanAndSd(unit, most),
      wide: amount(unit, 0, most)
        .optional()
        .describe(`How far the loss strays when it leaks: one standard deviation, in ${unit}.`),
    },
    'a loss with mean and sd',
  );

const engines = z.union([id('an engine'), z.array(id('an engine')).min(1).max(20)], {
  error: 'the id of an engine, or a list of them',
});

/** Oil, gear oil, coolant, fuel, fresh water. Litres throughout. */
export const fluidSchema = group(
  {
    ...itemFields('a fluid'),
    engine: engines
      .optional()
      .describe(
        'The engine it goes by, or a list where a tank is shared. Absent: it is lost by the day alone.',
      ),
    atAnchor: part('an engine hour under way', 0, 10)
      .default(1)
      .describe('What an engine hour at anchor counts for, where an hour under way is 1. No unit.'),
    low: amount('litres', 0, 1000000).describe('The low mark, in litres. 0 for a tank: empty.'),
    full: amount('litres', 0, 1000000).describe('The full mark, in litres.'),
    reserve: amount('litres', 0, 1000000)
      .optional()
      .describe('What must still be there at the end, in litres. The low mark where absent.'),
    readingError: amount('litres', 0, 100000)
      .optional()
      .describe(
        'How far one reading strays: one standard deviation, in litres. A twentieth of low to full where absent.',
      ),
    vary: part('the whole of the usual loss', 0, 5)
      .default(0.3)
      .describe('How much the loss varies from day to day, as a part of itself. No unit.'),
    how: oneOf(WAYS_TO_READ)
      .optional()
      .describe('How it is usually read. Readings taken another way are compared with care.'),
    loss: group(
      {
        perEngineHour: loss('litres an engine hour', 10000)
          .optional()
          .describe('Usual loss while running, in litres an engine hour.'),
        perDay: loss('litres a day', 100000).optional().describe('Usual loss lying, in litres a day.'),
        leakChance: part('certain', 0, 1)
          .default(0.1)
          .describe('The chance, 0 to 1, that it leaks, before anything was read.'),
      },
      'the usual losses',
    )
      .prefault({})
      .describe('How fast it is usually lost.'),
    topUpUnderWay: yesNo().default(false).describe('Whether it can be topped up under way.'),
    stock: id('a spare').optional().describe('The spare, in litres, that it is topped up from.'),
    fuel: yesNo().default(false).describe('Whether it burns: a leak of it in the engine space bars leaving.'),
  },
  'a fluid',
);

export type Fluid = Known<z.output<typeof fluidSchema>>;
