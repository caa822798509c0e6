import { z } from 'zod';
import { anchorageSchema } from './anchorage.ts';
import { anodeSchema } from './anode.ts';
import { type Boat, boatSchema } from './boat.ts';
import { checkSchema } from './check.ts';
import { datedSchema } from './dated.ts';
import { engineSchema } from './engine.ts';
import { fluidSchema } from './fluid.ts';
import { limitsSchema } from './limits.ts';
import { passageSchema } from './passage.ts';
import type { Path } from './positions.ts';
import { serviceSchema } from './service.ts';
import { spareSchema } from './spare.ts';

/** The lists of boat.json, in the order of the file. */
const lists = {
  engines: engineSchema,
  fluids: fluidSchema,
  anodes: anodeSchema,
  spares: spareSchema,
  services: serviceSchema,
  checks: checkSchema,
  dated: datedSchema,
  anchorages: anchorageSchema,
  passages: passageSchema,
} as const;

/** The lists of boat.json: each of their entries is a part with an id. */
export type Kind = keyof typeof lists;
export const KINDS = Object.keys(lists) as readonly Kind[];

/** What is changed in one go: an entry of a list, the limits, those when alone, or what the boat has of her own beside them. */
export type PartKind = Kind | 'boat' | 'limits' | 'alone';

export function isList(kind: PartKind): kind is Kind {
  return Object.hasOwn(lists, kind);
}

/** Of the boat herself, what is no part of its own. */
const { name, crew, passage, anchorage } = boatSchema.shape;
const schemas = {
  ...lists,
  limits: limitsSchema,
  alone: limitsSchema.shape.alone.unwrap(),
  boat: z.looseObject({ name, crew, passage, anchorage }),
};

export function shapeOf(kind: PartKind): z.core.$ZodLooseShape {
  return schemas[kind].shape;
}

/** What is wrong with a part by itself, by the schema; none where nothing is. */
export function issuesOf(kind: PartKind, value: unknown): readonly z.core.$ZodIssue[] {
  return schemas[kind].safeParse(value).error?.issues ?? [];
}

/** Where a part stands in boat.json; null where the boat has none with this id. */
export function placeOf(boat: unknown, kind: PartKind, id: string | null): Path | null {
  if (kind === 'boat') return [];
  if (kind === 'limits') return ['limits'];
  if (kind === 'alone') return ['limits', 'alone'];
  const list = (boat as { readonly [kind in Kind]?: unknown } | null | undefined)?.[kind];
  if (!Array.isArray(list)) return null;
  const at = list.findIndex((one: { readonly id?: unknown } | null) => one?.id === id);
  return at < 0 ? null : [kind, at];
}

/** The value at a path; undefined where there is none. */
export function valueAt(root: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, step)
        ? (value as { readonly [step: string | number]: unknown })[step]
        : undefined,
    root,
  );
}

/** Every id the boat has given out. */
export function idsIn(boat: Boat): ReadonlySet<string> {
  return new Set(KINDS.flatMap((kind) => boat[kind].map(({ id }) => id)));
}
