import type { z } from 'zod';
import { amount, group, id, type Known, note, words } from './fields.ts';

export const engineSchema = group(
  {
    id: id('an engine').describe('Its id: small letters, digits and hyphens; unique in the boat.'),
    name: words(200).describe('Its name as said aboard.'),
    usualHoursPerDay: amount('hours a day', 0, 24).describe(
      'How long it usually runs on a day at anchor (charging, chilling), in hours a day.',
    ),
    note,
  },
  'an engine',
);

export type Engine = Known<z.output<typeof engineSchema>>;
