import { describe, expect, it } from 'vitest';
import type { FluidBelief } from '../../source/inference/belief.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { certainFluid, judged } from '../helpers/beliefs.ts';

const AT = Date.parse('2026-02-03T08:00:00Z');
const boat = aBoat();
const fluid = boat.fluids.find(({ stock }) => stock !== undefined)!;
const { stock, low, reserve = low } = fluid;

function answerOf(belief: FluidBelief, entries = [anEntry('count', { spare: stock!, count: 2 }, AT - 1000)]) {
  const { items } = judged({ boat, at: AT, entries, fluids: { [fluid.id]: belief } });
  const item = items.find(({ id }) => id === fluid.id)!;
  if (item.kind !== 'fluid') throw new Error('a fluid');
  return item;
}

describe('how long a fluid lasts', () => {
  it('is what is in it over what it loses on a usual day, running and lying; and so with its stock', () => {
    const belief = { ...certainFluid(reserve + 0.3, 0.05, 0.1), usualHours: 1 };
    const { lasts } = answerOf(belief);
    expect(lasts!.days).toBeCloseTo(0.3 / 0.15, 6);
    expect(lasts!.withStores).toBeCloseTo(2.3 / 0.15, 6);
  });

  it('is nothing below what is to be kept, and beyond what is foretold where nothing is lost', () => {
    expect(answerOf(certainFluid(reserve - 0.1, 0, 0.1)).lasts!.days).toBe(0);
    expect(answerOf(certainFluid(reserve + 0.1, 0, 0)).lasts).toEqual({
      days: 'beyond',
      withStores: 'beyond',
    });
  });

  it('says nothing of a stock nobody counted', () => {
    expect(answerOf(certainFluid(reserve + 0.1, 0, 0.1), []).lasts!.withStores).toBeNull();
  });

  it('no level at the end of the stretch is below nothing', () => {
    const { endL, endsAt } = answerOf(certainFluid(reserve + 0.1, 0, 50));
    expect(endL).toMatchObject({ mean: 0, p10: 0, p90: 0 });
    expect(endsAt).toBeGreaterThan(AT);
  });
});
