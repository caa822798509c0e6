import type { Node } from 'jsonc-parser';
import { z } from 'zod';
import { MOST_ENTRIES } from './fields.ts';
import { nearest } from './nearest.ts';
import type { Path } from './positions.ts';

export type NameFinding =
  | { readonly what: 'misspelt'; readonly path: Path; readonly field: string; readonly near: string }
  | { readonly what: 'twice'; readonly path: Path; readonly field: string; readonly firstOffset: number };

/** Fields written twice, and unknown ones that look like a known one not given. Other unknown fields are the owner's own. */
export function fieldNames(tree: Node, schema: z.ZodType): readonly NameFinding[] {
  const found: NameFinding[] = [];
  walk(tree, schema, [], found);
  return found;
}

function walk(node: Node, schema: Schema, path: Path, found: NameFinding[]): void {
  const plain = unwrapped(schema);
  if (node.type === 'array') {
    const entry = plain instanceof z.ZodArray ? plain.element : undefined;
    node.children?.slice(0, MOST_ENTRIES).forEach((child, i) => {
      walk(child, entry, [...path, i], found);
    });
  }
  if (node.type !== 'object') return;
  const group = groupIn(plain);
  const given = new Map<string, Node>();
  for (const property of node.children ?? []) {
    const [name, value] = property.children ?? [];
    const field = String(name?.value);
    const first = given.get(field);
    if (first) found.push({ what: 'twice', path: [...path, field], field, firstOffset: first.offset });
    else given.set(field, property);
    if (value) walk(value, fieldSchema(group, field), [...path, field], found);
  }
  if (group instanceof z.ZodObject) misspelt(given, Object.keys(group.shape), path, found);
}

function misspelt(
  given: ReadonlyMap<string, Node>,
  known: readonly string[],
  path: Path,
  found: NameFinding[],
): void {
  const absent = new Set(known.filter((name) => !given.has(name)));
  for (const field of given.keys()) {
    if (known.includes(field)) continue;
    const near = nearest(field, absent);
    if (near === undefined) continue;
    absent.delete(near);
    found.push({ what: 'misspelt', path: [...path, field], field, near });
  }
}

/** A schema, or undefined for what the owner added. */
type Schema = z.core.$ZodType | undefined;

function unwrapped(schema: Schema): Schema {
  let plain = schema;
  while (plain instanceof z.ZodOptional || plain instanceof z.ZodDefault || plain instanceof z.ZodPrefault) {
    plain = plain.unwrap();
  }
  return plain;
}

/** The schema of a group with fields, also where `false` may stand in its place. */
function groupIn(schema: Schema): Schema {
  return schema instanceof z.ZodUnion ? schema.options.find((one) => one instanceof z.ZodObject) : schema;
}

function fieldSchema(group: Schema, field: string): Schema {
  if (group instanceof z.ZodRecord) return group.valueType;
  if (!(group instanceof z.ZodObject) || !Object.hasOwn(group.shape, field)) return undefined;
  return group.shape[field];
}
