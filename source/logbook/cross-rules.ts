import type { EntryKind } from './entries.ts';

type Fields = Readonly<Record<string, unknown>>;

/** What a rule over several fields finds wrong: the field to name, and what would be right. */
export interface CrossTrouble {
  readonly field: string;
  readonly expected: string;
}

/** Checks what one field alone cannot show: a dip that gives no level, two levels at once, a gate that closes before it opens. */
export function crossTrouble(kind: EntryKind, fields: Fields): CrossTrouble | null {
  return rules[kind]?.(fields) ?? null;
}

const rules: { readonly [K in EntryKind]?: (fields: Fields) => CrossTrouble | null } = {
  dip: (fields) => exactlyOne(fields, ['level', 'share', 'off']),
  topup: (fields) => atMostOne(fields, ['level', 'share']),
  change: (fields) => atMostOne(fields, ['level', 'share']),
  anode: (fields) =>
    given(fields, ['diameterMm', 'lengthMm']).length > 0
      ? noneOf(fields, ['share', 'massKg'], 'diameterMm and lengthMm')
      : exactlyOne(fields, ['share', 'massKg'], ', or diameterMm and/or lengthMm'),
  clue: (fields) => exactlyOne(fields, ['seen', 'cannotTell']),
  check: (fields) => exactlyOne(fields, ['ok', 'value']),
  weather: (fields) => atLeastOne(fields, ['wind', 'gust', 'dir', 'seas', 'pressure', 'squalls']),
  gate: ({ from, to }) =>
    Date.parse(from as string) < Date.parse(to as string)
      ? null
      : { field: 'to', expected: `an instant after ${from}` },
};

function exactlyOne(fields: Fields, names: readonly string[], also = ''): CrossTrouble | null {
  const found = given(fields, names);
  if (found.length === 1) return null;
  return { field: found[1] ?? (names[0] as string), expected: `one of ${names.join(', ')}${also}` };
}

function atMostOne(fields: Fields, names: readonly string[]): CrossTrouble | null {
  const found = given(fields, names);
  return found[1] === undefined ? null : { field: found[1], expected: `only one of ${names.join(', ')}` };
}

function atLeastOne(fields: Fields, names: readonly string[]): CrossTrouble | null {
  if (given(fields, names).length > 0) return null;
  return { field: names[0] as string, expected: `at least one of ${names.join(', ')}` };
}

function noneOf(fields: Fields, names: readonly string[], beside: string): CrossTrouble | null {
  const found = given(fields, names)[0];
  return found === undefined ? null : { field: found, expected: `nothing beside ${beside}` };
}

function given(fields: Fields, names: readonly string[]): string[] {
  return names.filter((name) => fields[name] !== undefined);
}
