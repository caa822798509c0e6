import { z } from 'zod';
import { group, itemFields, type Known } from './fields.ts';

export const datedSchema = group(
  {
    ...itemFields('a dated thing'),
    expires: z.iso
      .date({ error: 'a date as year-month-day, as in "2027-03-31"' })
      .optional()
      .describe('The last day it is good for, as year-month-day, UTC. Absent: not entered yet.'),
  },
  'a dated thing',
);

export type Dated = Known<z.output<typeof datedSchema>>;
