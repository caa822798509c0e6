import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isPrefix, unionOfLogs } from '../../source/logbook/union.ts';
import { aLaptop, aRemark, crcOf } from '../helpers/a-laptop.ts';

const union = (a: Uint8Array, b: Uint8Array) => Buffer.from(unionOfLogs(a, b, crcOf));
const textOf = (bytes: Uint8Array) => Buffer.from(bytes).toString();

/** Copies of one laptop's file that have gone different ways, some with a torn or damaged line. */
const copies = fc
  .array(fc.record({ shared: fc.nat({ max: 5 }), own: fc.nat({ max: 4 }), torn: fc.boolean() }), {
    minLength: 3,
    maxLength: 3,
  })
  .map((wanted) => {
    const trunk = aLaptop('k7m2q9xd');
    const stages = [trunk.clone()];
    for (let i = 0; i < 5; i += 1) {
      trunk.write(aRemark(`shared ${i}`));
      stages.push(trunk.clone());
    }
    return wanted.map(({ shared, own, torn }, which) => {
      const copy = stages[shared]!.clone();
      for (let i = 0; i < own; i += 1) copy.write(aRemark(`copy ${which}, ${i}`));
      return Buffer.concat([...copy.bytes, Buffer.from(torn ? `{"v":1,"torn ${which}` : '')]);
    });
  });

describe('the union of copies of a log file', () => {
  it('is the same bytes whichever comes first, however they are paired, and however often', () => {
    fc.assert(
      fc.property(copies, (three) => {
        const [a, b, c] = three as [Buffer, Buffer, Buffer];
        const all = union(union(a, b), c);
        expect(textOf(union(a, union(b, c)))).toBe(textOf(all));
        expect(textOf(union(c, union(b, a)))).toBe(textOf(all));
        expect(textOf(union(all, b))).toBe(textOf(all));
      }),
      { numRuns: 300 },
    );
  });

  it('keeps every line of each, once', () => {
    fc.assert(
      fc.property(copies, (three) => {
        const lines = (bytes: Uint8Array) => textOf(bytes).split('\n').filter(Boolean);
        const [a, b] = three as [Buffer, Buffer, Buffer];
        expect(lines(union(a, b)).toSorted()).toEqual([...new Set([...lines(a), ...lines(b)])].toSorted());
      }),
      { numRuns: 200 },
    );
  });

  it('has the lines by number, and damaged ones last', () => {
    const one = aLaptop('k7m2q9xd');
    for (let i = 0; i < 11; i += 1) one.write(aRemark(`${i}`));
    const bytes = Buffer.concat([...one.bytes.toReversed(), Buffer.from('garbage\n')]);
    expect(textOf(union(bytes, Buffer.from('a torn line')))).toBe(
      `${Buffer.concat(one.bytes)}a torn line\ngarbage\n`,
    );
  });
});

describe('a file', () => {
  it('is the beginning of itself and of what goes on from it, and of nothing else', () => {
    const [a, ab, b] = ['a', 'ab', 'b'].map((text) => Buffer.from(text)) as [Buffer, Buffer, Buffer];
    expect([isPrefix(a, a), isPrefix(a, ab), isPrefix(Buffer.of(), a)]).toEqual([true, true, true]);
    expect([isPrefix(ab, a), isPrefix(b, ab)]).toEqual([false, false]);
  });
});
