import type { BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type Template, type TemplateAnswers } from './template-answers.ts';
import { belonging, type Drive, drivesOf } from './template-drives.ts';

type Services = NonNullable<BoatFile['services']>;

type Row = readonly [
  id: string,
  name: string,
  every: { readonly everyHours?: number; readonly everyMonths?: number; readonly graceHours?: number },
  minutes: number,
  uses: readonly { readonly spare: string; readonly count: number }[],
];

/** Hours, months, grace hours, minutes, parts. */
const DIESEL: readonly Row[] = [
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

/** By analogy with the diesel, an outboard being run less and pulled apart sooner. */
const OUTBOARD: readonly Row[] = [
  ['oil-and-filter', 'Engine oil and filter', { everyHours: 100, everyMonths: 12, graceHours: 25 }, 45, []],
  ['gear-oil-change', 'Gear oil', { everyHours: 100, everyMonths: 12, graceHours: 25 }, 30, []],
  [
    'fuel-filter',
    'Fuel filter',
    { everyHours: 100, everyMonths: 12 },
    20,
    [{ spare: 'fuel-filters', count: 1 }],
  ],
  [
    'impeller',
    'Raw-water impeller',
    { everyHours: 300, everyMonths: 24, graceHours: 100 },
    60,
    [{ spare: 'impellers', count: 1 }],
  ],
  ['plugs', 'Spark plugs', { everyHours: 200, everyMonths: 24 }, 20, [{ spare: 'spark-plugs', count: 2 }]],
];

/** Where the rig is all that drives her. */
const RIG: Services = [
  {
    id: 'standing-rig',
    name: 'Standing rig, aloft',
    everyMonths: 12,
    minutes: 120,
    note: `Aloft on two halyards, with someone below who minds nothing else. ${COMMON_PRACTICE}`,
  },
  { id: 'running-rig', name: 'Running rig end for end', everyMonths: 12, minutes: 60, note: COMMON_PRACTICE },
  { id: 'winches', name: 'Winches', everyMonths: 12, minutes: 120, note: COMMON_PRACTICE },
];

/** Work after which the raw water must be seen to flow before she leaves. */
const OPENS_RAW_WATER = new Set(['impeller', 'hoses', 'exhaust-elbow', 'coolant-change']);

export function templateServices(answers: TemplateAnswers): Services {
  const { template = 'single' } = answers;
  if (template === 'sail') return RIG;
  const rows = template === 'outboard' ? OUTBOARD : DIESEL;
  return drivesOf(answers).flatMap((drive) => rows.map((row) => machineService(drive, row, template)));
}

function machineService(
  drive: Drive,
  [id, name, every, minutes, uses]: Row,
  template: Template,
): Services[number] {
  const printed = id === 'oil-and-filter' && template !== 'outboard';
  return {
    ...belonging(drive, id, name),
    engine: drive.id,
    ...every,
    minutes,
    uses: [...uses],
    unsettles: OPENS_RAW_WATER.has(id) ? [`raw-water${drive.mark}`] : [],
    note: `Engine stopped, key out. The maker's manual decides${
      printed ? '; printed intervals run from 100 to 250 h' : ''
    }. ${COMMON_PRACTICE}`,
  };
}
