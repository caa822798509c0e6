import { nameOf } from '../../words/names.ts';
import { tablesOf } from '../../words/traced.ts';
import type { Sight } from '../sight.ts';
import { type FormKind, type FormRow, NONE, unsettledNotes, WHEN } from './form.ts';
import { aboardWords } from './stock.ts';

/** Work done on something. */
export const job: FormKind = {
  title: 'WORK DONE',
  act: 'work',
  offered: (item) => item !== null && item.kind !== 'spare',
  rows: (sight, id) => [
    { field: 'text', label: 'what was done', example: 'nipped up the output seal', usual: null },
    { field: 'minutes', label: 'time it took', example: '20, 1.5 h', usual: 'not noted' },
    ...causeRow(sight, id),
    WHEN,
  ],
  entries({ cause, ...typed }, item) {
    const meant = cause === undefined || cause === NONE.id ? {} : { cause };
    return [{ kind: 'job', item, ...typed, ...meant }];
  },
  notes: (sight, id) => [
    ...(sight.boat.loaded.boat.fluids.some((fluid) => fluid.id === id)
      ? ['How fast it goes is learned anew from here; the readings after it tell whether it helped.']
      : []),
    ...unsettledNotes(sight, id),
  ],
};

/** The cause it was meant to put right, where the item can be traced. */
function causeRow(sight: Sight, id: string): FormRow[] {
  const causes = tablesOf(sight.boat.loaded, id).flatMap((table) => table.causes);
  const [first] = causes;
  if (!first) return [];
  return [
    {
      field: 'cause',
      label: 'meant for',
      example: `${first.name}, or none`,
      usual: 'no one cause',
      choices: [...causes, NONE],
      onlyThese: true,
    },
  ];
}

/** An engine's meter, read. */
export const hours: FormKind = {
  title: 'METER',
  offered: (thing) => thing?.kind === 'engine',
  rows: () => [
    { field: 'reading', label: 'it reads', example: '3412.6', usual: null },
    { field: 'swapped', label: 'the first of a new meter', example: 'yes', usual: 'no' },
    WHEN,
  ],
  entries: (typed, engine) => [{ kind: 'hours', engine, ...typed }],
  notes: () => [],
};

/** A service done, with what it took. */
export const service: FormKind = {
  title: 'DONE',
  act: 'work',
  offered: (item) => item?.kind === 'service',
  rows: (sight, id) => [
    {
      field: 'uses',
      label: 'it took',
      example: 'impeller, filters:2, or none',
      usual: usualParts(sight, id) || NONE.name,
    },
    WHEN,
  ],
  entries({ uses, ...typed }, id, sight) {
    const parts = uses ?? usualParts(sight, id);
    return [
      {
        kind: 'service',
        service: id,
        ...typed,
        ...(parts === '' || parts === NONE.id ? {} : { uses: parts }),
      },
    ];
  },
  notes: (sight, id) => [
    ...partsOf(sight, id).map(({ spare }) => {
      const { boat } = sight.boat.loaded;
      const found = boat.spares.find((one) => one.id === spare);
      return `${nameOf(boat, spare)}: ${found ? aboardWords(sight, found) : 'not among the stores'}.`;
    }),
    ...unsettledNotes(sight, id),
  ],
};

function partsOf(sight: Sight, id: string) {
  return sight.boat.loaded.boat.services.find((one) => one.id === id)?.uses ?? [];
}

/** As they are typed: `impeller:1, filters:2`. */
function usualParts(sight: Sight, id: string): string {
  return partsOf(sight, id)
    .map((part) => `${part.spare}:${part.count}`)
    .join(', ');
}

/** A look with an answer. */
export const check: FormKind = {
  title: 'LOOK',
  act: (sight, id) => (checkOf(sight, id)?.when === 'running' ? 'running' : null),
  offered: (item) => item?.kind === 'check',
  rows(sight, id) {
    const asked = checkOf(sight, id);
    return [
      asked?.ask === 'number'
        ? {
            field: 'value',
            label: `it reads${asked.unit === undefined ? '' : `, ${asked.unit}`}`,
            example: '12.7',
            usual: null,
          }
        : { field: 'ok', label: 'as it should be', example: 'yes, no', usual: null },
      WHEN,
    ];
  },
  entries: (typed, id) => [{ kind: 'check', check: id, ...typed }],
  notes: () => [],
};

function checkOf(sight: Sight, id: string) {
  return sight.boat.loaded.boat.checks.find((one) => one.id === id);
}

/** A new date on something that expires. */
export const dated: FormKind = {
  title: 'RENEWED',
  offered: (item) => item?.kind === 'dated',
  rows: () => [{ field: 'expires', label: 'good until', example: '2027-03-31', usual: null }, WHEN],
  entries: (typed, item) => [{ kind: 'dated', item, ...typed }],
  notes: () => [],
};

/** Anything worth a line in the log. */
export const remark: FormKind = {
  title: 'REMARK',
  offered: () => true,
  rows: () => [
    { field: 'text', label: 'remark', example: 'a whiff of diesel at the head of the bed', usual: null },
    WHEN,
  ],
  entries: (typed, item) => [{ kind: 'remark', ...typed, ...(item === '' ? {} : { item }) }],
  notes: () => [],
};
