import type { BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type TemplateAnswers } from './template-answers.ts';

type Fluids = NonNullable<BoatFile['fluids']>;
type Anodes = NonNullable<BoatFile['anodes']>;
type Services = NonNullable<BoatFile['services']>;

/** Usual burn of a diesel of some 30 kW at passage speed, L an hour. Common practice, no source. */
const FUEL_AN_HOUR = { mean: 2.5, sd: 0.4, wide: 1.5 };
/** What a tank not known to leak may lose by the day. Common practice, no source. */
const FUEL_A_DAY = { mean: 0, sd: 0, wide: 2 };
const WATER_A_HEAD = { reserveL: 9, mean: 6, sd: 2, wide: 6 };
/** Sump and bottle where only the marks' distance matters: the figures on the stick are the boat's own. */
const GEAR_OIL = { low: 1, full: 1.2 };
const COOLANT = { low: 5.5, full: 6 };

export function templateFluids({ oil, fuelTankL, waterTankL, crew }: TemplateAnswers): Fluids {
  const none = { mean: 0, sd: 0.002 };
  const { reserveL, mean, sd, wide } = WATER_A_HEAD;
  return [
    {
      id: 'engine-oil',
      name: 'Engine oil',
      engine: 'main',
      atAnchor: 0.6,
      ...oil,
      how: 'stopped-cold',
      loss: { perEngineHour: { mean: 0.01, sd: 0.01 }, perDay: none },
      topUpUnderWay: true,
      stock: 'engine-oil-can',
      everyDays: 1,
      minutes: 5,
      note: `Engine stopped, hot oil burns. ${COMMON_PRACTICE}`,
    },
    {
      id: 'gear-oil',
      name: 'Gear oil',
      engine: 'main',
      atAnchor: 0.1,
      ...GEAR_OIL,
      how: 'stopped-cold',
      loss: { perEngineHour: none, perDay: none },
      topUpUnderWay: true,
      stock: 'gear-oil-can',
      everyDays: 3,
      minutes: 10,
      note: `Engine stopped and the shaft still before a hand goes near. Look every day while it leaks. ${COMMON_PRACTICE}`,
    },
    {
      id: 'coolant',
      name: 'Coolant',
      engine: 'main',
      atAnchor: 0.6,
      ...COOLANT,
      how: 'stopped-cold',
      loss: { perEngineHour: { mean: 0.001, sd: 0.003 }, perDay: { mean: 0, sd: 0.003 } },
      topUpUnderWay: true,
      stock: 'coolant-can',
      everyDays: 1,
      minutes: 5,
      note: `Never open the cap hot: it scalds. ${COMMON_PRACTICE}`,
    },
    {
      id: 'fuel',
      name: 'Fuel',
      engine: 'main',
      atAnchor: 0.4,
      low: 0,
      full: fuelTankL,
      reserve: Math.max(0.2 * fuelTankL, 12 * FUEL_AN_HOUR.mean),
      loss: { perEngineHour: FUEL_AN_HOUR, perDay: FUEL_A_DAY },
      fuel: true,
      everyDays: 2,
      minutes: 60,
      note: `Reserve: a fifth of the tank or 12 hours' running, the larger. ${COMMON_PRACTICE}`,
    },
    {
      id: 'water',
      name: 'Fresh water',
      low: 0,
      full: waterTankL,
      reserve: reserveL * crew,
      loss: { perDay: { mean: mean * crew, sd: sd * crew, wide: wide * crew } },
      everyDays: 2,
      minutes: 90,
      note: `6 litres a head and day give or take 2, and 9 a head in reserve. ${COMMON_PRACTICE}`,
    },
  ];
}

export function templateAnodes(tropics: boolean): Anodes {
  const zinc = { metal: 'zinc', water: 'salt' } as const;
  const note = `Limit: a third of the metal; makers' books say a half as often. ${COMMON_PRACTICE}`;
  return [
    {
      id: 'pencil',
      name: 'Heat-exchanger pencil anode',
      ...zinc,
      usualLifeDays: tropics ? 90 : 120,
      spare: 'pencils',
      unsettles: ['raw-water'],
      everyDays: 30,
      minutes: 20,
      note: `Seacock shut before it comes out, open again before the engine starts. ${note}`,
    },
    { id: 'shaft-anode', name: 'Shaft anode', ...zinc, usualLifeDays: 300, everyDays: 90, minutes: 30, note },
    { id: 'hull-anode', name: 'Hull anode', ...zinc, usualLifeDays: 365, everyDays: 90, minutes: 30, note },
  ];
}

/** Hours, months, grace hours, minutes, parts. */
const SERVICES: readonly (readonly [
  id: string,
  name: string,
  every: { readonly everyHours?: number; readonly everyMonths?: number; readonly graceHours?: number },
  minutes: number,
  uses: readonly { readonly spare: string; readonly count: number }[],
])[] = [
  ['oil-and-filter', 'Engine oil and filter', { everyHours: 150, everyMonths: 12, graceHours: 25 }, 60, []],
  ['gear-oil-change', 'Gear oil', { everyHours: 300, everyMonths: 12, graceHours: 50 }, 45, []],
  [
    'primary-filter',
    'Primary fuel filter',
    { everyHours: 150, everyMonths: 12 },
    30,
    [{ spare: 'primary-filters', count: 1 }],
  ],
  [
    'secondary-filter',
    'Secondary fuel filter',
    { everyHours: 300, everyMonths: 12 },
    40,
    [{ spare: 'secondary-filters', count: 1 }],
  ],
  [
    'impeller',
    'Raw-water impeller',
    { everyHours: 400, everyMonths: 12, graceHours: 100 },
    40,
    [{ spare: 'impellers', count: 1 }],
  ],
  ['belt', 'Belt', { everyHours: 800, everyMonths: 36 }, 40, [{ spare: 'belts', count: 1 }]],
  ['valve-clearance', 'Valve clearance', { everyHours: 750 }, 120, []],
  ['coolant-change', 'Coolant', { everyMonths: 24 }, 60, []],
  ['hoses', 'Hoses', { everyMonths: 60 }, 240, []],
  ['exhaust-elbow', 'Exhaust elbow: look inside', { everyMonths: 24 }, 60, []],
];

/** Work after which the raw water must be seen to flow before she leaves. */
const OPENS_RAW_WATER = new Set(['impeller', 'hoses', 'exhaust-elbow', 'coolant-change']);

export function templateServices(): Services {
  return SERVICES.map(([id, name, every, minutes, uses]) => ({
    id,
    name,
    engine: 'main',
    ...every,
    minutes,
    uses: [...uses],
    unsettles: OPENS_RAW_WATER.has(id) ? ['raw-water'] : [],
    note: `Engine stopped, key out. The maker's manual decides${
      id === 'oil-and-filter' ? '; printed intervals run from 100 to 250 h' : ''
    }. ${COMMON_PRACTICE}`,
  }));
}
