import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBoat } from '../../source/boat/read.ts';
import { sayTrouble } from '../../source/words/troubles.ts';
import { boatText } from '../helpers/broken-boat.ts';

const sound = boatText();

/** Pieces likely to break a parser: brackets, quotes, numbers, controls, parts of the file itself. */
const piece = fc.oneof(
  fc.constantFrom(
    '{',
    '}',
    '[',
    ']',
    '"',
    ',',
    ':',
    '//',
    '/*',
    '\\',
    '\\u12',
    '1e999',
    '-',
    'null',
    '\n',
    '\u0000',
    '\u202e',
  ),
  fc.constantFrom('"__proto__":', '"id":', '"fuel"', '{}', '[]', 'true', '0.1.2', '\ud800'),
  fc.string({ unit: 'binary', maxLength: 8 }),
  fc.nat(sound.length).map((from) => sound.slice(from, from + 40)),
);
const edit = fc.record({ at: fc.nat(sound.length), cut: fc.nat(30), piece });

function mutated(edits: readonly { at: number; cut: number; piece: string }[]): string {
  return edits.reduce(
    (text, { at, cut, piece: put }) => text.slice(0, at) + put + text.slice(at + cut),
    sound,
  );
}

/** Whatever the text: no throw, every trouble inside the file and sayable, nothing in the words that moves a cursor, no words of the checking library. */
function expectSaid(text: string): void {
  const read = readBoat(text, 'boat.json');
  if (read.ok) return;
  const lines = text.split('\n').length;
  expect(read.troubles.length).toBeGreaterThan(0);
  for (const trouble of read.troubles) {
    if ('place' in trouble) {
      expect(trouble.place.line).toBeGreaterThanOrEqual(1);
      expect(trouble.place.line).toBeLessThanOrEqual(lines);
    }
    const words = sayTrouble(trouble);
    expect(words).not.toMatch(/invalid|undefined|\[object/i);
    expect(words).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
  }
}

test('a boat file with a few places overwritten is read or complained of, never thrown at', () => {
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => expectSaid(mutated(edits))),
    { numRuns: 300, seed: 20260203 },
  );
});

test('so is any JSON', () => {
  fc.assert(fc.property(fc.json({ maxDepth: 8 }), expectSaid), { numRuns: 300, seed: 20260203 });
});

test('so is any text', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), expectSaid), {
    numRuns: 300,
    seed: 20260203,
  });
});

test('so is a boat file with any one value put in the place of another', () => {
  const paths = leavesOf(JSON.parse(sound), []);
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.jsonValue({ maxDepth: 3 }), (path, value) => {
      const boat = JSON.parse(sound);
      const parent = path.slice(0, -1).reduce((group, step) => group[step], boat);
      parent[path.at(-1)!] = value;
      expectSaid(JSON.stringify(boat, null, 1));
    }),
    { numRuns: 300, seed: 20260203 },
  );
});

function leavesOf(value: unknown, path: readonly (string | number)[]): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [
    ...(path.length > 0 ? [path] : []),
    ...Object.entries(value).flatMap(([key, inner]) =>
      leavesOf(inner, [...path, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}
