import { z } from 'zod';
import { isList, type Kind, type PartKind, shapeOf } from './parts.ts';
import type { Path } from './positions.ts';

/** What is typed in one line of a part, as its schema has it. */
export type Holds =
  /** `unit` as the schema says it, as in litres or hours a day; null for a share and what is only counted. */
  | { readonly is: 'number'; readonly unit: string | null }
  /** The number, or false where it is not to be judged. */
  | { readonly is: 'limit'; readonly unit: string | null }
  /** A spread, asked as the figure on a bad day: that much above the usual one, or below it; `usual` null: of an error, which usually is none. */
  | {
      readonly is: 'bad day';
      readonly unit: string | null;
      readonly usual: Path | null;
      readonly way: 1 | -1;
    }
  | { readonly is: 'words' }
  | { readonly is: 'choice'; readonly words: readonly string[] }
  | { readonly is: 'yes or no' }
  /** The id of an entry of one list; or several of them. */
  | { readonly is: 'id'; readonly of: Kind }
  /** `single`: one alone stands without brackets. */
  | { readonly is: 'ids'; readonly of: Kind; readonly single: boolean }
  | { readonly is: 'parts' }
  | { readonly is: 'position' }
  | { readonly is: 'sectors' }
  | { readonly is: 'daylight' }
  /** Where a leg ends, its length and its place; `was`: which of the legs it is, null for one put in. */
  | { readonly is: 'leg'; readonly was: number | null }
  | { readonly is: 'leg sectors'; readonly was: number | null };

/** One line of a part. */
export interface PartField {
  readonly path: Path;
  /** From the schema: what it is, with its unit. */
  readonly says: string;
  readonly holds: Holds;
  /** Nothing can be saved without it. */
  readonly wanted: boolean;
  /** What counts where nothing is written; undefined for nothing. */
  readonly usual: unknown;
  /** Why a value cannot stand here; null where it can. */
  readonly expects: (value: unknown) => string | null;
}

/** The lines of a kind of part, its id left out: the log names it by that. `engines` are the boat's, `legs` how many a passage has. */
export function fieldsOf(
  kind: PartKind,
  { engines, legs }: { engines: readonly string[]; legs: number },
): readonly PartField[] {
  const hasId = isList(kind);
  return fieldsIn(shapeOf(kind), [], true, engines).flatMap((field) => {
    if (hasId && field.path[0] === 'id') return [];
    return field.path[0] === 'legs' ? legFields(legs) : [field];
  });
}

/** The lines of one leg: where it ends, and what it stands from which side. */
export function legField(was: number | null): readonly [to: PartField, sectors: PartField] {
  const [leg] = legShape();
  const to = fieldIn(leg.to as z.ZodType, ['legs', was ?? '+', 'to'], { wanted: false, engines: [] })[0]!;
  const sectors = fieldIn(leg.sectors as z.ZodType, ['legs', was ?? '+', 'sectors'], {
    wanted: false,
    engines: [],
  })[0]!;
  return [
    {
      ...to,
      holds: { is: 'leg', was },
      says: 'Where the leg ends; its length as sailed in nautical miles, the rhumb line where absent; what it is called. Empty takes it out.',
    },
    { ...sectors, holds: { is: 'leg sectors', was } },
  ];
}

function legFields(legs: number): readonly PartField[] {
  const [leg, schema] = legShape();
  const [from] = fieldIn(leg.from as z.ZodType, ['legs', 0, 'from'], { wanted: true, engines: [] });
  const numbered = Array.from({ length: legs }, (_, was) => legField(was)).flat();
  return [
    { ...from!, says: 'Where the first leg begins; each of the others begins where the one before ended.' },
    ...numbered,
    { ...legField(null)[0], wanted: legs === 0, says: schema.description ?? '' },
  ];
}

function legShape(): [z.core.$ZodLooseShape, z.ZodType] {
  const schema = unwrapped(shapeOf('passages').legs as z.ZodType);
  return [((schema as z.ZodArray).element as z.ZodObject).shape, shapeOf('passages').legs as z.ZodType];
}

/** Changed seldom, and more lines than they are worth: left to the editor. */
const LEFT_TO_EDITOR: ReadonlySet<string> = new Set(['forecastError']);

function fieldsIn(
  shape: z.core.$ZodLooseShape,
  above: Path,
  wanted: boolean,
  engines: readonly string[],
): readonly PartField[] {
  return Object.entries(shape).flatMap(([name, schema]) => {
    if (LEFT_TO_EDITOR.has(name) || name === 'alone') return [];
    return fieldIn(schema as z.ZodType, [...above, name], { wanted, engines });
  });
}

