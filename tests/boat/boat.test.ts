import { describe, expect, test } from 'vitest';
import {
  type Boat,
  boatSchema,
  consequenceOf,
  engineOf,
  enginesOf,
  itemsOf,
} from '../../source/boat/boat.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';

describe('a boat file', () => {
  test('needs only its format and a name; everything else has a default', () => {
    const boat = boatSchema.parse({ format: 1, name: 'Sandpiper' });
    expect(boat.limits).toEqual({ boat: 95, go: 85, overHours: 3, smallCraft: 'watch' });
    expect(boat.crew).toBe(2);
    expect(itemsOf(boat as Boat)).toEqual([]);
    expect([boat.engines, boat.anchorages, boat.passages]).toEqual([[], [], []]);
  });

  test('takes the constants of the contract where the file is silent', () => {
    const boat = aBoat({
      fluids: [{ id: 'water', name: 'Water', low: 0, full: 300 }],
      anodes: [{ id: 'shaft', name: 'Shaft', metal: 'zinc', water: 'salt', usualLifeDays: 300 }],
    });
    expect(boat.fluids[0]).toMatchObject({ atAnchor: 1, vary: 0.3, loss: { leakChance: 0.1 }, fuel: false });
    expect(boat.anodes[0]!.limit).toBe(1 / 3);
    expect(boat.spares[0]).toMatchObject({ unit: 'each', expected: { weight: 1 } });
    expect(boat.checks[1]).toMatchObject({ ask: 'yes-no', when: 'leaving' });
    expect(boat.passages[0]).toMatchObject({ motorBelow: 8, waitHours: 0, shelter: false });
  });

  test('leaves the weather limits unset rather than guess them', () => {
    const { limits } = aBoat({ limits: {} });
    expect(limits.wind).toBeUndefined();
    expect(limits.seas).toBeUndefined();
    expect(aBoat({ limits: { wind: false, seas: 2 } }).limits.wind).toBe(false);
  });

  test('keeps alone to what differs: no default of its own', () => {
    expect(aBoat({ limits: { wind: 22, alone: { wind: 17 } } }).limits.alone).toEqual({ wind: 17 });
  });
});

test('items come in walking order: fluids, anodes, spares, services, checks, dated things, each as the file has them', () => {
  expect(itemsOf(aBoat()).map(({ kind, id }) => `${kind} ${id}`)).toEqual([
    'fluid gear-oil',
    'fluid fuel',
    'fluid water',
    'anode pencil',
    'spare impellers',
    'spare gear-oil-can',
    'spare pencils',
    'spare fuses',
    'service impeller-change',
    'check house-bank',
    'check raw-water',
    'dated flares',
  ]);
});

test('fluids and checks that work unsettles are vital, the rest important, unless the file says otherwise', () => {
  const boat = aBoat({ dated: [{ id: 'flares', name: 'Flares', consequence: 'minor' }] });
  const found = Object.fromEntries(itemsOf(boat).map((item) => [item.id, consequenceOf(boat, item)]));
  expect(found).toMatchObject({
    'gear-oil': 'vital',
    water: 'vital',
    pencil: 'important',
    impellers: 'important',
    'impeller-change': 'important',
    'house-bank': 'important',
    'raw-water': 'vital',
    flares: 'minor',
  });
});

test('the engine may be left out only where there is one', () => {
  expect(engineOf(aBoat(), undefined)).toBe('main');
  expect(engineOf(aBoat(), 'port')).toBe('port');
  expect(engineOf(aBoat({ engines: [] }), undefined)).toBeNull();
  const two = [...sandpiper.engines, { id: 'generator', name: 'Generator', usualHoursPerDay: 1 }];
  expect(engineOf(aBoat({ engines: two }), undefined)).toBeNull();
});

test('a tank may feed no engine, one, or several', () => {
  const tanks = aBoat({
    fluids: [
      { id: 'water', name: 'Water', low: 0, full: 300 },
      { id: 'oil', name: 'Oil', low: 1, full: 2, engine: 'main' },
      { id: 'fuel', name: 'Fuel', low: 0, full: 200, engine: ['main', 'generator'] },
    ],
  }).fluids;
  expect(tanks.map(enginesOf)).toEqual([[], ['main'], ['main', 'generator']]);
});
