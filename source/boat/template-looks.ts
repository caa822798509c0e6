import type { BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type TemplateAnswers } from './template-answers.ts';
import { belonging, type Drive, drivesOf } from './template-drives.ts';

type Checks = NonNullable<BoatFile['checks']>;
type Check = Checks[number];

const VOLTS = { ask: 'number', unit: 'V', consequence: 'vital' } as const;
const VITAL = { consequence: 'vital' } as const;
const LEAVING = { when: 'leaving' } as const;

/** In walking order: at the batteries, below, by the shaft; then what is looked at before leaving. */
export function templateChecks(answers: TemplateAnswers): Checks {
  const { template = 'single', tropics = false } = answers;
  const drives = drivesOf(answers);
  const diesels = template === 'outboard' ? [] : drives;
  return [
    ...diesels.map(startBattery),
    houseBank(answers),
    ...diesels.map(charging),
    ...lyingChecks,
    ...(template === 'sail' ? rigChecks : []),
    ...diesels.map(sternGland),
    ...oftenWorked,
    ...(template === 'outboard' ? outboardChecks : diesels.map(rawWater)),
    ...leavingChecks,
    ...(tropics ? [outlook] : []),
  ];
}

function startBattery(drive: Drive): Check {
  return {
    ...belonging(drive, 'start-battery', 'Start battery, rested'),
    ...VOLTS,
    atLeast: 12.5,
    everyDays: 7,
    minutes: 1,
    note: COMMON_PRACTICE,
  };
}

function houseBank({ houseBank = 'lead' }: TemplateAnswers): Check {
  const dawn =
    houseBank === 'lead'
      ? { atLeast: 12.2, note: `Lead: 12.2 V. ${COMMON_PRACTICE}` }
      : { atLeast: 13, note: `Lithium iron phosphate: 13.0 V. ${COMMON_PRACTICE}` };
  return { id: 'house-bank', name: 'House bank at dawn', ...VOLTS, ...dawn, everyDays: 1, minutes: 1 };
}

function charging(drive: Drive): Check {
  return {
    ...belonging(drive, 'charging', 'Charging'),
    ...VOLTS,
    atLeast: 13.8,
    atMost: 14.7,
    when: 'running',
    everyDays: 7,
    minutes: 1,
    note: COMMON_PRACTICE,
  };
}

function sternGland(drive: Drive): Check {
  return {
    ...belonging(drive, 'stern-gland', 'Stern gland, drops a minute turning'),
    ask: 'number',
    unit: 'drops a minute',
    atMost: 6,
    when: 'running',
    everyDays: 7,
    minutes: 2,
    note: `None with the shaft stopped. Keep hands and clothes clear of a turning shaft. ${COMMON_PRACTICE}`,
  };
}

function rawWater(drive: Drive): Check {
  return {
    ...belonging(drive, 'raw-water', 'Raw water flows from the exhaust, no weep at the plugs'),
    ...VITAL,
    ...LEAVING,
    minutes: 1,
  };
}

const lyingChecks: readonly Check[] = [
  {
    id: 'bilge-pump',
    name: 'Bilge pump cycles a day',
    ask: 'number',
    unit: 'a day',
    ...VITAL,
    everyDays: 1,
    minutes: 1,
    note: `Set atMost to twice what is usual once you know it. ${COMMON_PRACTICE}`,
  },
  {
    id: 'steering',
    name: 'Steering, stop to stop',
    ...VITAL,
    everyDays: 7,
    minutes: 2,
    note: COMMON_PRACTICE,
  },
];

const oftenWorked: readonly Check[] = [
  { id: 'bilge-float', name: 'Bilge float works', everyDays: 30, minutes: 5, note: COMMON_PRACTICE },
  { id: 'seacocks-worked', name: 'Seacocks worked', everyDays: 30, minutes: 15, note: COMMON_PRACTICE },
];

/** Where the rig is all that drives her. */
const rigChecks: readonly Check[] = [
  {
    id: 'rig',
    name: 'Rig from the deck: wires, pins, terminals',
    ...VITAL,
    everyDays: 7,
    minutes: 10,
    note: COMMON_PRACTICE,
  },
  {
    id: 'sails',
    name: 'Sails, sheets and halyards',
    ...VITAL,
    everyDays: 7,
    minutes: 10,
    note: COMMON_PRACTICE,
  },
];

const outboardChecks: readonly Check[] = [
  { id: 'raw-water', name: 'Cooling water at the tell-tale', ...VITAL, ...LEAVING, minutes: 1 },
  { id: 'kill-cord', name: 'Kill cord stops the engine', ...VITAL, ...LEAVING, minutes: 1 },
  {
    id: 'petrol-smell',
    name: 'No smell of petrol, locker aired, vents open',
    ...VITAL,
    ...LEAVING,
    minutes: 2,
    note: 'Petrol vapour is heavier than air, gathers low down and explodes: nothing alight, no switch touched, until it is aired.',
  },
];

const leavingChecks: readonly Check[] = [
  { id: 'seacocks', name: 'Seacocks as wanted', ...VITAL, ...LEAVING, minutes: 2 },
  { id: 'decks', name: 'Decks cleared, hatches shut', ...LEAVING, minutes: 2 },
  { id: 'dinghy', name: 'Dinghy aboard or secured', ...LEAVING, minutes: 1 },
  { id: 'lights-and-radio', name: 'Lights and radio work', ...LEAVING, minutes: 1 },
  { id: 'anchor', name: 'Anchor ready to let go again', ...LEAVING, minutes: 1 },
  { id: 'float-plan', name: 'Float plan left ashore', ...LEAVING, minutes: 1 },
];

const outlook: Check = {
  id: 'tropical-outlook',
  name: 'Tropical outlook read today, nothing within 5 days',
  ...VITAL,
  ...LEAVING,
  minutes: 3,
  note: COMMON_PRACTICE,
};

/** Things with a date on them, the dates to be entered as they are read. */
export function templateDated(): NonNullable<BoatFile['dated']> {
  const note = 'Copy the date that is printed on it. Local rules come first.';
  return [
    { id: 'flares', name: 'Flares', note },
    {
      id: 'extinguishers',
      name: 'Fire extinguishers',
      note: `A disposable one is good until 31 December of its 12th year (US Coast Guard ACN 002/22, for US waters). ${note}`,
    },
    { id: 'life-raft', name: 'Life-raft service', note },
    { id: 'beacon-battery', name: 'Beacon battery', note },
    { id: 'medicines', name: 'Medicines', note },
  ];
}
