import type { z } from 'zod';
import { amount, group, id, itemFields, type Known, list } from './fields.ts';

const partUsed = group(
  {
    spare: id('a spare').describe('The spare it takes.'),
    count: amount('pieces or units', 0, 100000).describe("How many, in the spare's unit."),
  },
  'a part with spare and count',
);

export const serviceSchema = group(
  {
    ...itemFields('a service'),
    engine: id('an engine')
      .optional()
      .describe('The engine whose hours count. May be absent where the boat has one engine.'),
    everyHours: amount('engine hours', 0.1, 100000).optional().describe('Due every so many engine hours.'),
    everyMonths: amount('months', 0.1, 1200).optional().describe('Due every so many calendar months.'),
    graceHours: amount('engine hours', 0, 100000)
      .default(0)
      .describe('How far past due it may run, in engine hours.'),
    graceDays: amount('days', 0, 10000).default(0).describe('How far past due it may run, in days.'),
    uses: list(partUsed, 'parts').describe('The parts it takes.'),
    unsettles: list(id('a check'), 'ids of checks').describe('Checks to be made again after it is done.'),
  },
  'a service',
);

export type Service = Known<z.output<typeof serviceSchema>>;
