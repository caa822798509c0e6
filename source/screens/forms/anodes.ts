import { type FormKind, unsettledNotes, WHEN } from './form.ts';
import { fromRow, stockNotes, stockOf, withStock } from './stock.ts';

const isAnode: FormKind['offered'] = (item) => item?.kind === 'anode';

/** What is left of an anode: one of the ways to say it. */
export const anodeLook: FormKind = {
  title: 'LOOK',
  act: 'anode',
  offered: isAnode,
  rows: () => [
    { field: 'share', label: 'left, by eye', example: '60%, 1/2, new', usual: 'not judged' },
    { field: 'massKg', label: 'or its weight', example: '350 g', usual: 'not weighed' },
    { field: 'diameterMm', label: 'or its diameter', example: '12 mm', usual: 'not measured' },
    { field: 'lengthMm', label: 'and its length', example: '40 mm', usual: 'not measured' },
    { field: 'flakes', label: 'flakes when tapped', example: 'yes, no', usual: 'not tapped' },
    WHEN,
  ],
  entries: (typed, anode) => [{ kind: 'anode', anode, ...typed }],
  notes: () => [],
};

/** A new anode in its place. */
export const renew: FormKind = {
  title: 'RENEWED',
  act: 'anode',
  offered: isAnode,
  rows: (sight, anode) => [fromRow(sight, stockOf(sight, anode)), WHEN],
  entries: (typed, anode, sight) => [{ kind: 'renew', anode, ...withStock(typed, stockOf(sight, anode)) }],
  notes: (sight, anode) => [...stockNotes(sight, stockOf(sight, anode)), ...unsettledNotes(sight, anode)],
};
