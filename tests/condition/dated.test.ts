import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const on = (day: number) => Date.UTC(2026, 0, 1) + day * 86_400_000;
const flares = (entries: readonly Entry[], boat = aBoat()) =>
  conditionAt(boat, entries, on(100)).dated.get('flares');

describe('a dated thing', () => {
  it('is good until the boat file says, or nobody knows', () => {
    expect(flares([])).toEqual({ expires: '2027-03-31', lookedAt: null });
    expect(flares([], aBoat({ dated: [{ id: 'flares', name: 'Flares' }] }))).toEqual({
      expires: null,
      lookedAt: null,
    });
  });

  it('is good until the last date entered', () => {
    const entries = ['2029-06-30', '2028-06-30'].map((expires, i) =>
      anEntry('dated', { item: 'flares', expires }, on(i + 1)),
    );
    expect(flares(entries)).toEqual({ expires: '2028-06-30', lookedAt: on(2) });
  });
});
