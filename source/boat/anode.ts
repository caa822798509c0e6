import type { z } from 'zod';
import { amount, group, id, itemFields, type Known, list, oneOf, part } from './fields.ts';

export const anodeSchema = group(
  {
    ...itemFields('an anode'),
    metal: oneOf(['zinc', 'aluminium', 'magnesium']).describe('What it is made of.'),
    water: oneOf(['salt', 'brackish', 'fresh']).describe('The water it works in.'),
    massKg: amount('kilograms', 0.001, 1000).optional().describe('Its mass when new, in kilograms.'),
    diameterMm: amount('millimetres', 0.1, 10000)
      .optional()
      .describe('Its diameter when new, in millimetres.'),
    lengthMm: amount('millimetres', 0.1, 10000).optional().describe('Its length when new, in millimetres.'),
    usualLifeDays: amount('days', 1, 10000).describe(
      'How long one usually lasts from new to its limit, in days.',
    ),
    limit: part('all of the metal', 0, 0.99)
      .default(1 / 3)
      .describe('The share of metal left at which it is finished, 0 to 1. One third where absent.'),
    spare: id('a spare').optional().describe('The spare it is renewed from.'),
    unsettles: list(id('a check'), 'ids of checks').describe('Checks to be made again after it is renewed.'),
  },
  'an anode',
);

export type Anode = Known<z.output<typeof anodeSchema>>;
