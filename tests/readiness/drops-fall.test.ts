import { describe, expect, it } from 'vitest';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { certainFluid, judged } from '../helpers/beliefs.ts';

const at = Date.parse('2026-03-01T08:00:00Z');
/** 60 miles at exactly 5 knots, half a day, and two days in reserve: 2.5 days in all. */
const days = 2.5;
const [passage] = sandpiper.passages;
const oil = { ...sandpiper.fluids[0]!, vary: 0 };
const boat = (shared: boolean) =>
  aBoat({
    fluids: [oil, ...(shared ? [{ ...oil, id: 'engine-oil', name: 'Engine oil' }] : [])],
    passages: [{ ...passage!, speed: { mean: 5, sd: 0 }, motoring: { main: { mean: 0, sd: 0 } } }],
  });

/** Of 0.1 L a day told by the stick, and so much a day told by the drops; `aboardL` above the low mark of 1.1, nothing in the can. */
function chanceWith(aboardL: number, leastLossLPerDay: number, shared = false): number {
  const leaking = { ...certainFluid(1.1 + aboardL, 0, 0.1), leakClass: 'falls' as const, leastLossLPerDay };
  const fluids = { 'gear-oil': leaking, 'engine-oil': certainFluid(1.3, 0, 0) };
  const { items } = judged({ boat: boat(shared), at, fluids });
  return items.find(({ id }) => id === 'gear-oil')!.chance;
}

describe('where drops of oil were seen to fall, what is aboard must cover twice the loss', () => {
  it.each([false, true])(
    'by the stick, where that tells of the larger loss (on a shared stock: %s)',
    (shared) => {
      expect(chanceWith(2 * 0.1 * days + 0.001, 0.05, shared)).toBe(1);
      expect(chanceWith(2 * 0.1 * days - 0.001, 0.05, shared)).toBe(0);
    },
  );

  it.each([false, true])(
    'by the drops counted, where they tell of more (on a shared stock: %s)',
    (shared) => {
      expect(chanceWith(2 * 0.36 * days + 0.001, 0.36, shared)).toBe(1);
      expect(chanceWith(2 * 0.36 * days - 0.001, 0.36, shared)).toBe(0);
    },
  );

  it('and the loss once where none fall', () => {
    expect(chanceWith(0.1 * days + 0.001, 0)).toBe(1);
    expect(chanceWith(0.1 * days - 0.001, 0)).toBe(0);
  });
});
