import type { z } from 'zod';
import { type Boat, boatSchema } from '../../source/boat/boat.ts';

type BoatFile = z.input<typeof boatSchema>;

/**
 * A small, complete, invented boat with one of each kind of thing, written as boat.json is and read through its schema, so defaults
 * are filled in. `overrides` replace whole top-level fields: `aBoat({ crew: 1, fluids: [] })`.
 */
export function aBoat(overrides: Partial<BoatFile> = {}): Boat {
  return boatSchema.parse({ ...sandpiper, ...overrides });
}

/** The boat file behind `aBoat()`, to build changed lists from: `{ ...sandpiper.fluids[0], atAnchor: 1 }`. */
export const sandpiper = {
  format: 1,
  name: 'Sandpiper',
  crew: 2,
  engines: [{ id: 'main', name: 'Main engine', usualHoursPerDay: 0.7 }],
  fluids: [
    {
      id: 'gear-oil',
      name: 'Gear oil',
      engine: 'main',
      atAnchor: 0.1,
      low: 1.1,
      full: 1.3,
      readingError: 0.01,
      how: 'stopped-cold',
      loss: { perEngineHour: { mean: 0, sd: 0.002 }, perDay: { mean: 0, sd: 0.002 } },
      topUpUnderWay: true,
      stock: 'gear-oil-can',
      everyDays: 3,
      minutes: 10,
    },
    {
      id: 'fuel',
      name: 'Fuel',
      engine: 'main',
      atAnchor: 0.4,
      low: 0,
      full: 200,
      reserve: 40,
      loss: { perEngineHour: { mean: 2.5, sd: 0.4 }, perDay: { mean: 0, sd: 0 } },
      fuel: true,
      everyDays: 2,
      minutes: 60,
    },
    {
      id: 'water',
      name: 'Fresh water',
      low: 0,
      full: 300,
      reserve: 18,
      loss: { perDay: { mean: 12, sd: 4 } },
      everyDays: 2,
      minutes: 90,
    },
  ],
  anodes: [
    {
      id: 'pencil',
      name: 'Heat-exchanger pencil anode',
      metal: 'zinc',
      water: 'salt',
      massKg: 0.05,
      diameterMm: 16,
      lengthMm: 50,
      usualLifeDays: 120,
      spare: 'pencils',
      unsettles: ['raw-water'],
      everyDays: 30,
      minutes: 20,
    },
  ],
  spares: [
    {
      id: 'impellers',
      name: 'Raw-water impellers',
      expected: { perEngineHour: 0.002 },
      wanted: 2,
      locker: 'port settee',
      price: 40,
    },
    { id: 'gear-oil-can', name: 'Gear oil in cans', unit: 'L', wanted: 1.3 },
    { id: 'pencils', name: 'Pencil anodes', wanted: 4 },
    { id: 'fuses', name: 'Fuses', expected: { perDay: 0.01 }, wanted: 5 },
  ],
  services: [
    {
      id: 'impeller-change',
      name: 'Raw-water impeller',
      everyHours: 400,
      everyMonths: 12,
      graceHours: 100,
      uses: [{ spare: 'impellers', count: 1 }],
      unsettles: ['raw-water'],
      minutes: 30,
    },
  ],
  checks: [
    { id: 'house-bank', name: 'House bank at dawn', ask: 'number', unit: 'V', atLeast: 12.2, everyDays: 1 },
    { id: 'raw-water', name: 'Raw water flows, no weep at the plugs', when: 'leaving', minutes: 1 },
  ],
  dated: [{ id: 'flares', name: 'Flares', expires: '2027-03-31' }],
  limits: { wind: 22, gust: 30, seas: 2, headwind: 15 },
  anchorages: [
    {
      id: 'heron-bight',
      name: 'Heron Bight',
      at: [41.2, -30.4],
      sectors: [{ from: 300, to: 60, wind: 15, seas: 0.5 }],
      wind: 30,
      seas: 1.2,
    },
  ],
  passages: [
    {
      id: 'to-otter-cay',
      name: 'Heron Bight to Otter Cay',
      legs: [
        { from: [41.2, -30.4], to: [41.4, -30], nm: 22 },
        { from: [41.4, -30], to: [41.9, -29.5], nm: 38 },
      ],
      speed: { mean: 5.2, sd: 0.7 },
      motoring: { main: { mean: 0.35, sd: 0.15 } },
      reserveDays: 2,
    },
  ],
  passage: 'to-otter-cay',
  anchorage: 'heron-bight',
} satisfies BoatFile;
