import type { Node } from 'jsonc-parser';
import { MOST_ENTRIES } from './fields.ts';
import { nearest } from './nearest.ts';
import type { Path } from './positions.ts';

/** What is read here of a JSON Schema. */
interface Shape {
  readonly properties?: { readonly [name: string]: Shape };
  readonly items?: Shape;
  readonly anyOf?: readonly Shape[];
  readonly additionalProperties?: Shape | boolean;
}

export type NameFinding =
  | { readonly what: 'misspelt'; readonly path: Path; readonly field: string; readonly near: string }
  | { readonly what: 'twice'; readonly path: Path; readonly field: string; readonly firstOffset: number };

/** Fields written twice, and unknown ones that look like a known one not given. Other unknown fields are the owner's own. */
export function fieldNames(tree: Node, schema: object): readonly NameFinding[] {
  const found: NameFinding[] = [];
  walk(tree, schema as Shape, [], found);
  return found;
}

function walk(node: Node, shape: Shape | undefined, path: Path, found: NameFinding[]): void {
  if (node.type === 'array') {
    node.children?.slice(0, MOST_ENTRIES).forEach((child, i) => {
      walk(child, shape?.items, [...path, i], found);
    });
  }
  if (node.type !== 'object') return;
  const fitting = fittingShape(shape);
  const properties = node.children ?? [];
  const given = new Map<string, Node>();
  for (const property of properties) {
    const [name, value] = property.children ?? [];
    const field = String(name?.value);
    const first = given.get(field);
    if (first) found.push({ what: 'twice', path: [...path, field], field, firstOffset: first.offset });
    else given.set(field, property);
    if (value) walk(value, shapeOf(fitting, field), [...path, field], found);
  }
  if (fitting?.properties) misspelt(given, fitting.properties, path, found);
}

function misspelt(
  given: ReadonlyMap<string, Node>,
  properties: { readonly [name: string]: Shape },
  path: Path,
  found: NameFinding[],
): void {
  const absent = new Set(Object.keys(properties).filter((name) => !given.has(name)));
  for (const field of given.keys()) {
    if (Object.hasOwn(properties, field)) continue;
    const near = nearest(field, absent);
    if (near === undefined) continue;
    absent.delete(near);
    found.push({ what: 'misspelt', path: [...path, field], field, near });
  }
}

function fittingShape(shape: Shape | undefined): Shape | undefined {
  return shape?.anyOf?.find((one) => one.properties) ?? shape;
}

function shapeOf(shape: Shape | undefined, field: string): Shape | undefined {
  if (shape?.properties && Object.hasOwn(shape.properties, field)) return shape.properties[field];
  return typeof shape?.additionalProperties === 'object' ? shape.additionalProperties : undefined;
}
