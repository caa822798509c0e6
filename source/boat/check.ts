import type { z } from 'zod';
import { amount, group, itemFields, type Known, oneOf, words } from './fields.ts';

export const checkSchema = group(
  {
    ...itemFields('a check'),
    ask: oneOf(['yes-no', 'number']).default('yes-no').describe('How it is answered.'),
    unit: words(40).optional().describe('The unit of the number, as in V or drops a minute.'),
    atLeast: amount('the unit of the check', -1e9, 1e9)
      .optional()
      .describe('The number must be at least this, in the unit of the check.'),
    atMost: amount('the unit of the check', -1e9, 1e9)
      .optional()
      .describe('The number must be at most this, in the unit of the check.'),
    when: oneOf(['stopped', 'running', 'leaving'])
      .default('stopped')
      .describe('When it is made: engine stopped, engine running, or anew before every departure.'),
  },
  'a check',
);

export type Check = Known<z.output<typeof checkSchema>>;
