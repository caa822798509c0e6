import type { BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type Template, type TemplateAnswers } from './template-answers.ts';
import { belonging, type Drive, drivesOf } from './template-drives.ts';

type Fluids = NonNullable<BoatFile['fluids']>;

/** Burn at passage speed, L an hour an engine, and the hours kept in reserve: a diesel of some 30 kW, an outboard of some 7. Common practice, no source. */
const BURN = {
  diesel: { mean: 2.5, sd: 0.4, wide: 1.5, reserveHours: 12 },
  petrol: { mean: 2, sd: 0.4, wide: 1.5, reserveHours: 4 },
};
/** What a tank not known to leak may lose by the day. Common practice, no source. */
const FUEL_A_DAY = { mean: 0, sd: 0, wide: 2 };
/** A small tank is not all reserve. */
const MOST_RESERVE = 0.75;
const WATER_A_HEAD = { reserveL: 9, mean: 6, sd: 2, wide: 6 };
/** Sump and bottle where only the marks' distance matters: the figures on the stick are the boat's own. */
const GEAR_OIL = { low: 1, full: 1.2 };
const COOLANT = { low: 5.5, full: 6 };
const NONE = { mean: 0, sd: 0.002 };

export function templateFluids(answers: TemplateAnswers): Fluids {
  const { template = 'single' } = answers;
  const drives = drivesOf(answers);
  return [
    ...drives.flatMap((drive) => engineFluids(drive, template, answers)),
    ...(drives.length === 0 ? [] : [fuel(drives, template, answers)]),
    water(answers),
  ];
}

function engineFluids(drive: Drive, template: Template, { oil }: TemplateAnswers): Fluids {
  const shared = { engine: drive.id, topUpUnderWay: true };
  const engineOil: Fluids[number] = {
    ...belonging(drive, 'engine-oil', 'Engine oil'),
    ...shared,
    atAnchor: 0.6,
    ...oil,
    how: 'stopped-cold',
    loss: { perEngineHour: { mean: 0.01, sd: 0.01 }, perDay: NONE },
    stock: 'engine-oil-can',
    everyDays: 1,
    minutes: 5,
    note: `Engine stopped, hot oil burns. ${COMMON_PRACTICE}`,
  };
  if (template === 'outboard') return [engineOil];
  return [
    engineOil,
    {
      ...belonging(drive, 'gear-oil', 'Gear oil'),
      ...shared,
      atAnchor: 0.1,
      ...GEAR_OIL,
      how: 'stopped-cold',
      loss: { perEngineHour: NONE, perDay: NONE },
      stock: 'gear-oil-can',
      everyDays: 3,
      minutes: 10,
      note: `Engine stopped and the shaft still before a hand goes near. Look every day while it leaks. ${COMMON_PRACTICE}`,
    },
    {
      ...belonging(drive, 'coolant', 'Coolant'),
      ...shared,
      atAnchor: 0.6,
      ...COOLANT,
      how: 'stopped-cold',
      loss: { perEngineHour: { mean: 0.001, sd: 0.003 }, perDay: { mean: 0, sd: 0.003 } },
      stock: 'coolant-can',
      everyDays: 1,
      minutes: 5,
      note: `Never open the cap hot: it scalds. ${COMMON_PRACTICE}`,
    },
  ];
}

function fuel(drives: readonly Drive[], template: Template, { fuelTankL }: TemplateAnswers): Fluids[number] {
  const petrol = template === 'outboard';
  const { reserveHours, ...perEngineHour } = petrol ? BURN.petrol : BURN.diesel;
  const wanted = Math.max(0.2 * fuelTankL, reserveHours * perEngineHour.mean * drives.length);
  const [first] = drives;
  return {
    id: 'fuel',
    name: petrol ? 'Petrol' : 'Fuel',
    engine: drives.length === 1 && first ? first.id : drives.map(({ id }) => id),
    atAnchor: 0.4,
    low: 0,
    full: fuelTankL,
    reserve: Math.min(wanted, MOST_RESERVE * fuelTankL),
    loss: { perEngineHour, perDay: FUEL_A_DAY },
    fuel: true,
    everyDays: 2,
    minutes: 60,
    note: `${petrol ? 'Its vapour explodes: filled and kept on deck, nothing alight, engine stopped. ' : ''}Reserve: a fifth of the tank or ${reserveHours} hours' running, the larger, and at most three quarters. ${COMMON_PRACTICE}`,
  };
}

function water({ waterTankL, crew }: TemplateAnswers): Fluids[number] {
  const { reserveL, mean, sd, wide } = WATER_A_HEAD;
  return {
    id: 'water',
    name: 'Fresh water',
    low: 0,
    full: waterTankL,
    reserve: Math.min(reserveL * crew, MOST_RESERVE * waterTankL),
    loss: { perDay: { mean: mean * crew, sd: sd * crew, wide: wide * crew } },
    everyDays: 2,
    minutes: 90,
    note: `6 litres a head and day give or take 2, and 9 a head in reserve. ${COMMON_PRACTICE}`,
  };
}
