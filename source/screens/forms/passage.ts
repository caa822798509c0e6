import { SQUALLS } from '../../forecast/squalls.ts';
import { exampleOf } from '../../words/amounts.ts';
import { hundred } from '../../words/say.ts';
import { nameOf, type Sight } from '../sight.ts';
import { type FormKind, WHEN } from './form.ts';

const ofTheBoat: FormKind['offered'] = (item) => item === null;

/** What it is doing now, as it is seen. */
export const weatherNow: FormKind = {
  title: 'WEATHER NOW',
  offered: ofTheBoat,
  rows: () => [
    { field: 'wind', label: 'wind', example: exampleOf('kn'), usual: 'not noted' },
    { field: 'gust', label: 'gusts', example: exampleOf('kn'), usual: 'not noted' },
    { field: 'dir', label: 'from', example: 'NE, 045', usual: 'not noted' },
    { field: 'seas', label: 'seas', example: exampleOf('m'), usual: 'not noted' },
    { field: 'pressure', label: 'pressure', example: '1013, 29.92 inHg', usual: 'not noted' },
    {
      field: 'squalls',
      label: 'squalls',
      example: SQUALLS.join(', '),
      usual: 'not noted',
      choices: SQUALLS.map((id) => ({ id, name: id })),
    },
    WHEN,
  ],
  entries: (typed) => [{ kind: 'weather', ...typed }],
  notes: () => [],
};

/** She has left the anchorage. */
export const left: FormKind = {
  title: 'LEFT',
  offered: ofTheBoat,
  rows: (sight) => [anchorageRow(sight.boat.loaded.boat.anchorages), WHEN],
  entries: (typed) => [{ kind: 'left', ...typed }],
  notes: (sight) => [
    ...(sight.document
      ? [`${verdictWords(sight.document)} Leaving is logged as your decision beside it.`]
      : []),
    ...notMade(sight),
  ],
};

/** The decision to stay where the verdict says go, or whatever it says. */
export const stay: FormKind = {
  title: 'DECIDED TO STAY',
  offered: ofTheBoat,
  rows: () => [
    { field: 'text', label: 'why', example: 'fog, a guest coming, no sleep', usual: 'not said' },
    WHEN,
  ],
  entries: (typed, _, { document }) => [
    {
      kind: 'decision',
      choice: 'stay',
      ...(document ? { verdict: document.verdict, score: String(document.score.now ?? 'none') } : {}),
      ...typed,
    },
  ],
  notes: ({ document }) => (document ? [verdictWords(document)] : []),
};

function verdictWords({ verdict, score }: NonNullable<Sight['document']>): string {
  return `The verdict now is ${verdict}${score.now === null ? '' : `, ${hundred(score.now)}`}.`;
}

/** The looks to be made before every departure that were not. */
function notMade(sight: Sight): string[] {
  const open = sight.document?.beforeLeaving.filter(({ made }) => !made) ?? [];
  if (open.length === 0) return [];
  return [`Not made yet before leaving: ${open.map(({ check }) => nameOf(sight, check)).join(', ')}.`];
}

/** She has arrived. */
export const arrived: FormKind = {
  title: 'ARRIVED',
  offered: ofTheBoat,
  rows: (sight) => [anchorageRow(sight.boat.loaded.boat.anchorages), WHEN],
  entries: (typed) => [{ kind: 'arrived', ...typed }],
  notes: () => ['Looks made before leaving count for one departure; they are due again from here.'],
};

function anchorageRow(anchorages: readonly { readonly id: string; readonly name: string }[]) {
  return {
    field: 'anchorage',
    label: 'anchorage',
    example: 'the beginning of a name',
    usual: 'not named',
    choices: anchorages,
  };
}

/** The passage planned. */
export const plan: FormKind = {
  title: 'PASSAGE PLANNED',
  offered: ofTheBoat,
  rows: (sight) => [
    {
      field: 'passage',
      label: 'passage',
      example: 'the beginning of a name',
      usual: null,
      choices: sight.boat.loaded.boat.passages,
    },
    { field: 'crew', label: 'aboard', example: '2', usual: 'as in the boat file' },
    { field: 'reserveDays', label: 'days in reserve', example: '2', usual: 'as in the boat file' },
    WHEN,
  ],
  entries: (typed) => [{ kind: 'plan', ...typed }],
  notes: () => [],
};
