import { getNodeValue } from 'jsonc-parser';
import { nearest } from '../boat/nearest.ts';
import { type Path, positionsIn } from '../boat/positions.ts';
import { readSyntax } from '../boat/syntax.ts';
import { type BoatFileTrouble, bad, good, type Result } from '../trouble.ts';
import { type Table, tableSchema } from './table.ts';

type Facts = BoatFileTrouble extends infer T
  ? T extends { place: unknown }
    ? Omit<T, 'place'>
    : never
  : never;

interface Finding {
  readonly path: Path;
  readonly facts: Facts;
}

/** Priors of a table add up to 1 within this: thirds are written with two or three digits. */
const SUM_NEAR = 0.011;
const MOST_TROUBLES = 50;

/** Reads the text of a table. Every mistake at once, with its line; `file` is how the troubles name it. Never throws. */
export function readTable(text: string, file: string): Result<Table> {
  const plain = text.replace(/^\ufeff/, '');
  const { tree, faults } = readSyntax(plain);
  const positions = positionsIn(plain, file, tree);
  const place = (path: Path) => positions.place(positions.value(path));
  if (!tree || faults.length > 0)
    return bad(
      ...faults.map(({ offset, length, what }) => ({
        kind: 'not json' as const,
        what,
        place: positions.place({ path: [], offset, length }),
      })),
    );
  const value: unknown = getNodeValue(tree);
  const parsed = tableSchema.safeParse(value);
  const found = parsed.success ? crossFindings(parsed.data) : schemaFindings(parsed.error.issues, value);
  if (parsed.success && found.length === 0) return good(parsed.data);
  return bad(...found.slice(0, MOST_TROUBLES).map(({ path, facts }) => ({ ...facts, place: place(path) })));
}

function schemaFindings(
  issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[],
  root: unknown,
): readonly Finding[] {
  return issues.map(({ path: keys, message }) => {
    const path = keys.map((key) => (typeof key === 'number' ? key : String(key)));
    let value: unknown = root;
    for (const step of path) value = (value as { [step: string | number]: unknown } | undefined)?.[step];
    const field = path.at(-1);
    return value === undefined && typeof field === 'string'
      ? { path: path.slice(0, -1), facts: { kind: 'field missing', field, expected: message } }
      : { path, facts: { kind: 'wrong value', value, expected: message } };
  });
}

/** What one field alone cannot show: priors that do not add up, ids twice, a clue without a chance for a cause, or with one for a cause nobody knows. */
function crossFindings({ causes, clues, somethingElse }: Table): readonly Finding[] {
  const ids = causes.map((cause) => cause.id);
  const sum = causes.reduce((total, { prior }) => total + prior, somethingElse);
  return [
    ...(Math.abs(sum - 1) <= SUM_NEAR
      ? []
      : [
          {
            path: ['somethingElse'],
            facts: {
              kind: 'wrong value' as const,
              value: somethingElse,
              expected: `a chance that makes 1 with the priors of all causes; they make ${Number(sum.toPrecision(4))}`,
            },
          },
        ]),
    ...twice(ids, 'causes'),
    ...twice(
      clues.map((clue) => clue.id),
      'clues',
    ),
    ...clues.flatMap(({ chances }, i) => [
      ...ids
        .filter((cause) => !Object.hasOwn(chances, cause))
        .map((field) => ({
          path: ['clues', i, 'chances'],
          facts: { kind: 'field missing' as const, field, expected: 'a number, 0 to 1, where 1 is always' },
        })),
      ...Object.keys(chances)
        .filter((cause) => !ids.includes(cause))
        .map((cause) => {
          const near = nearest(cause, ids);
          return {
            path: ['clues', i, 'chances', cause],
            facts: {
              kind: 'no such item' as const,
              id: cause,
              wants: 'a cause',
              ...(near === undefined ? {} : { near }),
            },
          };
        }),
    ]),
  ];
}

function twice(ids: readonly string[], list: string): readonly Finding[] {
  return ids.flatMap((id, i) =>
    ids.indexOf(id) === i
      ? []
      : [
          {
            path: [list, i],
            facts: {
              kind: 'wrong value' as const,
              value: id,
              expected: `an id of its own: one of the ${list} before has it`,
            },
          },
        ],
  );
}
