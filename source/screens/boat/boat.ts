import type { Boat } from '../../boat/boat.ts';
import { type ItemField, itemFields, KINDS, type Kind } from '../../boat/item-fields.ts';
import type { Result, Trouble } from '../../trouble.ts';
import { amountFrom, numberIn, yesNoFrom } from '../../words/amounts.ts';
import { cleaned } from '../../words/cleaned.ts';
import { shownUnit } from '../../words/preferred.ts';
import type { Field } from '../field.ts';

/** What she is made of, one line an item, by kind. */
export interface BoatPage {
  readonly page: 'boat';
  readonly from: number;
  readonly at: number;
  /** The item that goes at the next x. */
  readonly going: string | null;
}

/** One item's fields, or those of one that is added. */
export interface BoatItemPage {
  readonly page: 'boat item';
  readonly from: number;
  readonly kind: Kind;
  /** Null for one that is added. */
  readonly id: string | null;
  readonly fields: readonly Field[];
  /** What stood in them. */
  readonly before: readonly string[];
  readonly at: number;
  readonly told: readonly Trouble[];
  readonly saving: boolean;
}

export interface Part {
  readonly kind: Kind;
  /** Null stands for a kind she has none of yet. */
  readonly id: string | null;
  readonly name: string;
}

export const KIND_NAMES: { readonly [K in Kind]: readonly [one: string, many: string] } = {
  engines: ['engine', 'ENGINES'],
  fluids: ['fluid', 'FLUIDS'],
  anodes: ['anode', 'ANODES'],
  spares: ['spare', 'STORES'],
  services: ['service', 'SERVICES'],
  checks: ['check', 'CHECKS'],
  dated: ['dated thing', 'DATED'],
};

export function partsOf(boat: Boat): readonly Part[] {
  return KINDS.flatMap((kind): Part[] =>
    boat[kind].length === 0
      ? [{ kind, id: null, name: 'none yet' }]
      : boat[kind].map(({ id, name }) => ({ kind, id, name: cleaned(name) })),
  );
}

/** A bad day is the worst of ten: 1.3 standard deviations from the usual one. */
const BAD_DAY_SDS = 1.3;

/** What stands in each field, as it would be typed; empty where nothing does. */
export function textsOf(boat: Boat, kind: Kind, id: string | null): readonly string[] {
  const item = boat[kind].find((one) => one.id === id);
  return itemFields(kind).map((field) => {
    const value = fieldIn(item, field.path);
    if (typeof value === 'boolean') return value ? 'yes' : 'no';
    if (typeof value !== 'number') return value === undefined ? '' : String(value);
    const mean = isBadDay(field) ? fieldIn(item, usualOf(field)) : undefined;
    return figureText(typeof mean === 'number' ? mean + BAD_DAY_SDS * value : value, field);
  });
}

/** How a field is called where it is typed. */
export function askOf(field: ItemField): string {
  const name = field.path
    .map((word) => word.replace(/[A-Z]/gu, (letter) => ` ${letter.toLowerCase()}`))
    .join(', ');
  if (isBadDay(field)) return name.replace(/, sd$/u, ': on a bad day?');
  return name.replace(/, mean$/u, ': usual?');
}

/** Each field as typed, as values by path; undefined takes one out. Or the first that cannot stand there, and what can. */
export function valuesOf(
  kind: Kind,
  texts: readonly string[],
): { set: { path: readonly string[]; value: unknown }[] } | { at: number; trouble: Trouble } {
  const fields = itemFields(kind);
  const values = fields.map((field, at) => plainValue(field, texts[at] ?? ''));
  const set = fields.map((field, at) => {
    const usual = isBadDay(field)
      ? fields.findIndex(({ path }) => path.join() === usualOf(field).join())
      : -1;
    const [value, mean] = [values[at], values[usual]];
    const isSpread = typeof value === 'number' && typeof mean === 'number';
    return {
      path: field.path,
      value: isSpread ? Number(((value - mean) / BAD_DAY_SDS).toPrecision(4)) : value,
    };
  });
  for (const [at, field] of fields.entries()) {
    const { value } = set[at]!;
    if (value === undefined && !field.wanted) continue;
    const expected = field.expects(value === null ? texts[at] : value);
    if (expected === null) continue;
    return {
      at,
      trouble: { kind: 'not understood', field: field.path.join('.'), text: texts[at] ?? '', expected },
    };
  }
  return { set };
}

/** Null where it is not understood. */
function plainValue(field: ItemField, typed: string): unknown {
  const text = typed.trim();
  if (text === '') return undefined;
  if (field.holds === 'words') return text;
  const name = field.path.join('.');
  if (field.holds === 'yes or no') return valueOr(yesNoFrom(text, name));
  const read = valueOr(isLitres(field) ? amountFrom(text, 'L', name) : numberIn(text, null, name));
  return typeof read === 'number' ? Number(read.toPrecision(12)) : read;
}

function valueOr<T>(read: Result<T>): T | null {
  return read.ok ? read.value : null;
}

function figureText(value: number, field: ItemField): string {
  if (!isLitres(field)) return String(value);
  const { name, each } = shownUnit('L', value);
  return `${Number((value / each).toPrecision(6))} ${name}`;
}

function isLitres({ holds, says }: ItemField): boolean {
  return holds === 'number' && / in litres/u.test(says);
}

function isBadDay({ path }: ItemField): boolean {
  return path.length > 1 && path.at(-1) === 'sd';
}

function usualOf({ path }: ItemField): readonly string[] {
  return [...path.slice(0, -1), 'mean'];
}

function fieldIn(item: object | undefined, path: readonly string[]): unknown {
  return path.reduce<unknown>((group, name) => (group as Record<string, unknown> | undefined)?.[name], item);
}
