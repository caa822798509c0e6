import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const on = (day: number) => Date.UTC(2026, 0, 1) + day * 86_400_000;
const look = (day: number, fields: object) => anEntry('anode', { anode: 'pencil', ...fields }, on(day));
const renew = (day: number) => anEntry('renew', { anode: 'pencil' }, on(day));
const now = (entries: readonly Entry[], boat = aBoat()) => conditionAt(boat, entries, on(300));
const pencil = (entries: readonly Entry[]) => now(entries).anodes.get('pencil')!;

describe('an anode', () => {
  it('never seen has no fitting', () => {
    expect(pencil([])).toEqual({ fittings: [], lookedAt: null });
  });

  it('looked at before any renewal was fitted nobody knows when', () => {
    expect(pencil([look(3, { share: 0.8 })])).toEqual({
      fittings: [{ fittedAt: null, looks: [{ at: on(3), share: 0.8, sd: 0.08, flakes: false }] }],
      lookedAt: on(3),
    });
  });

  it('is a new one in the same place after each renewal, which is a look in itself', () => {
    const { fittings, lookedAt } = pencil([
      look(3, { share: 0.5 }),
      renew(4),
      look(30, { share: 0.7 }),
      renew(50),
    ]);
    expect(fittings.map(({ fittedAt, looks }) => [fittedAt, looks.length])).toEqual([
      [null, 1],
      [on(4), 1],
      [on(50), 0],
    ]);
    expect(lookedAt).toBe(on(50));
  });
});

describe('the share of an anode', () => {
  const measured = (fields: object) => pencil([look(3, fields)]).fittings[0]?.looks[0];

  it('by weight is the mass left, and surer than by eye', () => {
    expect(measured({ massKg: 0.02 })).toMatchObject({ share: expect.closeTo(0.4, 12), sd: 0.02 });
  });

  it('by size goes with the square of the diameter, and with the length', () => {
    expect(measured({ diameterMm: 8 })).toMatchObject({ share: 0.25, sd: 0.04 });
    expect(measured({ lengthMm: 25 })).toMatchObject({ share: 0.5, sd: 0.04 });
    expect(measured({ diameterMm: 8, lengthMm: 25 })).toMatchObject({ share: 0.125, sd: 0.04 });
  });

  it('comes with whether it flakes', () => {
    expect(measured({ share: 0.9, flakes: true })).toMatchObject({ share: 0.9, flakes: true });
  });

  it('cannot be told from a weight or size whose new figure the boat file lacks: that is said, naming the field', () => {
    const { massKg: _, diameterMm: __, lengthMm: ___, ...bare } = sandpiper.anodes[0]!;
    const boat = aBoat({ anodes: [bare] });
    for (const field of ['massKg', 'diameterMm', 'lengthMm']) {
      const entry = look(3, { [field]: 0.02 });
      const { anodes, troubles } = now([entry], boat);
      expect(anodes.get('pencil')).toEqual({ fittings: [], lookedAt: null });
      expect(troubles).toEqual([
        { kind: 'new size unknown', entry: entry.id, at: entry.at, item: 'pencil', field },
      ]);
    }
  });

  it('far over a new one is told and left out', () => {
    const { anodes, troubles } = now([look(3, { massKg: 0.5 })]);
    expect(anodes.get('pencil')!.fittings).toEqual([]);
    expect(troubles).toMatchObject([{ kind: 'odd reading', value: 10, than: 1, why: 'more than new' }]);
  });
});
