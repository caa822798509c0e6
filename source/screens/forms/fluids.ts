import { entryKinds } from '../../logbook/entries.ts';
import { LEAK_WORDS } from '../../words/leak-words.ts';
import { type FormKind, WHEN } from './form.ts';
import { fromRow, stockNotes, stockOf, withStock } from './stock.ts';

const LEVEL_AFTER = {
  field: 'level',
  label: 'level after',
  example: 'full, 1/2, 1.2',
  usual: 'not looked at',
} as const;

const isFluid: FormKind['offered'] = (item) => item?.kind === 'fluid';

/** A level as it was found. */
export const dip: FormKind = {
  title: 'DIP',
  act: 'look',
  offered: isFluid,
  rows: () => [
    { field: 'level', label: 'level', example: '0.8, 1/2, full, +0.2, off (the stick)', usual: null },
    {
      field: 'how',
      label: 'how',
      example: 'stopped-cold, running-hot, stick-resting, stick-screwed, gauge, sounding',
      usual: 'as always',
      choices: entryKinds.dip.shape.how.unwrap().options.map((id) => ({ id, name: id })),
    },
    {
      field: 'rough',
      label: 'boat rolling',
      example: 'yes, where the level would not stand still',
      usual: 'no',
    },
    WHEN,
  ],
  entries: (typed, fluid) => [{ kind: 'dip', fluid, ...typed }],
  notes: () => [],
};

/** What was poured in, and from which of the stores. */
export const topUp: FormKind = {
  title: 'TOP UP',
  act: 'pour',
  offered: isFluid,
  rows: (sight, fluid) => [
    { field: 'amount', label: 'poured in', example: '300 ml, 0.4 qt, 1/4', usual: null },
    fromRow(sight, stockOf(sight, fluid)),
    LEVEL_AFTER,
    WHEN,
  ],
  entries: (typed, fluid, sight) => [{ kind: 'topup', fluid, ...withStock(typed, stockOf(sight, fluid)) }],
  notes: (sight, fluid) => stockNotes(sight, stockOf(sight, fluid)),
};

/** Drained and refilled. */
export const change: FormKind = {
  title: 'DRAINED AND REFILLED',
  act: 'drain',
  offered: isFluid,
  rows: (sight) => [
    { ...LEVEL_AFTER, usual: 'at the full mark' },
    { ...fromRow(sight, null), example: 'a spare that all of it came from, or none' },
    WHEN,
  ],
  entries: ({ level = 'full', ...typed }, fluid) => [
    { kind: 'change', fluid, level, ...withStock(typed, null) },
  ],
  notes: () => ['What it takes from the stores is counted where a spare is named.'],
};

/** How it leaks, by the eye. */
export const leak: FormKind = {
  title: 'LEAK',
  act: 'look',
  offered: isFluid,
  rows: () => [
    {
      field: 'class',
      label: 'it is',
      example: 'dry, wet (to the touch), drops (form), falls (drops fall)',
      usual: null,
      choices: entryKinds.leak.shape.class.options.map((id) => ({ id, name: LEAK_WORDS[id] })),
    },
    { field: 'dropsPerMinute', label: 'drops a minute', example: '6', usual: 'not counted' },
    { field: 'text', label: 'where', example: 'below the output seal', usual: 'not noted' },
    WHEN,
  ],
  entries: (typed, item) => [{ kind: 'leak', item, ...typed }],
  notes: () => [],
};
