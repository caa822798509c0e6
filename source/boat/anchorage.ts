import type { z } from 'zod';
import { amount, group, id, type Known, list, note, position, sector, words } from './fields.ts';

export const anchorageSchema = group(
  {
    id: id('an anchorage').describe('Its id: small letters, digits and hyphens; unique in the boat.'),
    name: words(200).describe('Its name.'),
    at: position.describe(
      'Where she lies: latitude and longitude in decimal degrees, south and west below zero.',
    ),
    note,
    sectors: list(sector, 'sectors').describe('What it stands from which side.'),
    wind: amount('knots', 0, 200)
      .optional()
      .describe('The most wind it stands from anywhere else, in knots.'),
    seas: amount('metres', 0, 30)
      .optional()
      .describe('The highest seas it stands from anywhere else, in metres.'),
  },
  'an anchorage',
);

export type Anchorage = Known<z.output<typeof anchorageSchema>>;
