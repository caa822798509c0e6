import type { BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type TemplateAnswers } from './template-answers.ts';

type Spares = NonNullable<BoatFile['spares']>;

const DAYS_A_YEAR = 365.25;

/** Unplanned uses in 1,000 engine hours or in a year, and how many should be aboard. */
const SPARES: readonly (readonly [
  id: string,
  name: string,
  expected: { readonly per1000Hours?: number; readonly perYear?: number } | null,
  wanted?: number,
])[] = [
  ['impellers', 'Raw-water impellers', { per1000Hours: 2 }, 2],
  ['belts', 'Belts', { per1000Hours: 1.2 }, 2],
  ['primary-filters', 'Primary fuel filters', { per1000Hours: 5 }, 4],
  ['secondary-filters', 'Secondary fuel filters', { per1000Hours: 2 }, 2],
  ['raw-water-seals', 'Raw-water pump seals', { per1000Hours: 0.4 }],
  ['hose-lengths', 'Hose lengths', { per1000Hours: 0.3 }],
  ['pencils', 'Pencil anodes', null, 4],
  ['bilge-pumps', 'Bilge pump', { perYear: 0.25 }],
  ['float-switches', 'Float switch', { perYear: 0.33 }],
  ['fuses', 'Fuses', { perYear: 4 }],
  ['hose-clips', 'Hose clips', { perYear: 6 }],
  ['gas-bottles', 'Gas bottles', { perYear: 14 }],
];

export function templateSpares({ oil }: TemplateAnswers): Spares {
  const litres = { unit: 'L', note: `Stock to top up and refill from. ${COMMON_PRACTICE}` } as const;
  return [
    { id: 'engine-oil-can', name: 'Engine oil in cans', wanted: oil.full + 2, ...litres },
    { id: 'gear-oil-can', name: 'Gear oil in cans', wanted: 1.2, ...litres },
    { id: 'coolant-can', name: 'Coolant in cans', ...litres },
    ...SPARES.map(([id, name, expected, wanted]) => ({
      id,
      name,
      ...(expected === null ? {} : { expected: ratesOf(expected) }),
      ...(wanted === undefined ? {} : { wanted }),
      note: `${expected === null ? '' : sayRate(expected)}${COMMON_PRACTICE}`,
    })),
  ];
}

function ratesOf({ per1000Hours, perYear = 0 }: { per1000Hours?: number; perYear?: number }) {
  if (per1000Hours !== undefined) return { perEngineHour: per1000Hours / 1000, engine: 'main' };
  return { perDay: Number((perYear / DAYS_A_YEAR).toPrecision(3)) };
}

function sayRate({ per1000Hours, perYear }: { per1000Hours?: number; perYear?: number }): string {
  if (per1000Hours !== undefined) return `Unplanned uses: ${per1000Hours} in 1,000 engine hours. `;
  return `Uses: ${perYear} a year. `;
}
