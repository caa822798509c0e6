import { z } from 'zod';
import { nearest } from '../boat/nearest.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { crossTrouble } from './cross-rules.ts';
import { type Draft, type EntryKind, entryKinds } from './entries.ts';
import { refusedKeyIn } from './refused-keys.ts';
import { common } from './understand.ts';

type Fields = Record<string, unknown>;

/** Unlike lines of the log, which may come from a later version, drafts hold the fields of their kind and nothing else. */
const schemas = new Map<string, z.ZodObject>();
const kinds = Object.keys(entryKinds);

function schemaOf(kind: string): z.ZodObject {
  const known = schemas.get(kind);
  if (known) return known;
  const { shape } = entryKinds[kind as EntryKind];
  const schema = z.strictObject({ ...common, kind: z.literal(kind), ...shape });
  schemas.set(kind, schema);
  return schema;
}

/**
 * Checks one bare entry: `kind`, `at`, the fields of its kind in file units, and where wanted `by` and `key`.
 * Every trouble at once, each naming the field, what was found, what would be right and the nearest name; `line` is its line of standard input.
 */
export function readDraft(value: unknown, line?: number): Result<Draft> {
  const at = line === undefined ? {} : { line };
  const wrong = troublesOf(value).map((trouble): Trouble => ({ kind: 'wrong entry', ...at, ...trouble }));
  return wrong.length > 0 ? bad(...wrong) : good(value as Draft);
}

interface Wrong {
  readonly field: string;
  readonly value: unknown;
  readonly expected: string;
  readonly near?: string;
}

function troublesOf(value: unknown): readonly Wrong[] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return [{ field: '', value, expected: 'an entry in curly brackets: {"kind": ..., "at": ...}' }];
  }
  const refused = refusedKeyIn(value);
  if (refused !== null) return [{ field: refused, value: undefined, expected: 'no such field' }];
  const fields = value as Fields;
  const kind = fields.kind;
  if (typeof kind !== 'string' || !kinds.includes(kind)) {
    const expected = `one of ${kinds.join(', ')}`;
    return [{ field: 'kind', value: kind, expected, ...near(kind, kinds) }];
  }
  const schema = schemaOf(kind);
  const issues = schema.safeParse(fields).error?.issues ?? [];
  if (issues.length > 0) return issues.flatMap((issue) => wrongFrom(issue, fields, schema));
  const cross = crossTrouble(kind as EntryKind, fields);
  return cross ? [{ ...cross, value: fields[cross.field] }] : [];
}

function wrongFrom(issue: z.core.$ZodIssue, fields: Fields, schema: z.ZodObject): Wrong[] {
  if (issue.code === 'unrecognized_keys' && issue.path.length === 0) {
    const names = Object.keys(schema.shape);
    return issue.keys.map((field) => ({
      field,
      value: fields[field],
      expected: `a field of ${fields.kind}: ${names.join(', ')}`,
      ...near(field, names),
    }));
  }
  const value = at(fields, issue.path);
  const json = jsonSchemaAt(schema, issue.path);
  const choices = json.enum?.filter((choice) => typeof choice === 'string') ?? [];
  return [{ field: pathText(issue.path), value, expected: expectedBy(json), ...near(value, choices) }];
}

function near(written: unknown, names: Iterable<string>): { near?: string } {
  const found = typeof written === 'string' ? nearest(written, names) : undefined;
  return found === undefined ? {} : { near: found };
}

function at(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((inside, key) => (inside as Record<PropertyKey, unknown>)?.[key], value);
}

/** `uses[2].count` */
function pathText(path: readonly PropertyKey[]): string {
  return path
    .map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i ? '.' : ''}${String(key)}`))
    .join('');
}

type Json = z.core.JSONSchema.BaseSchema;

function jsonSchemaAt(schema: z.ZodObject, path: readonly PropertyKey[]): Json {
  let json = z.toJSONSchema(schema, { io: 'input' }) as Json;
  for (const key of path) {
    const inside = typeof key === 'number' ? json.items : json.properties?.[String(key)];
    if (typeof inside !== 'object' || Array.isArray(inside)) return {};
    json = inside;
  }
  return json;
}

function expectedBy(json: Json): string {
  if (json.enum) return `one of ${json.enum.map((choice) => JSON.stringify(choice)).join(', ')}`;
  const branches = json.anyOf?.filter((branch) => typeof branch === 'object').map(expectedBy);
  if (branches) return branches.join(' or ');
  switch (json.type) {
    case 'number':
    case 'integer':
      return `a ${json.type === 'integer' ? 'whole ' : ''}number from ${json.minimum} to ${json.maximum}`;
    case 'boolean':
      return 'true or false';
    case 'string':
      return expectedText(json);
    case 'array':
      return `a list of at most ${json.maxItems}`;
    case 'null':
      return 'null';
    default:
      return `{${Object.keys(json.properties ?? {}).join(', ')}} in curly brackets`;
  }
}

function expectedText({ format, maxLength, pattern }: Json): string {
  if (format === 'date-time') return 'a UTC instant such as "2026-02-03T07:42:00Z"';
  if (format === 'date') return 'a date such as "2027-03-31"';
  if (pattern) return 'an id: small letters, digits and hyphens, at most 64, such as "gear-oil"';
  return `text of at most ${maxLength} characters`;
}
