import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const DAY = 86_400_000;
const start = Date.UTC(2026, 0, 1);
const on = (day: number) => start + day * DAY;
const now = (entries: readonly Entry[], boat = aBoat()) => conditionAt(boat, entries, on(100));
const gearOil = (entries: readonly Entry[]) => now(entries).fluids.get('gear-oil')!;
const oddity = (entries: readonly Entry[]) => now(entries).troubles;

describe('a dip', () => {
  const dip = (fields: object) => gearOil([anEntry('dip', { fluid: 'gear-oil', ...fields }, on(1))]).events;

  it('gives litres, or a share of the way from the low mark to the full mark', () => {
    expect(dip({ level: 1.25 })).toMatchObject([
      { kind: 'reading', levelL: 1.25, off: 'on', after: null, at: on(1) },
    ]);
    expect(dip({ share: 0 })).toMatchObject([{ levelL: 1.1 }]);
    expect(dip({ share: 0.5 })).toMatchObject([{ levelL: expect.closeTo(1.2, 12) }]);
    expect(dip({ share: -0.5 })).toMatchObject([{ levelL: expect.closeTo(1, 12) }]);
  });

  it('off the stick stands at the end it is off', () => {
    expect(dip({ off: 'below' })).toMatchObject([{ levelL: 1.1, off: 'below' }]);
    expect(dip({ off: 'above' })).toMatchObject([{ levelL: 1.3, off: 'above' }]);
  });

  it('says how it was read: its own way, else the usual way, else not known', () => {
    expect(dip({ share: 1 })).toMatchObject([{ how: 'stopped-cold', rough: false }]);
    expect(dip({ share: 1, how: 'running-hot', rough: true })).toMatchObject([
      { how: 'running-hot', rough: true },
    ]);
    const water = now([anEntry('dip', { fluid: 'water', level: 200 }, on(1))]).fluids.get('water')!;
    expect(water.events).toMatchObject([{ how: null }]);
  });
});

describe('what else happens to a fluid', () => {
  it('is a top-up, and then the level it left, if one was given', () => {
    const bare = gearOil([anEntry('topup', { fluid: 'gear-oil', amount: 0.1 }, on(1))]);
    expect(bare.events).toMatchObject([{ kind: 'topup', amountL: 0.1 }]);
    expect(bare.lookedAt).toBeNull();
    const toFull = gearOil([anEntry('topup', { fluid: 'gear-oil', amount: 0.1, share: 1 }, on(1))]);
    expect(toFull.events).toMatchObject([
      { kind: 'topup', amountL: 0.1, at: on(1) },
      { kind: 'reading', levelL: 1.3, after: 'topup', at: on(1) },
    ]);
    expect(toFull.lookedAt).toBe(on(1));
  });

  it('is a drain and refill, taken to be full unless a level was given', () => {
    const change = (fields: object) =>
      gearOil([anEntry('change', { fluid: 'gear-oil', ...fields }, on(1))]).events;
    expect(change({})).toMatchObject([{ kind: 'change' }, { kind: 'reading', levelL: 1.3, after: 'change' }]);
    expect(change({ level: 1.2 })).toMatchObject([{ kind: 'change' }, { levelL: 1.2, after: 'change' }]);
  });

  it('is a job on it, or a leak seen', () => {
    expect(
      gearOil([
        anEntry('job', { item: 'gear-oil', text: 'New seal' }, on(1)),
        anEntry('leak', { item: 'gear-oil', class: 'drops' }, on(2)),
        anEntry('leak', { item: 'gear-oil', class: 'falls', dropsPerMinute: 3 }, on(3)),
      ]).events,
    ).toMatchObject([
      { kind: 'job', text: 'New seal' },
      { kind: 'leak', class: 'drops', dropsPerMinute: null },
      { kind: 'leak', class: 'falls', dropsPerMinute: 3 },
    ]);
  });

  it('comes oldest first with the id of its entry, two at one instant in the order they were written', () => {
    const [second, first] = [
      anEntry('dip', { fluid: 'gear-oil', share: 0.2, lc: 9 }, on(1)),
      anEntry('dip', { fluid: 'gear-oil', share: 0.8, lc: 8 }, on(1)),
    ];
    const earlier = anEntry('dip', { fluid: 'gear-oil', share: 1 }, on(0));
    expect(gearOil([second, first, earlier]).events.map(({ entry }) => entry)).toEqual([
      earlier.id,
      first.id,
      second.id,
    ]);
  });

  it('is nothing at all with no entries, and one reading with one', () => {
    expect(gearOil([])).toEqual({ events: [], lookedAt: null, runHours: 0 });
    expect(gearOil([anEntry('dip', { fluid: 'gear-oil', share: 0.5 }, on(1))]).events).toHaveLength(1);
  });
});

