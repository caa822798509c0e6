import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withValue } from '../../source/boat/edit-json.ts';

const leaf = fc.oneof(fc.integer(), fc.boolean(), fc.string({ maxLength: 8 }), fc.constant(null));
const name = fc.stringMatching(/^[a-d]$/u);
const { value: json } = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: 'small' },
    leaf,
    fc.array(tie('value'), { maxLength: 4 }),
    fc.dictionary(name, tie('value'), { maxKeys: 4 }),
  ),
}));
const group = fc.dictionary(name, json, { minKeys: 1, maxKeys: 4 }).map((value) => ({ ...value }));
const style = fc.constantFrom<string | number>(0, 1, 2, '\t');
const eol = fc.constantFrom('\n', '\r\n');

/** Every path there is in a value, its own left out. */
function pathsIn(value: unknown): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [];
  const steps = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return steps.flatMap((step) => [
    [step],
    ...pathsIn((value as Record<string | number, unknown>)[step]).map((rest) => [step, ...rest]),
  ]);
}

function put(root: unknown, path: readonly (string | number)[], value: unknown, insert: boolean): unknown {
  const copy = structuredClone(root);
  const holder = path.slice(0, -1).reduce((one, step) => (one as never)[step], copy) as never;
  const last = path.at(-1)!;
  if (Array.isArray(holder)) {
    const list = holder as unknown[];
    list.splice(Number(last), insert ? 0 : 1, ...(value === undefined ? [] : [value]));
  } else if (value === undefined) delete holder[last];
  else holder[last] = value as never;
  return copy;
}

const edits = fc.record({
  group,
  style,
  eol,
  pick: fc.nat(),
  value: json,
  how: fc.constantFrom('put', 'insert', 'take'),
});

describe('a value put into a JSON text', () => {
  it('is there, and every other value is what it was', () => {
    fc.assert(
      fc.property(edits, (given) => {
        const text = JSON.stringify(given.group, null, given.style).replaceAll('\n', given.eol);
        const paths = pathsIn(given.group);
        const path = paths[given.pick % paths.length]!;
        const insert = given.how === 'insert' && typeof path.at(-1) === 'number';
        const value = given.how === 'take' ? undefined : given.value;
        const after = withValue(text, path, value, { insert });
        expect(JSON.parse(after)).toEqual(put(given.group, path, value, insert));
      }),
    );
  });

  it('leaves every byte round a value it replaces', () => {
    fc.assert(
      fc.property(edits, (given) => {
        const marked = put(given.group, ['a'], '@@@', false);
        const text = JSON.stringify(marked, null, given.style).replaceAll('\n', given.eol);
        const [before, after] = text.split('"@@@"');
        const changed = withValue(text, ['a'], given.value);
        expect(changed.startsWith(before!)).toBe(true);
        expect(changed.endsWith(after!)).toBe(true);
      }),
    );
  });

  it('put in and taken out again leaves the text as it was', () => {
    fc.assert(
      fc.property(edits, (given) => {
        const text = JSON.stringify(given.group, null, given.style).replaceAll('\n', given.eol);
        expect(withValue(withValue(text, ['zz'], given.value), ['zz'], undefined)).toBe(text);
      }),
    );
  });

  it('stands as what is beside it: on the line, on lines of its own, tabs for tabs', () => {
    expect(withValue('{ "a": 1 }', ['b'], [1, 2])).toBe('{ "a": 1, "b": [1, 2] }');
    expect(withValue('{"a":1}', ['b'], 2)).toBe('{"a":1,"b": 2}');
    expect(withValue('{\r\n\t"a": 1\r\n}', ['b'], 2)).toBe('{\r\n\t"a": 1,\r\n\t"b": 2\r\n}');
    expect(withValue('{ "a": [{ "b": 1 }] }', ['a', 1], { c: 2 }, { insert: true })).toBe(
      '{ "a": [{ "b": 1 }, { "c": 2 }] }',
    );
  });

  it('makes what is missing on the way, and takes nothing out that is not there', () => {
    expect(withValue('{}', ['a', 'b', 'c'], 1)).toBe('{ "a": { "b": { "c": 1 } } }');
    expect(withValue('{ "a": 1 }', ['b', 'c'], undefined)).toBe('{ "a": 1 }');
    expect(withValue('{ "a": 1 }', ['a', 'c'], 2)).toBe('{ "a": 1 }');
  });

  it('keeps the mark some editors put first, and a text that is no JSON', () => {
    expect(withValue('\ufeff{ "a": 1 }', ['a'], 2)).toBe('\ufeff{ "a": 2 }');
    expect(withValue('', ['a'], 2)).toBe('');
  });
});
