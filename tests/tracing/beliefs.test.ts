import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entropyBits, expectedBits, normalised, updated } from '../../source/tracing/beliefs.ts';

const size = 5;
const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const row = fc.array(chance, { minLength: size, maxLength: size });
const beliefs = row.map((weights) => normalised(weights)!);

describe('beliefs over causes', () => {
  it('are moved by nothing that all causes show alike, and such a look is worth exactly nothing', () => {
    fc.assert(
      fc.property(beliefs, chance, fc.boolean(), (before, same, seen) => {
        const shown = before.map(() => same);
        expectSame(updated(before, shown, seen), before);
        expect(expectedBits(before, [shown, shown.map((one) => 1 - one)])).toBe(0);
      }),
    );
  });

  it('come out the same in whatever order the clues come', () => {
    fc.assert(
      fc.property(
        beliefs,
        fc.array(fc.tuple(row, fc.boolean()), { minLength: 2, maxLength: 8 }),
        (start, clues) => {
          const take = (list: typeof clues) =>
            list.reduce((so, [shown, seen]) => updated(so, shown, seen), start);
          const backwards = take([...clues].reverse());
          expectSame(take(clues), backwards);
        },
      ),
    );
  });

  it('are expected after a look to be what they were before it', () => {
    fc.assert(
      fc.property(beliefs, row, (before, shown) => {
        const seen = before.reduce((sum, belief, h) => sum + belief * shown[h]!, 0);
        const [yes, no] = [updated(before, shown, true), updated(before, shown, false)];
        expectSame(
          yes.map((one, h) => seen * one + (1 - seen) * no[h]!),
          before,
        );
      }),
    );
  });

  it('tell from no look less than nothing, nor more than they lack', () => {
    fc.assert(
      fc.property(beliefs, row, (before, shown) => {
        const bits = expectedBits(before, [shown, shown.map((one) => 1 - one)]);
        expect(bits).toBeGreaterThanOrEqual(0);
        expect(bits).toBeLessThanOrEqual(entropyBits(before) + 1e-12);
      }),
    );
  });

  it('stay as they are where nothing allows what was found', () => {
    expect(updated([0.5, 0.5], [0, 0], true)).toEqual([0.5, 0.5]);
  });
});

function expectSame(found: readonly number[], wanted: readonly number[]): void {
  expect(Math.max(...found.map((one, h) => Math.abs(one - wanted[h]!)))).toBeLessThan(1e-10);
}
