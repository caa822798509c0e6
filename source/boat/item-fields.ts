import { z } from 'zod';
import { anodeSchema } from './anode.ts';
import { checkSchema } from './check.ts';
import { datedSchema } from './dated.ts';
import { engineSchema } from './engine.ts';
import { fluidSchema } from './fluid.ts';
import { serviceSchema } from './service.ts';
import { spareSchema } from './spare.ts';

const schemas = {
  engines: engineSchema,
  fluids: fluidSchema,
  anodes: anodeSchema,
  spares: spareSchema,
  services: serviceSchema,
  checks: checkSchema,
  dated: datedSchema,
} as const;

/** The lists of boat.json that hold what she is made of, in the order of the file. */
export type Kind = keyof typeof schemas;
export const KINDS = Object.keys(schemas) as readonly Kind[];

/** A field of an item that is one word or one number. Lists and groups are not among them. */
export interface ItemField {
  readonly path: readonly string[];
  /** From the schema: what it is, with its unit. */
  readonly says: string;
  readonly holds: 'number' | 'words' | 'yes or no';
  readonly wanted: boolean;
  /** Why a value cannot stand here; null where it can. */
  readonly expects: (value: unknown) => string | null;
}

/** The fields of a kind of item, its id left out: the log names it by that. Groups of a mean and its spread are opened. */
export function itemFields(kind: Kind): readonly ItemField[] {
  return fieldsIn(schemas[kind].shape, []).filter(({ path }) => path.join('.') !== 'id');
}

function fieldsIn(shape: z.core.$ZodLooseShape, above: readonly string[]): readonly ItemField[] {
  return Object.entries(shape).flatMap(([name, schema]) => {
    const inner = unwrapped(schema as z.ZodType);
    const path = [...above, name];
    if (inner instanceof z.ZodObject)
      return name === 'loss' || above[0] === 'loss' ? fieldsIn(inner.shape, path) : [];
    const holds = holdsOf(inner);
    if (!holds) return [];
    const own = schema as z.ZodType;
    const expects = (value: unknown) => own.safeParse(value).error?.issues[0]?.message ?? null;
    return [
      {
        path,
        says: own.description ?? name,
        holds,
        wanted: above.length === 0 && expects(undefined) !== null,
        expects,
      },
    ];
  });
}

function holdsOf(schema: z.ZodType): ItemField['holds'] | null {
  if (schema instanceof z.ZodNumber) return 'number';
  if (schema instanceof z.ZodBoolean) return 'yes or no';
  return schema instanceof z.ZodString || schema instanceof z.ZodEnum || schema instanceof z.ZodISODate
    ? 'words'
    : null;
}

function unwrapped(schema: z.ZodType): z.ZodType {
  let plain = schema;
  while (plain instanceof z.ZodOptional || plain instanceof z.ZodDefault || plain instanceof z.ZodPrefault)
    plain = plain.unwrap() as z.ZodType;
  return plain;
}
