import { type Node, parseTree } from 'jsonc-parser';
import type { Path } from './positions.ts';

/** Longer than this a value is written over several lines. */
const LONGEST_LINE = 100;

/**
 * The JSON text with the value at `path` put in, in the place of what stands there, or taken out where it is undefined. What is missing on the way is
 * made. All else keeps its bytes, and what is new is written as what stands beside it. A number at the end of the path is a place in a list: with
 * `insert` what stands there moves on. The same text where nothing can stand at the path.
 */
export function withValue(text: string, path: Path, value: unknown, { insert = false } = {}): string {
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  const plain = text.slice(mark.length);
  const tree = parseTree(plain);
  if (!tree) return text;
  return mark + changed(plain, tree, { path, value, insert });
}

interface Edit {
  readonly path: Path;
  readonly value: unknown;
  readonly insert: boolean;
}

function changed(text: string, tree: Node, { path, value, insert }: Edit): string {
  let node = tree;
  for (const [depth, step] of path.entries()) {
    const isLast = depth === path.length - 1;
    const found = childAt(node, step);
    if (found && !(isLast && insert)) {
      node = found;
      continue;
    }
    if (value === undefined || !holds(node, step)) return text;
    return put(text, node, step, nested(path.slice(depth + 1), value));
  }
  if (value === undefined) return taken(text, node);
  const own = isOneLine(text, node)
    ? inLine(value)
    : written(value, indentAt(text, node.offset), eolOf(text));
  return spliced(text, node, own);
}

function childAt(node: Node, step: string | number): Node | undefined {
  if (typeof step === 'number') return node.type === 'array' ? node.children?.[step] : undefined;
  return propertyOf(node, step)?.children?.[1];
}

function propertyOf(node: Node, name: string): Node | undefined {
  if (node.type !== 'object') return undefined;
  return node.children?.find((property) => property.children?.[0]?.value === name);
}

function holds(node: Node, step: string | number): boolean {
  return node.type === (typeof step === 'number' ? 'array' : 'object');
}

/** What the rest of a path that is not there yet comes to. */
function nested(path: Path, value: unknown): unknown {
  return path.reduceRight<unknown>(
    (inner, step) => (typeof step === 'number' ? [inner] : { [step]: inner }),
    value,
  );
}

/** One more in a group or a list, set apart as those beside it are. */
function put(text: string, node: Node, step: string | number, value: unknown): string {
  const children = node.children ?? [];
  const name = typeof step === 'string' ? `${JSON.stringify(step)}: ` : '';
  const eol = eolOf(text);
  if (children.length === 0) {
    const outer = indentAt(text, node.offset);
    const isItem = typeof step === 'number' && typeof value === 'object' && outer.length > 0;
    const [before, after] = isItem ? [`${eol}${outer}  `, `${eol}${outer}`] : [' ', ' '];
    const inner = `${name}${written(value, isItem ? `${outer}  ` : outer, eol)}`;
    const [opens, closes] = typeof step === 'number' ? ['[', ']'] : ['{', '}'];
    const filled =
      typeof step === 'number' && !isItem ? `[${inner}]` : opens + before + inner + after + closes;
    return spliced(text, node, filled);
  }
  const at = typeof step === 'number' ? Math.min(step, children.length) : children.length;
  const beside = children[Math.min(at, children.length - 1)]!;
  const blanks = text.slice(separatorEnd(text, beside), beside.offset);
  const apart = blanks === '' && text.includes(': ') ? ' ' : blanks;
  const isLine = isOneLine(text, beside) && typeof step === 'number';
  const own = `${name}${isLine ? inLine(value) : written(value, indentAt(text, beside.offset), eol)}`;
  if (at < children.length)
    return `${text.slice(0, beside.offset)}${own},${apart}${text.slice(beside.offset)}`;
  const end = beside.offset + beside.length;
  return `${text.slice(0, end)},${apart}${own}${text.slice(end)}`;
}

/** Where a list or group of some length stands on one line, its owner wants it so. */
function isOneLine(text: string, { type, offset, length }: Node): boolean {
  const isNested = type === 'array' || type === 'object';
  return isNested && length > 2 && !text.slice(offset, offset + length).includes('\n');
}

/** Where the bracket or comma before a value ends. */
function separatorEnd(text: string, { offset }: Node): number {
  let at = offset;
  while (at > 0 && /\s/.test(text.charAt(at - 1))) at -= 1;
  return at;
}

/** Without a value: a field goes with its name, and either with one comma. */
function taken(text: string, value: Node): string {
  const node = value.parent?.type === 'property' ? value.parent : value;
  const siblings = node.parent?.children ?? [];
  const at = siblings.indexOf(node);
  const [before, after] = [siblings[at - 1], siblings[at + 1]];
  const end = node.offset + node.length;
  if (before) return text.slice(0, before.offset + before.length) + text.slice(end);
  if (after) return text.slice(0, node.offset) + text.slice(after.offset);
  const around = node.parent;
  if (!around) return text;
  return spliced(text, around, around.type === 'array' ? '[]' : '{}');
}

function spliced(text: string, { offset, length }: Node, put: string): string {
  return text.slice(0, offset) + put + text.slice(offset + length);
}

/** A value as a person writes it: on one line where it is short, else an entry a line. */
function written(value: unknown, indent: string, eol: string): string {
  const short = inLine(value);
  if (short.length <= LONGEST_LINE || typeof value !== 'object' || value === null) return short;
  const inner = `${indent}  `;
  const lines = Array.isArray(value)
    ? value.map((one) => written(one, inner, eol))
    : entriesOf(value).map(([name, one]) => `${JSON.stringify(name)}: ${written(one, inner, eol)}`);
  const [opens, closes] = Array.isArray(value) ? '[]' : '{}';
  return `${opens}${eol}${inner}${lines.join(`,${eol}${inner}`)}${eol}${indent}${closes}`;
}

function inLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = entriesOf(value).map(([name, one]) => `${JSON.stringify(name)}: ${inLine(one)}`);
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}

function entriesOf(value: object): [string, unknown][] {
  return Object.entries(value).filter(([, one]) => one !== undefined);
}

/** The blanks its line begins with. */
function indentAt(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return /^[ \t]*/.exec(text.slice(start, offset))?.[0] ?? '';
}

function eolOf(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}