describe('a level no tank can show', () => {
  it('is told and left out, the pouring itself kept', () => {
    const topup = anEntry('topup', { fluid: 'gear-oil', amount: 0.1, level: 13 }, on(1));
    expect(gearOil([topup]).events).toMatchObject([{ kind: 'topup' }]);
    expect(oddity([topup])).toEqual([
      {
        kind: 'odd reading',
        entry: topup.id,
        at: topup.at,
        item: 'gear-oil',
        value: 13,
        unit: 'L',
        than: 1.5,
        why: 'outside tank',
      },
    ]);
  });

  it('is below nothing, a quarter over a full tank, or a stick over the full mark of a sump', () => {
    const odd = (fluid: string, level: number) => oddity([anEntry('dip', { fluid, level }, on(1))]).length;
    expect([odd('water', -1), odd('water', 0), odd('water', 375), odd('water', 376)]).toEqual([1, 0, 0, 1]);
    expect([odd('gear-oil', -0.1), odd('gear-oil', 0), odd('gear-oil', 1.45), odd('gear-oil', 1.51)]).toEqual(
      [1, 0, 0, 1],
    );
    expect(oddity([anEntry('dip', { fluid: 'water', level: -1 }, on(1))])).toMatchObject([
      { value: -1, than: 0 },
    ]);
  });
});

describe('running hours of a fluid', () => {
  const hours = (day: number, reading: number, engine = 'main') =>
    anEntry('hours', { engine, reading }, on(day));
  const voyage = [
    hours(0, 100),
    hours(10, 110),
    anEntry('left', {}, on(10)),
    hours(11, 130),
    anEntry('arrived', {}, on(11)),
    hours(21, 140),
  ];

  it('count whole under way and at its own part while lying', () => {
    const { fluids } = now(voyage);
    // 20 h lying, 20 h under way; gear oil counts a tenth of an hour lying, fuel 0.4.
    expect(fluids.get('gear-oil')!.runHours).toBeCloseTo(20 + 0.1 * 20, 9);
    expect(fluids.get('fuel')!.runHours).toBeCloseTo(20 + 0.4 * 20, 9);
    expect(fluids.get('water')!.runHours).toBe(0);
  });

  it('stand beside each event as they were then', () => {
    const dip = (day: number) => anEntry('dip', { fluid: 'gear-oil', share: 1 }, on(day));
    const events = now([...voyage, dip(5), dip(10.5), dip(11), dip(21)]).fluids.get('gear-oil')!.events;
    const expected = [0.5, 1 + 10, 1 + 20, 2 + 20];
    events.forEach(({ runHours }, i) => {
      expect(runHours).toBeCloseTo(expected[i]!, 9);
    });
  });

  it('add up over the engines that share a tank, each once', () => {
    const boat = aBoat({
      engines: [...sandpiper.engines, { id: 'charger', name: 'Charger', usualHoursPerDay: 1 }],
      fluids: [{ ...sandpiper.fluids[1]!, engine: ['main', 'charger', 'charger'] }],
    });
    const log = [...voyage, hours(0, 50, 'charger'), hours(20, 70, 'charger')];
    // The charger ran an hour a day throughout: 19 h lying and 1 h under way.
    expect(now(log, boat).fluids.get('fuel')!.runHours).toBeCloseTo(20 + 0.4 * 20 + 1 + 0.4 * 19, 9);
  });

  it('never fall, and never exceed the hours run, whatever the comings and goings', () => {
    const day = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(
      fc.property(fc.array(day, { maxLength: 12 }), fc.array(day, { maxLength: 20 }), (moves, dips) => {
        const entries = [
          ...[0, 10, 20, 30, 40].map((d) => hours(d, 100 + 3 * d)),
          ...moves.map((d, i) => anEntry(i % 2 === 0 ? 'left' : 'arrived', {}, on(d))),
          ...dips.map((d) => anEntry('dip', { fluid: 'gear-oil', share: 0.5 }, on(d))),
        ];
        const { events, runHours } = gearOil(entries);
        let before = 0;
        for (const event of events) {
          expect(event.runHours).toBeGreaterThanOrEqual(before - 1e-9);
          before = event.runHours;
        }
        expect(runHours).toBeGreaterThanOrEqual(12 - 1e-9);
        expect(runHours).toBeLessThanOrEqual(120 + 1e-9);
      }),
    );
  });
});
