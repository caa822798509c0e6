import type { Boat } from '../../boat/boat.ts';
import { fieldsOf, type PartField } from '../../boat/part-fields.ts';
import { isList, KINDS, type Kind, type PartKind, placeOf, valueAt } from '../../boat/parts.ts';
import type { Path } from '../../boat/positions.ts';
import { usualPassage } from '../../boat/template.ts';
import type { Trouble } from '../../trouble.ts';
import { cleaned } from '../../words/cleaned.ts';
import { textOf } from '../../words/part-texts.ts';
import type { Field } from '../field.ts';

/** What she is made of, one line a part, by kind. */
export interface BoatPage {
  readonly page: 'boat';
  readonly from: number;
  readonly at: number;
  /** The part that goes at the next x. */
  readonly going: string | null;
  /** What stood in the way of the last change. */
  readonly told: readonly Trouble[];
}

/** One part line by line, or one that is added. */
export interface BoatItemPage {
  readonly page: 'boat item';
  readonly from: number;
  readonly kind: PartKind;
  /** Null for one that is added, and for what is no entry of a list. */
  readonly id: string | null;
  readonly how: 'add' | 'change';
  /** The boat as it stood when the page was opened. */
  readonly of: Boat;
  readonly rows: readonly PartField[];
  readonly fields: readonly Field[];
  /** What stood in them. */
  readonly before: readonly string[];
  readonly at: number;
  /** What is wrong as it is typed. */
  readonly wrong: readonly Wrong[];
  /** It was to be saved already: what is yet to be filled in is told as well. */
  readonly asked: boolean;
  /** What stood in the way of saving it. */
  readonly told: readonly Trouble[];
  /** Somebody else changed the file meanwhile, which was told: the next Enter writes over it. */
  readonly over: boolean;
  readonly saving: boolean;
  /** Something was typed. */
  readonly typed: boolean;
  /** Esc was pressed once after that: the second goes back. */
  readonly leaving: boolean;
}

/** One row: what stood in it, what was typed, and its value; undefined where it is empty or not understood. */
export interface Read {
  readonly row: PartField;
  readonly changed: boolean;
  readonly value: unknown;
  readonly trouble: Trouble | null;
}

export interface Wrong {
  /** The row it is of; null where it is of none. */
  readonly at: number | null;
  readonly trouble: Trouble;
  /** Something is yet to be filled in: told when it is to be saved. */
  readonly missing: boolean;
  /** It is of how this agrees with the rest, and shown wherever one types. */
  readonly crosses: boolean;
}

export interface Part {
  readonly kind: PartKind;
  /** Null stands for a kind she has none of yet, or what is no entry of a list. */
  readonly id: string | null;
  readonly name: string;
}

export const KIND_NAMES: { readonly [K in PartKind]: readonly [one: string, many: string] } = {
  boat: ['the boat', 'THE BOAT'],
  engines: ['engine', 'ENGINES'],
  fluids: ['fluid', 'FLUIDS'],
  anodes: ['anode', 'ANODES'],
  spares: ['spare', 'STORES'],
  services: ['service', 'SERVICES'],
  checks: ['check', 'CHECKS'],
  dated: ['dated thing', 'DATED'],
  limits: ['limits', 'LIMITS'],
  alone: ['limits alone', 'LIMITS ALONE'],
  anchorages: ['anchorage', 'ANCHORAGES'],
  passages: ['passage', 'PASSAGES'],
};

/** Every part in the order of the page: what she is, her limits, where she lies and goes. */
export function partsOf(boat: Boat): readonly Part[] {
  const listed = (kinds: readonly Kind[]) => kinds.flatMap((kind) => listParts(boat, kind));
  const places: readonly Kind[] = ['anchorages', 'passages'];
  return [
    { kind: 'boat', id: null, name: cleaned(boat.name) },
    ...listed(KINDS.filter((kind) => !places.includes(kind))),
    { kind: 'limits', id: null, name: 'what she goes out in' },
    { kind: 'alone', id: null, name: 'what differs with one aboard' },
    ...listed(places),
  ];
}

function listParts(boat: Boat, kind: Kind): readonly Part[] {
  if (boat[kind].length === 0) return [{ kind, id: null, name: 'none yet' }];
  return boat[kind].map(({ id, name }) => ({ kind, id, name: cleaned(name) }));
}

/** A bad day is the worst of ten: 1.3 standard deviations from the usual one. */
export const BAD_DAY_SDS = 1.3;

/** The part itself; undefined for one that is added. */
export function itemIn(boat: Boat, kind: PartKind, id: string | null): unknown {
  const place = isList(kind) && id === null ? null : placeOf(boat, kind, id);
  return place === null ? undefined : valueAt(boat, place);
}

/** The rows of a part, and what stands in each as it would be typed: of one that is added, what counts where nothing else is written. */
export function rowsOf(
  boat: Boat,
  kind: PartKind,
  id: string | null,
): { rows: readonly PartField[]; texts: readonly string[]; before: readonly string[] } {
  const item = itemIn(boat, kind, id);
  const legs = kind === 'passages' ? valueAt(item, ['legs']) : [];
  const rows = fieldsOf(kind, {
    engines: boat.engines.map((engine) => engine.id),
    legs: Array.isArray(legs) ? legs.length : 0,
  });
  const isNew = item === undefined;
  const before = rows.map((row) => textOf(isNew ? usualOf(row) : figureOf(item, row), row, boat));
  if (!isNew || kind !== 'passages') return { rows, before, texts: before };
  const { start, source } = startOf(boat);
  const begun = rows.map((row) => textOf(figureOf(start, row), row, boat));
  const told = rows.map((row, at) => (begun[at] === '' ? row : { ...row, says: `${row.says} ${source}` }));
  return { rows: told, before, texts: begun.map((text, at) => text || before[at]!) };
}

/** What a passage that is added begins with: the ways of the first there is, else what is usual. */
function startOf(boat: Boat): { start: object; source: string } {
  const [first] = boat.passages;
  if (!first) {
    const start = usualPassage(boat.engines.map(({ id }) => id));
    return { start, source: 'Common practice, no source; yours to change.' };
  }
  const { speed, motoring, motorBelow, motorToWindward, reserveDays } = first;
  const start = { speed, motoring, motorBelow, motorToWindward, reserveDays };
  return { start, source: `As in ${cleaned(first.name)}; yours to change.` };
}

/** The value of a row in its part; of a spread, the figure on a bad day; of a leg, all that its row holds. */
export function figureOf(item: unknown, { path, holds }: PartField): unknown {
  if (holds.is === 'leg') return holds.was === null ? undefined : valueAt(item, ['legs', holds.was]);
  const value = valueAt(item, path);
  if (holds.is !== 'bad day' || typeof value !== 'number') return value;
  const mean = holds.usual === null ? 0 : valueAt(item, holds.usual);
  return typeof mean === 'number' ? badDayOf(mean, value, holds.way) : undefined;
}

function badDayOf(mean: number, sd: number, way: 1 | -1): number {
  return Number(Math.max(0, mean + way * BAD_DAY_SDS * sd).toPrecision(12));
}

/** A default inside a group that is not there yet does not count. */
function usualOf({ path, usual }: PartField): unknown {
  return path.length === 1 || path[0] === 'loss' ? usual : undefined;
}

export function samePath(a: Path, b: Path): boolean {
  return a.length === b.length && a.every((step, at) => step === b[at]);
}
