import type { PageName } from '../model.ts';
import type { FormName } from './table.ts';

/** One line of the key table: the key that opens a form. One key means one thing to a person, whatever it is about. */
interface FormKey {
  readonly key: string;
  /** How the key is written, where that is not its own letter. */
  readonly shown?: string;
  readonly form: FormName;
  readonly does: string;
  /** For the bottom line; absent keeps it off there. */
  readonly short?: string;
  readonly on: readonly PageName[];
}

const ITEM: readonly PageName[] = ['item'];
const ENGINE: readonly PageName[] = ['engine'];
const BOARD: readonly PageName[] = ['board'];
const LOG: readonly PageName[] = ['log', 'entry'];
const STORES: readonly PageName[] = ['stores'];

export const formKeys: readonly FormKey[] = [
  { key: 'd', form: 'dip', does: 'log its level', short: 'dip', on: ITEM },
  { key: 'd', form: 'anode look', does: 'log what is left of it', short: 'look', on: ITEM },
  { key: 'd', form: 'check', does: 'log what the look gave', short: 'look', on: ITEM },
  { key: 'd', form: 'count', does: 'log how many are really there', short: 'count', on: ITEM },
  { key: 'd', form: 'hours', does: 'log its meter', short: 'meter', on: ENGINE },
  { key: 't', form: 'top up', does: 'log what was poured in', short: 'top up', on: ITEM },
  { key: 'e', form: 'leak', does: 'log how it leaks: dry, wet, drops, falls', short: 'leak', on: ITEM },
  { key: 'u', form: 'use', does: 'log what was used of it', short: 'use', on: ITEM },
  { key: 'a', form: 'stow', does: 'log what was put aboard', short: 'put aboard', on: ITEM },
  { key: 'enter', shown: 'Enter', form: 'use', does: 'log what was used of it', short: 'used', on: STORES },
  { key: '+', form: 'stow', does: 'log what was put aboard', short: 'put aboard', on: STORES },
  { key: '=', form: 'count', does: 'log how many are really there', short: 'counted', on: STORES },
  { key: 'n', form: 'change', does: 'log that it was drained and refilled', short: 'refilled', on: ITEM },
  { key: 'n', form: 'renew', does: 'log a new one in its place', short: 'renewed', on: ITEM },
  { key: 'n', form: 'service', does: 'log that it was done', short: 'done', on: ITEM },
  { key: 'n', form: 'dated', does: 'log its new date', short: 'new date', on: ITEM },
  { key: 'o', form: 'job', does: 'log work done on it', short: 'work', on: [...ITEM, ...ENGINE] },
  { key: 'm', form: 'remark', does: 'log a remark', on: [...ITEM, ...ENGINE, ...BOARD] },
  {
    key: 'x',
    form: 'strike',
    does: 'strike it: it stays in the log, out of every sum',
    short: 'strike',
    on: LOG,
  },
  { key: 'r', form: 'restore', does: 'restore it: the strike is struck', short: 'restore', on: LOG },
  { key: 'i', form: 'weather now', does: 'log what the weather is doing now', on: [...BOARD, 'weather'] },
  { key: 'P', form: 'plan', does: 'log which passage is planned', on: BOARD },
  { key: 'A', form: 'arrived', does: 'log that she has arrived', on: BOARD },
  { key: 'D', form: 'left', does: 'log that she has left', on: BOARD },
  { key: 'S', form: 'stay', does: 'log the decision to stay, beside the verdict', on: [...BOARD, 'weather'] },
];
