import { HELPED } from '../../tracing/jobs-done.ts';
import { floodingFrom } from '../../words/flooding.ts';
import { type FormKind, WHEN } from './form.ts';

/** Whether work done for a cause helped. Opened from a trace alone. */
export const helped: FormKind = {
  title: 'DID THE WORK HELP',
  offered: () => false,
  rows: () => [{ field: 'seen', label: 'it is cured', example: 'yes, no', usual: null }, WHEN],
  entries: (typed, item) => [{ kind: 'clue', item, clue: HELPED, ...typed }],
  notes: () => ['Of a level the readings after the work tell it too; an answer here counts before them.'],
};

/** What comes in by an opening against what a pump takes out. Opened from the trace of a bilge alone. */
export const inflow: FormKind = {
  title: 'INFLOW',
  offered: () => false,
  rows: () => [
    { field: 'opening', label: 'the opening is', example: '38 mm, 1.5 in', usual: null },
    { field: 'depth', label: 'under water by', example: '0.5 m, 2 ft', usual: null },
    { field: 'pump', label: 'the pump, by its label', example: '3000 L/h, 800 us gal', usual: 'not named' },
  ],
  entries: () => [],
  worksOut: ({ opening = '', depth = '', pump = null }) => floodingFrom({ opening, depth, pump }),
  notes: () => ['Of a pump half of its label is counted: hose, lift and tired volts take the rest.'],
};
