import type { Node } from 'jsonc-parser';
import type { Place } from '../trouble.ts';

export type Path = readonly (string | number)[];

/** Where something stands: its path, and its first and last offset in the text. */
export interface Spot {
  readonly path: Path;
  readonly offset: number;
  readonly length: number;
}

export interface Positions {
  /** The spot of the value at `path`, of the nearest value around it where there is none; of a group, its id or where it opens. */
  value(path: Path): Spot;
  /** The spot of the field's own name. */
  key(path: Path): Spot;
  /** The line, from 1. */
  line(offset: number): number;
  place(spot: Spot): Place;
}

/** Looks up where the values of a parsed text stand. */
export function positionsIn(text: string, file: string, tree: Node | undefined): Positions {
  const starts = lineStarts(text);
  const fieldsOf = fieldIndex();
  const line = (offset: number) => lineAt(starts, offset);

  function find(path: Path): { node: Node | undefined; property: Node | undefined } {
    let node = tree;
    let property: Node | undefined;
    for (const step of path) {
      if (node?.type === 'array' && typeof step === 'number') {
        property = undefined;
        node = node.children?.[step] ?? node;
      } else if (node?.type === 'object') {
        property = fieldsOf(node).get(String(step));
        node = property?.children?.[1] ?? node;
      }
    }
    return { node, property };
  }

  return {
    line,
    value(path) {
      const { node } = find(path);
      const shown = node?.type === 'object' ? (fieldsOf(node).get('id')?.children?.[1] ?? node) : node;
      const length = shown?.type === 'object' ? 1 : (shown?.length ?? 0);
      return { path, offset: shown?.offset ?? 0, length };
    },
    key(path) {
      const name = find(path).property?.children?.[0];
      return { path, offset: name?.offset ?? 0, length: name?.length ?? 0 };
    },
    place({ path, offset, length }) {
      const number = line(offset);
      const from = starts[number - 1] ?? 0;
      const to = (starts[number] ?? text.length + 1) - 1;
      const place = { file, line: number, excerpt: excerpt(text.slice(from, to), offset - from, length) };
      return path.length === 0 ? place : { ...place, path: sayPath(path) };
    },
  };
}

/** A path as people read it: `fluids[2].low`. */
export function sayPath(path: Path): string {
  return path
    .map((step, i) => {
      if (typeof step === 'number') return `[${step}]`;
      const short = step.length > LONGEST_STEP ? `${step.slice(0, LONGEST_STEP)}...` : step;
      if (!/^[\w$-]+$/.test(short)) return `[${JSON.stringify(short)}]`;
      return i === 0 ? short : `.${short}`;
    })
    .join('');
}

const LONGEST_STEP = 64;
/** A line longer than this is shown only around the value. */
const LONGEST_EXCERPT = 160;
const BEFORE = 40;

function excerpt(line: string, from: number, length: number): NonNullable<Place['excerpt']> {
  const text = line.replace(/\r$/, '');
  const first = Math.min(from, text.length);
  const last = Math.max(first, Math.min(first + length, text.length));
  if (text.length <= LONGEST_EXCERPT) return { text, from: first, to: last };
  const start = Math.max(0, first - BEFORE);
  const shown = text.slice(start, start + LONGEST_EXCERPT);
  return { text: shown, from: first - start, to: Math.min(last - start, shown.length) };
}

function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

function lineAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle;
  }
  return low + 1;
}

/** Each object's properties by name, made once an object: looking them up one by one would be slow in a hostile file. */
function fieldIndex(): (object: Node) => ReadonlyMap<string, Node> {
  const made = new Map<Node, ReadonlyMap<string, Node>>();
  return (object) => {
    const before = made.get(object);
    if (before) return before;
    const fields = new Map<string, Node>();
    for (const property of object.children ?? []) {
      const name: unknown = property.children?.[0]?.value;
      if (typeof name === 'string') fields.set(name, property);
    }
    made.set(object, fields);
    return fields;
  };
}
