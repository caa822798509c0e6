import type { BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type Template, type TemplateAnswers } from './template-answers.ts';
import { type Drive, drivesOf } from './template-drives.ts';

type Spares = NonNullable<BoatFile['spares']>;

const DAYS_A_YEAR = 365.25;

/** Unplanned uses in 1,000 engine hours or in a year, and how many should be aboard. */
type Row = readonly [
  id: string,
  name: string,
  expected: { readonly per1000Hours?: number; readonly perYear?: number } | null,
  wanted?: number,
];

const DIESEL: readonly Row[] = [
  ['impellers', 'Raw-water impellers', { per1000Hours: 2 }, 2],
  ['belts', 'Belts', { per1000Hours: 1.2 }, 2],
  ['primary-filters', 'Primary fuel filters', { per1000Hours: 5 }, 4],
  ['secondary-filters', 'Secondary fuel filters', { per1000Hours: 2 }, 2],
  ['raw-water-seals', 'Raw-water pump seals', { per1000Hours: 0.4 }],
  ['hose-lengths', 'Hose lengths', { per1000Hours: 0.3 }],
  ['pencils', 'Pencil anodes', null, 4],
];

/** By analogy with the diesel. */
const OUTBOARD: readonly Row[] = [
  ['impellers', 'Raw-water impellers', { per1000Hours: 2 }, 1],
  ['fuel-filters', 'Fuel filters', { per1000Hours: 5 }, 2],
  ['spark-plugs', 'Spark plugs', { per1000Hours: 5 }, 4],
  ['kill-cords', 'Kill cords', { perYear: 0.25 }, 1],
];

/** By analogy: what the rig eats. */
const RIG: readonly Row[] = [
  ['sail-tape', 'Rolls of sail tape', { perYear: 1 }, 2],
  ['shackles', 'Shackles', { perYear: 3 }, 6],
];

const ABOARD_ALL: readonly Row[] = [
  ['bilge-pumps', 'Bilge pump', { perYear: 0.25 }],
  ['float-switches', 'Float switch', { perYear: 0.33 }],
  ['fuses', 'Fuses', { perYear: 4 }],
  ['hose-clips', 'Hose clips', { perYear: 6 }],
  ['gas-bottles', 'Gas bottles', { perYear: 14 }],
];

const OWN: { readonly [T in Template]: readonly Row[] } = {
  single: DIESEL,
  twin: DIESEL,
  outboard: OUTBOARD,
  sail: RIG,
};

export function templateSpares(answers: TemplateAnswers): Spares {
  const { template = 'single' } = answers;
  const drives = drivesOf(answers);
  return [
    ...cans(answers, drives.length),
    ...OWN[template].map((row) => spareOf(row, drives)),
    ...ABOARD_ALL.map((row) => spareOf(row, [])),
  ];
}

function cans({ template = 'single', oil }: TemplateAnswers, engines: number): Spares {
  const litres = { unit: 'L', note: `Stock to top up and refill from. ${COMMON_PRACTICE}` } as const;
  const outboard = template === 'outboard';
  if (engines === 0) return [];
  return [
    {
      id: 'engine-oil-can',
      name: 'Engine oil in cans',
      wanted: oil.full * engines + (outboard ? 1 : 2),
      ...litres,
    },
    { id: 'gear-oil-can', name: 'Gear oil in cans', wanted: outboard ? 0.5 : 1.2 * engines, ...litres },
    ...(outboard ? [] : [{ id: 'coolant-can', name: 'Coolant in cans', ...litres }]),
  ];
}

/** Of two engines a spare serves both: twice the uses by the hours of the first, and twice as many aboard. */
function spareOf([id, name, expected, wanted]: Row, drives: readonly Drive[]): Spares[number] {
  const engines = Math.max(1, drives.length);
  return {
    id,
    name,
    ...(expected === null ? {} : { expected: ratesOf(expected, drives) }),
    ...(wanted === undefined ? {} : { wanted: wanted * engines }),
    note: `${expected === null ? '' : sayRate(expected, drives)}${COMMON_PRACTICE}`,
  };
}

function ratesOf({ per1000Hours, perYear = 0 }: NonNullable<Row[2]>, drives: readonly Drive[]) {
  const [first] = drives;
  if (per1000Hours !== undefined && first)
    return { perEngineHour: (per1000Hours * drives.length) / 1000, engine: first.id };
  return { perDay: Number((perYear / DAYS_A_YEAR).toPrecision(3)) };
}

function sayRate({ per1000Hours, perYear }: NonNullable<Row[2]>, drives: readonly Drive[]): string {
  const [first, second] = drives;
  if (per1000Hours === undefined) return `Uses: ${perYear} a year. `;
  if (!first || !second) return `Unplanned uses: ${per1000Hours} in 1,000 engine hours. `;
  const both = `reckoned for both by the hours of the ${first.name.toLowerCase()}, as if they ran together`;
  return `Unplanned uses: ${per1000Hours} in 1,000 hours of each engine, ${both}. `;
}