function fieldIn(
  own: z.ZodType,
  path: Path,
  { wanted, engines }: { wanted: boolean; engines: readonly string[] },
): readonly PartField[] {
  const inner = unwrapped(own);
  const isWanted = wanted && !own.safeParse(undefined).success;
  if (inner instanceof z.ZodObject) return fieldsIn(inner.shape, path, isWanted, engines);
  if (inner instanceof z.ZodRecord)
    return engines.flatMap((engine) =>
      fieldIn(inner.valueType as z.ZodType, [...path, engine], { wanted: false, engines }),
    );
  const expects = (value: unknown) => own.safeParse(value).error?.issues[0]?.message ?? null;
  const holds = spreadOf(path, expects) ?? holdsOf(inner, expects);
  const usual = own instanceof z.ZodDefault ? own.def.defaultValue : undefined;
  return [{ path, says: saysOf(own, path, holds), holds, wanted: isWanted, usual, expects }];
}

type Expects = PartField['expects'];

function holdsOf(schema: z.ZodType, expects: Expects): Holds {
  if (schema instanceof z.ZodNumber) return { is: 'number', unit: unitOf(expects) };
  if (schema instanceof z.ZodBoolean) return { is: 'yes or no' };
  if (schema instanceof z.ZodEnum) return { is: 'choice', words: schema.options.map(String) };
  if (schema instanceof z.ZodTuple) return { is: 'position' };
  if (schema instanceof z.ZodArray) return listHolds(schema.element as z.ZodType);
  if (schema instanceof z.ZodUnion) {
    const [first, second] = schema.options as readonly z.ZodType[];
    if (second instanceof z.ZodArray)
      return { ...listHolds(second.element as z.ZodType), single: true } as Holds;
    return first instanceof z.ZodObject ? { is: 'daylight' } : { is: 'limit', unit: unitOf(expects) };
  }
  const of = kindNamed(expects);
  return of ? { is: 'id', of } : { is: 'words' };
}

function listHolds(element: z.ZodType): Holds {
  if (element instanceof z.ZodObject) return 'spare' in element.shape ? { is: 'parts' } : { is: 'sectors' };
  const of = kindNamed((value) => element.safeParse(value).error?.issues[0]?.message ?? null);
  return { is: 'ids', of: of ?? 'checks', single: false };
}

/** A standard deviation beside its mean; that of a speed is of slow days. */
function spreadOf(path: Path, expects: Expects): Holds | null {
  const name = path.at(-1);
  if (name === 'readingError') return { is: 'bad day', unit: unitOf(expects), usual: null, way: 1 };
  if (path.length < 2 || (name !== 'sd' && name !== 'wide')) return null;
  const usual = [...path.slice(0, -1), 'mean'];
  return { is: 'bad day', unit: unitOf(expects), usual, way: path[0] === 'speed' ? -1 : 1 };
}

function saysOf(schema: z.ZodType, path: Path, holds: Holds): string {
  if (holds.is === 'position')
    return `${/^[^:]+/.exec(schema.description ?? '')?.[0]}: as 47°06'N 20°36'W, or 47.1 -20.6.`;
  if (holds.is !== 'bad day') return descriptionOf(schema) ?? String(path.at(-1));
  const unit = holds.unit === null ? '' : `, in ${holds.unit}`;
  if (holds.usual === null)
    return `How far off the worst reading of ten is${unit}. Where absent its spread is a twentieth of low to full.`;
  return path.at(-1) === 'wide'
    ? `The worst day of ten when it leaks${unit}.`
    : `The worst day of ten${unit}.`;
}

function descriptionOf(schema: z.ZodType): string | undefined {
  return schema.description ?? unwrapped(schema).description;
}

/** The schema says its unit where it says what it takes. */
function unitOf(expects: Expects): string | null {
  return /^a (?:whole )?number of (.+?), /.exec(expects(null) ?? '')?.[1] ?? null;
}

const NAMED: { readonly [word: string]: Kind } = {
  engine: 'engines',
  spare: 'spares',
  check: 'checks',
  passage: 'passages',
  anchorage: 'anchorages',
};

function kindNamed(expects: Expects): Kind | undefined {
  return NAMED[/^the id of an? (\w+)/.exec(expects(null) ?? '')?.[1] ?? ''];
}

function unwrapped(schema: z.ZodType): z.ZodType {
  let plain = schema;
  while (plain instanceof z.ZodOptional || plain instanceof z.ZodDefault || plain instanceof z.ZodPrefault)
    plain = plain.unwrap() as z.ZodType;
  return plain;
}
