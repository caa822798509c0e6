import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const on = (day: number) => Date.UTC(2026, 0, 1) + day * 86_400_000;
const count = (day: number, spare: string, n: number) => anEntry('count', { spare, count: n }, on(day));
const stow = (day: number, spare: string, n: number) => anEntry('stow', { spare, count: n }, on(day));
const use = (day: number, spare: string, n = 1) => anEntry('use', { spare, count: n }, on(day));
const now = (entries: readonly Entry[], boat = aBoat()) => conditionAt(boat, entries, on(100));
const stock = (spare: string, entries: readonly Entry[]) => now(entries).spares.get(spare)!;

describe('the count of a spare', () => {
  it('is not known until it is counted or stowed, whatever is taken', () => {
    expect(stock('pencils', [])).toEqual({ count: null, uses: [], history: [], exposure: 0, lookedAt: null });
    const taken = [
      anEntry('topup', { fluid: 'gear-oil', amount: 0.2, from: 'gear-oil-can' }, on(1)),
      use(2, 'gear-oil-can'),
    ];
    expect(stock('gear-oil-can', taken)).toMatchObject({ count: null, history: [] });
    expect(stock('gear-oil-can', [...taken, stow(3, 'gear-oil-can', 2)]).count).toBe(2);
  });

  it('follows what is counted, stowed and used', () => {
    const entries = [
      count(1, 'fuses', 5),
      use(2, 'fuses', 2),
      stow(3, 'fuses', 10),
      use(4, 'fuses'),
      count(5, 'fuses', 11),
    ];
    expect(stock('fuses', entries)).toMatchObject({
      count: 11,
      history: [5, 3, 13, 12, 11].map((n, i) => ({ at: on(i + 1), count: n })),
      lookedAt: on(5),
    });
    expect(stock('fuses', entries.slice(0, 4)).lookedAt).toBe(on(3));
  });

  it('falls by the litres topped up, by one an anode renewed, by the parts of a service', () => {
    const entries = [
      count(0, 'gear-oil-can', 2),
      count(0, 'pencils', 4),
      count(0, 'impellers', 2),
      anEntry('topup', { fluid: 'gear-oil', amount: 0.3, from: 'gear-oil-can' }, on(1)),
      anEntry('renew', { anode: 'pencil', from: 'pencils' }, on(1)),
      anEntry('service', { service: 'impeller-change', uses: [{ spare: 'impellers', count: 1 }] }, on(1)),
    ];
    const { spares, troubles } = now(entries);
    const counts = ['gear-oil-can', 'pencils', 'impellers'].map((id) => spares.get(id)!.count);
    expect([counts, troubles]).toEqual([[1.7, 3, 1], []]);
  });

  it('falls by what a change takes: the level after it, or the full mark', () => {
    const change = (fields: object) =>
      stock('gear-oil-can', [
        count(0, 'gear-oil-can', 3),
        anEntry('change', { fluid: 'gear-oil', from: 'gear-oil-can', ...fields }, on(1)),
      ]).count;
    expect([change({}), change({ level: 1.2 }), change({ level: 12 })]).toEqual([1.7, 1.8, 1.7]);
  });

  it('falls once by a service that takes the same spare for two things', () => {
    const uses = [1, 2].map((n) => ({ spare: 'impellers', count: n }));
    const entries = [
      count(0, 'impellers', 9),
      anEntry('service', { service: 'impeller-change', uses }, on(1)),
    ];
    expect(stock('impellers', entries).history.map((entry) => entry.count)).toEqual([9, 6]);
  });

  it('does not fall by work that names no spare', () => {
    const entries = [
      count(0, 'impellers', 2),
      anEntry('service', { service: 'impeller-change' }, on(1)),
      anEntry('renew', { anode: 'pencil' }, on(1)),
    ];
    expect(stock('impellers', entries).count).toBe(2);
  });

  it('below nothing is told, and nothing is left', () => {
    const used = use(2, 'fuses', 3);
    const { spares, troubles } = now([count(1, 'fuses', 1), used]);
    expect(spares.get('fuses')).toMatchObject({ count: 0, uses: [{ count: 3 }] });
    expect(troubles).toMatchObject([
      {
        kind: 'odd reading',
        entry: used.id,
        item: 'fuses',
        value: -2,
        unit: 'each',
        than: 0,
        why: 'count below zero',
      },
    ]);
  });

  it('of litres poured in tenths comes out even', () => {
    const pour = (i: number) =>
      anEntry('topup', { fluid: 'gear-oil', amount: 0.1, from: 'gear-oil-can' }, on(i));
    const { spares, troubles } = now([
      count(0, 'gear-oil-can', 1),
      ...Array.from({ length: 10 }, (_, i) => pour(i + 1)),
    ]);
    expect([spares.get('gear-oil-can')!.count, troubles]).toEqual([0, []]);
  });

  it('adds up: what was counted and stowed less what was taken', () => {
    const change = fc.record({ stow: fc.boolean(), n: fc.nat(20) });
    fc.assert(
      fc.property(fc.array(change, { maxLength: 40 }), (changes) => {
        const entries = changes.map(({ stow: add, n }, i) => (add ? stow : use)(i + 1, 'fuses', n));
        const sum = changes.reduce((total, { stow: add, n }) => total + (add ? n : -n), 1000);
        expect(stock('fuses', [count(0, 'fuses', 1000), ...entries]).count).toBe(sum);
      }),
    );
  });
});

describe('the unplanned uses of a spare', () => {
  const hours = (day: number, reading: number) => anEntry('hours', { engine: 'main', reading }, on(day));

  it('are its use entries, not what jobs, top-ups and services take', () => {
    const entries = [
      count(0, 'impellers', 5),
      anEntry('service', { service: 'impeller-change', uses: [{ spare: 'impellers', count: 1 }] }, on(1)),
      use(2, 'impellers'),
    ];
    expect(stock('impellers', entries).uses).toMatchObject([{ at: on(2), count: 1 }]);
  });

  it('were seen over the engine hours since its first entry, where it goes by the hour', () => {
    const entries = [hours(0, 100), hours(50, 200), count(10, 'impellers', 2), use(20, 'impellers')];
    expect(stock('impellers', entries)).toMatchObject({ exposure: 80, uses: [{ engineHours: 140 }] });
  });

  it('were seen over the days since its first entry, where it goes by the day or nothing is expected', () => {
    const entries = [hours(0, 100), hours(50, 200), use(10, 'fuses'), count(60, 'pencils', 3)];
    expect(stock('fuses', entries)).toMatchObject({ exposure: 90, uses: [{ engineHours: null }] });
    expect(stock('pencils', entries).exposure).toBe(40);
  });

  it('go by the engine named where the boat has two', () => {
    const boat = aBoat({
      engines: [...sandpiper.engines, { id: 'charger', name: 'Charger', usualHoursPerDay: 1 }],
      spares: [{ id: 'impellers', name: 'Impellers', expected: { perEngineHour: 0.002, engine: 'charger' } }],
      services: [],
    });
    const charger = (day: number, reading: number) =>
      anEntry('hours', { engine: 'charger', reading }, on(day));
    const entries = [hours(0, 0), hours(50, 100), charger(0, 5), charger(50, 30), count(0, 'impellers', 1)];
    expect(now(entries, boat).spares.get('impellers')!.exposure).toBe(25);
  });
});
