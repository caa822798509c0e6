import { unitOf } from '../../words/names.ts';
import type { Sight } from '../sight.ts';
import { type FormKind, type FormRow, WHEN } from './form.ts';
import { aboardWords } from './stock.ts';

const isSpare: FormKind['offered'] = (item) => item?.kind === 'spare';
const NOTE: FormRow = { field: 'text', label: 'note', example: 'the old one is kept', usual: 'none' };

/** Taken from the stores. Of what is counted one by one it is one unless said. */
export const use: FormKind = {
  title: 'USED',
  offered: isSpare,
  rows: (sight, spare) => [
    countRow('how many', sight, spare, '1'),
    { field: 'for', label: 'for', example: 'the raw-water pump', usual: 'not noted' },
    NOTE,
    WHEN,
  ],
  entries: ({ count = '1', ...typed }, spare) => [{ kind: 'use', spare, count, ...typed }],
  notes: aboardNotes,
};

/** Put aboard. */
export const stow: FormKind = {
  title: 'PUT ABOARD',
  offered: isSpare,
  rows: (sight, spare) => [
    countRow('how many', sight, spare),
    { field: 'cost', label: 'cost in all', example: '24.50', usual: 'not noted' },
    NOTE,
    WHEN,
  ],
  entries: (typed, spare) => [{ kind: 'stow', spare, ...typed }],
  notes: aboardNotes,
};

/** What is really there. */
export const count: FormKind = {
  title: 'COUNTED',
  offered: isSpare,
  rows: (sight, spare) => [countRow('there are', sight, spare), NOTE, WHEN],
  entries: (typed, spare) => [{ kind: 'count', spare, ...typed }],
  notes: aboardNotes,
};

function countRow(label: string, sight: Sight, spare: string, usual: string | null = null): FormRow {
  const unit = unitOf(sight.boat.loaded.boat, spare);
  return unit === 'each'
    ? { field: 'count', label, example: '2', usual }
    : {
        field: 'count',
        label: label === 'how many' ? 'how much' : label,
        example: `1.5 ${unit}`,
        usual: null,
      };
}

function aboardNotes(sight: Sight, id: string): string[] {
  const spare = sight.boat.loaded.boat.spares.find((one) => one.id === id);
  if (!spare) return [];
  const locker = spare.locker === undefined ? '' : `; stowed: ${spare.locker}`;
  return [`By the log: ${aboardWords(sight, spare)}${locker}.`];
}
