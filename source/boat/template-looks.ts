import type { BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type TemplateAnswers } from './template-answers.ts';

type Checks = NonNullable<BoatFile['checks']>;
type Check = Checks[number];

export function templateChecks({ houseBank = 'lead', tropics = false }: TemplateAnswers): Checks {
  const volts = { ask: 'number', unit: 'V', consequence: 'vital' } as const;
  const vital = { consequence: 'vital' } as const;
  const leaving = { when: 'leaving' } as const;
  const dawn =
    houseBank === 'lead'
      ? { atLeast: 12.2, note: `Lead: 12.2 V. ${COMMON_PRACTICE}` }
      : { atLeast: 13, note: `Lithium iron phosphate: 13.0 V. ${COMMON_PRACTICE}` };
  const checks: Check[] = [
    {
      id: 'start-battery',
      name: 'Start battery, rested',
      ...volts,
      atLeast: 12.5,
      everyDays: 7,
      minutes: 1,
      note: COMMON_PRACTICE,
    },
    { id: 'house-bank', name: 'House bank at dawn', ...volts, ...dawn, everyDays: 1, minutes: 1 },
    {
      id: 'charging',
      name: 'Charging',
      ...volts,
      atLeast: 13.8,
      atMost: 14.7,
      when: 'running',
      everyDays: 7,
      minutes: 1,
      note: COMMON_PRACTICE,
    },
    {
      id: 'bilge-pump',
      name: 'Bilge pump cycles a day',
      ask: 'number',
      unit: 'a day',
      ...vital,
      everyDays: 1,
      minutes: 1,
      note: `Set atMost to twice what is usual once you know it. ${COMMON_PRACTICE}`,
    },
    {
      id: 'steering',
      name: 'Steering, stop to stop',
      ...vital,
      everyDays: 7,
      minutes: 2,
      note: COMMON_PRACTICE,
    },
    {
      id: 'stern-gland',
      name: 'Stern gland, drops a minute turning',
      ask: 'number',
      unit: 'drops a minute',
      atMost: 6,
      when: 'running',
      everyDays: 7,
      minutes: 2,
      note: `None with the shaft stopped. Keep hands and clothes clear of a turning shaft. ${COMMON_PRACTICE}`,
    },
    { id: 'bilge-float', name: 'Bilge float works', everyDays: 30, minutes: 5, note: COMMON_PRACTICE },
    { id: 'seacocks-worked', name: 'Seacocks worked', everyDays: 30, minutes: 15, note: COMMON_PRACTICE },
    {
      id: 'raw-water',
      name: 'Raw water flows from the exhaust, no weep at the plugs',
      ...vital,
      ...leaving,
      minutes: 1,
    },
    { id: 'seacocks', name: 'Seacocks as wanted', ...vital, ...leaving, minutes: 2 },
    { id: 'decks', name: 'Decks cleared, hatches shut', ...leaving, minutes: 2 },
    { id: 'dinghy', name: 'Dinghy aboard or secured', ...leaving, minutes: 1 },
    { id: 'lights-and-radio', name: 'Lights and radio work', ...leaving, minutes: 1 },
    { id: 'anchor', name: 'Anchor ready to let go again', ...leaving, minutes: 1 },
    { id: 'float-plan', name: 'Float plan left ashore', ...leaving, minutes: 1 },
  ];
  if (!tropics) return checks;
  const name = 'Tropical outlook read today, nothing within 5 days';
  return [
    ...checks,
    { id: 'tropical-outlook', name, ...vital, ...leaving, minutes: 3, note: COMMON_PRACTICE },
  ];
}

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
