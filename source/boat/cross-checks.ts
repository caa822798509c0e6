import { contradictions } from './contradictions.ts';
import { MOST_ENTRIES } from './fields.ts';
import { nearest } from './nearest.ts';
import type { Path } from './positions.ts';
import { type Entry, entriesIn, entryAt, type Facts, type Finding } from './raw.ts';

/**
 * What in a boat file does not agree with the rest of it: ids, references, marks, legs. Takes the file's values as they were read, so that
 * one slip elsewhere hides nothing here; values of the wrong type are left to the schema. `lineOf` gives the line of a path.
 */
export function crossChecks(value: unknown, lineOf: (path: Path) => number): readonly Finding[] {
  const boat = entryAt(value, []);
  const ids = idsOf(boat);
  return [
    ...idsTwice(ids, lineOf),
    ...REFERENCES.flatMap(([from, target]) => references(boat, from, target, ids)),
    ...entriesIn(boat, 'passages').flatMap((passage) => motoringEngines(passage, ids)),
    ...contradictions(boat),
  ];
}

/** Each list whose entries have ids, and what one of them is called. */
const ONE_OF = {
  engines: 'engine',
  fluids: 'fluid',
  anodes: 'anode',
  spares: 'spare',
  services: 'service',
  checks: 'check',
  dated: 'dated thing',
  anchorages: 'anchorage',
  passages: 'passage',
} as const;

type List = keyof typeof ONE_OF;

/** Where one entry names another: `[]` stands for every entry of a list. */
const REFERENCES: readonly (readonly [from: readonly string[], target: List])[] = [
  [['fluids', '[]', 'engine'], 'engines'],
  [['fluids', '[]', 'stock'], 'spares'],
  [['anodes', '[]', 'spare'], 'spares'],
  [['anodes', '[]', 'unsettles'], 'checks'],
  [['spares', '[]', 'expected', 'engine'], 'engines'],
  [['services', '[]', 'engine'], 'engines'],
  [['services', '[]', 'uses', '[]', 'spare'], 'spares'],
  [['services', '[]', 'unsettles'], 'checks'],
  [['passage'], 'passages'],
  [['anchorage'], 'anchorages'],
];

interface Named {
  readonly id: string;
  readonly list: List;
  readonly path: Path;
}

function idsOf(boat: Entry): readonly Named[] {
  return (Object.keys(ONE_OF) as List[]).flatMap((list) =>
    entriesIn(boat, list).flatMap(({ fields, path }) =>
      typeof fields.id === 'string' ? [{ id: fields.id, list, path: [...path, 'id'] }] : [],
    ),
  );
}

function idsTwice(ids: readonly Named[], lineOf: (path: Path) => number): readonly Finding[] {
  const first = new Map<string, Path>();
  return ids.flatMap(({ id, path }) => {
    const before = first.get(id);
    if (!before) {
      first.set(id, path);
      return [];
    }
    return [{ path, facts: () => ({ kind: 'id twice', id, firstLine: lineOf(before) }) }];
  });
}

function references(
  boat: Entry,
  from: readonly string[],
  target: List,
  ids: readonly Named[],
): readonly Finding[] {
  const known = idsIn(ids, target);
  return valuesAt(boat, from).flatMap(({ value, path }) => unknownId(value, path, target, known));
}

function idsIn(ids: readonly Named[], list: List): ReadonlySet<string> {
  return new Set(ids.filter((named) => named.list === list).map(({ id }) => id));
}

function unknownId(value: unknown, path: Path, target: List, known: ReadonlySet<string>): readonly Finding[] {
  if (typeof value !== 'string' || known.has(value)) return [];
  const facts = (): Facts => {
    const near = nearest(value, known);
    const said = { kind: 'no such item' as const, id: value, wants: ONE_OF[target] };
    return near === undefined ? said : { ...said, near };
  };
  return [{ path, facts }];
}

/** The values a reference stands for; a list of ids counts one by one. */
function valuesAt(entry: Entry, from: readonly string[]): readonly { value: unknown; path: Path }[] {
  const [name = '', next, ...rest] = from;
  if (next === '[]') return entriesIn(entry, name).flatMap((inner) => valuesAt(inner, rest));
  const value = entry.fields[name];
  const path = [...entry.path, name];
  if (next !== undefined) return valuesAt(entryAt(value, path), [next, ...rest]);
  if (Array.isArray(value))
    return value.slice(0, MOST_ENTRIES).map((one: unknown, i) => ({ value: one, path: [...path, i] }));
  return [{ value, path }];
}

function motoringEngines(passage: Entry, ids: readonly Named[]): readonly Finding[] {
  const known = idsIn(ids, 'engines');
  const motoring = entryAt(passage.fields.motoring, [...passage.path, 'motoring']);
  return Object.keys(motoring.fields).flatMap((engine) =>
    unknownId(engine, [...motoring.path, engine], 'engines', known).map((finding) => ({
      ...finding,
      byName: true as const,
    })),
  );
}
