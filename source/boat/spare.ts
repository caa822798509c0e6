import type { z } from 'zod';
import { amount, group, id, itemFields, type Known, oneOf, words } from './fields.ts';

export const spareSchema = group(
  {
    ...itemFields('a spare'),
    unit: oneOf(['each', 'L', 'm', 'kg'])
      .default('each')
      .describe('What it is counted in: pieces (each), litres, metres or kilograms.'),
    expected: group(
      {
        perEngineHour: amount('uses an engine hour', 0, 1000)
          .optional()
          .describe('Unplanned uses an engine hour; 2 in 1,000 hours is 0.002. Either this or perDay.'),
        perDay: amount('uses a day', 0, 1000)
          .optional()
          .describe('Uses a day. Either this or perEngineHour.'),
        engine: id('an engine')
          .optional()
          .describe('The engine whose hours count. May be absent where the boat has one engine.'),
        weight: amount('uses', 0.01, 1000)
          .default(1)
          .describe('How many uses of your own log outweigh this figure: the events it is worth.'),
      },
      'the uses expected',
    )
      .optional()
      .describe('How often one is used up unplanned. Absent: not reckoned with.'),
    wanted: amount('pieces or units', 0, 1000000)
      .optional()
      .describe('How many should be aboard, in its unit.'),
    resupplyDays: amount('days', 0, 10000).optional().describe('How long until more can be had, in days.'),
    locker: words(200).optional().describe('Where it is stowed.'),
    price: amount('money', 0, 1000000000).optional().describe('What one costs, in your own money.'),
  },
  'a spare',
);

export type Spare = Known<z.output<typeof spareSchema>>;
