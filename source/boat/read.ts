import { getNodeValue, type Node } from 'jsonc-parser';
import type { z } from 'zod';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { BOAT_FORMAT, type Boat, boatSchema } from './boat.ts';
import { crossChecks } from './cross-checks.ts';
import { fieldNames } from './field-names.ts';
import { nearest } from './nearest.ts';
import { type Path, type Positions, positionsIn, type Spot } from './positions.ts';
import type { Facts } from './raw.ts';
import { readSyntax } from './syntax.ts';

/** The largest boat.json that is read, in bytes: a boat of forty items takes some 15,000. Bounds what the worst of files can take. */
export const BOAT_FILE_MOST = 250_000;

const MOST_TROUBLES = 100;

interface Found {
  readonly spot: Spot;
  /** Made only for those shown. */
  readonly facts: () => Facts;
}

/**
 * Reads the text of a boat.json. Every mistake at once, in the order of the file, at most 100 and a count of the rest; `file` is how the
 * troubles name it. Never throws, whatever the text.
 */
export function readBoat(text: string, file: string): Result<Boat> {
  if (text.length > BOAT_FILE_MOST) {
    return bad({ kind: 'file too large', file, bytes: bytesIn(text), most: BOAT_FILE_MOST });
  }
  const plain = text.replace(/^\ufeff/, '');
  const { tree, faults } = readSyntax(plain);
  const positions = positionsIn(plain, file, tree);
  const syntax = faults.map(({ offset, length, what }): Found => {
    return { spot: { path: [], offset, length }, facts: () => ({ kind: 'not json', what }) };
  });
  if (!tree) return bad(...troublesOf(syntax, positions, file));

  const value: unknown = getNodeValue(tree);
  const newer = newerFormat(value, positions);
  if (newer) return bad(...troublesOf([newer], positions, file));
  // Read once: to compile the schema takes longer than to read a boat with it.
  const parsed = boatSchema.safeParse(value, { jitless: true });
  const names = nameTroubles(tree, positions);
  const fields = parsed.success ? [] : schemaTroubles(parsed.error.issues, value, names, positions);
  const found = syntax.concat(names, fields, crossTroubles(value, positions));
  if (found.length > 0 || !parsed.success) return bad(...troublesOf(found, positions, file));
  return good(parsed.data);
}

function bytesIn(text: string): number {
  return new TextEncoder().encode(text).length;
}

function newerFormat(value: unknown, positions: Positions): Found | null {
  const format = typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined;
  if (!Number.isSafeInteger(format) || (format as number) <= BOAT_FORMAT) return null;
  const facts: Facts = { kind: 'newer format', found: format as number, known: BOAT_FORMAT };
  return { spot: positions.value(['format']), facts: () => facts };
}

function troublesOf(found: readonly Found[], positions: Positions, file: string): readonly Trouble[] {
  const sorted = [...found].sort((a, b) => a.spot.offset - b.spot.offset);
  const shown = sorted
    .slice(0, MOST_TROUBLES)
    .map(({ spot, facts }): Trouble => ({ ...facts(), place: positions.place(spot) }));
  const more = sorted.length - shown.length;
  return more === 0 ? shown : [...shown, { kind: 'more troubles', file, count: more }];
}

interface NameFound extends Found {
  /** Where a field is missing because this one is misspelt: the object and the field's name. */
  readonly insteadOf?: string;
}

function nameTroubles(tree: Node, positions: Positions): readonly NameFound[] {
  return fieldNames(tree, boatSchema).map((name): NameFound => {
    const { field } = name;
    const spot = positions.key(name.path);
    if (name.what === 'twice') {
      const firstLine = positions.line(name.firstOffset);
      return { spot, facts: () => ({ kind: 'field twice', field, firstLine }) };
    }
    const { near } = name;
    const insteadOf = JSON.stringify([...name.path.slice(0, -1), near]);
    return { spot, insteadOf, facts: () => ({ kind: 'misspelt field', field, near }) };
  });
}

function crossTroubles(value: unknown, positions: Positions): readonly Found[] {
  const lineOf = (path: Path) => positions.line(positions.value(path).offset);
  return crossChecks(value, lineOf).map(({ path, byName, facts }) => {
    return { spot: byName ? positions.key(path) : positions.value(path), facts };
  });
}

/** What the schema found. A field missing because its name is misspelt is said once, by its name. */
function schemaTroubles(
  issues: readonly z.core.$ZodIssue[],
  value: unknown,
  names: readonly NameFound[],
  positions: Positions,
): readonly Found[] {
  const misspelt = new Set(names.map(({ insteadOf }) => insteadOf));
  return issues.flatMap((issue) => {
    const path = issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
    const { parent, value: found } = valueAt(value, path);
    const field = path.at(-1);
    const isMissing = found === undefined && typeof field === 'string';
    if (isMissing && (parent === undefined || misspelt.has(JSON.stringify(path)))) return [];
    const spot = positions.value(isMissing ? path.slice(0, -1) : path);
    return [{ spot, facts: () => issueFacts(issue, field, found) }];
  });
}

/** What the schema found of a field, or of a field that is not there. */
export function issueFacts(
  issue: z.core.$ZodIssue,
  field: string | number | undefined,
  found: unknown,
): Facts {
  if (found === undefined && typeof field === 'string')
    return { kind: 'field missing', field, expected: issue.message };
  return wrongValue(issue, found);
}

function valueAt(root: unknown, path: Path): { parent: unknown; value: unknown } {
  let parent: unknown;
  let value = root;
  for (const step of path) {
    parent = value;
    const has = typeof value === 'object' && value !== null && Object.hasOwn(value, step);
    value = has ? (value as { readonly [step: string | number]: unknown })[step] : undefined;
  }
  return { parent, value };
}

function wrongValue(issue: z.core.$ZodIssue, value: unknown): Facts {
  const facts = { kind: 'wrong value' as const, value, expected: issue.message };
  const near = typeof value === 'string' ? nearValue(issue, value) : undefined;
  return near === undefined ? facts : { ...facts, near: JSON.stringify(near) };
}

/** What was most likely meant: a word of the list, a number out of its quotes, an id in its form. */
function nearValue(issue: z.core.$ZodIssue, value: string): string | number | boolean | undefined {
  if (issue.code === 'invalid_value') return nearest(value, issue.values.map(String));
  if (issue.code === 'invalid_format' && issue.format === 'regex') return asId(value);
  if (issue.code !== 'invalid_type') return undefined;
  if (issue.expected === 'number' && /^\s*-?\d+([.,]\d+)?\s*$/.test(value)) {
    return Number(value.replace(',', '.'));
  }
  if (issue.expected === 'boolean' && /^(true|false)$/i.test(value)) return value.toLowerCase() === 'true';
  return undefined;
}

function asId(value: string): string | undefined {
  const plain = value.slice(0, 200).normalize('NFKD').toLowerCase();
  const id = plain
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 64);
  return id === '' ? undefined : id;
}
