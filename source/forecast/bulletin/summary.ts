import type { ProblemKind, Step } from '../forecast.ts';
import { tidy } from '../units.ts';
import { counted, type Figure, worst } from './figure.ts';
import type { Reading } from './prose.ts';
import type { Height } from './seas.ts';
import type { Dirs, WindClause } from './wind.ts';

/** What a period comes to: the figures of a step, and what was odd about them. */
export interface Summary {
  readonly figures: Pick<
    Step,
    'wind' | 'dir' | 'otherDirs' | 'gust' | 'seas' | 'period' | 'periodKind' | 'squalls'
  >;
  readonly odd: readonly ProblemKind[];
}

/** One figure of each kind for a period: the worst of all its clauses, wherever and whenever in it they hold. */
export function summaryOf(reading: Reading): Summary {
  const { wind, gusts, squalls } = reading;
  const { dir, otherDirs } = directionsOf(wind);
  const { seas, period, periodKind, together } = seaOf(reading);
  const said: readonly (Figure & { readonly fromWord?: true; readonly unitTaken?: true })[] = [
    ...wind,
    ...reading.heights,
  ];
  const odd: ProblemKind[] = [];
  if (said.some(({ backwards }) => backwards)) odd.push('range backwards');
  if (said.some(({ unitTaken }) => unitTaken)) odd.push('unit taken');
  if (
    wind.some(({ fromWord }) => fromWord) ||
    gusts.some(({ fromWord }) => fromWord) ||
    reading.seaWords.length > 0
  )
    odd.push('from words');
  if (together) odd.push('seas put together');
  return {
    figures: {
      ...{ wind: worst(wind), dir, seas, period, periodKind, squalls },
      ...(otherDirs.length > 0 ? { otherDirs } : {}),
      gust: gusts.length > 0 ? Math.max(...gusts.map(({ kn }) => kn)) : null,
    },
    odd,
  };
}

/** The direction of the strongest clause, and every other direction said. */
function directionsOf(clauses: readonly WindClause[]): {
  readonly dir: number | null;
  readonly otherDirs: Dirs;
} {
  const strongest = clauses.toSorted((a, b) => b.high - a.high || counted(b)[0] - counted(a)[0])[0];
  if (!strongest) return { dir: null, otherDirs: [] };
  const dir = middle(strongest.dirs);
  const others = new Set(clauses.flatMap(({ dirs }) => dirs).filter((one) => one !== dir));
  return { dir, otherDirs: [...others] };
}

/** Half-way round the shorter arc between two directions. Null where they lie opposite, or none is known. */
function middle([first = null, second = first]: Dirs): number | null {
  if (first === null || second === null) return null;
  const turn = ((second - first + 540) % 360) - 180;
  return Math.abs(turn) === 180 ? null : (first + turn / 2 + 360) % 360;
}

function seaOf({ heights, periods, seaWords }: Reading) {
  const of = (...kinds: readonly Height['of'][]) => heights.filter((height) => kinds.includes(height.of));
  const all = of('all');
  const parts = of('part', 'swell', 'wind waves');
  const highest = Math.max(...all.map(({ high }) => high));
  // No part of a sea is higher than the whole: then what is called the sea was only its wind waves.
  const above = all.length > 0 ? parts.filter(({ high }) => high > highest) : [];
  const seas =
    worst([...all, ...above]) ?? together(of('wind waves'), of('part', 'swell')) ?? worst(seaWords);
  const timed = all.some(({ period }) => period !== null) ? all : parts;
  const timedHighest = timed
    .filter(({ period }) => period !== null)
    .toSorted((a, b) => b.high - a.high || (a.period ?? 0) - (b.period ?? 0))[0];
  const alone = periods.length > 0 ? Math.min(...periods) : null;
  return {
    seas,
    period: timedHighest?.period ?? alone,
    periodKind: timedHighest ? PERIOD_KINDS[timedHighest.of] : alone === null ? null : ('peak' as const),
    together: all.length === 0 && parts.length > 0,
  };
}

/** Forecasters give the period of the highest waves of a sea: its peak ("dominant") period. */
const PERIOD_KINDS: { readonly [of in Height['of']]: Step['periodKind'] } = {
  all: 'peak',
  part: 'peak',
  swell: 'swell',
  'wind waves': 'wind waves',
  occasional: null,
};

/** The significant height of a whole sea from its parts: their energies add, so the heights do as the sides of a right angle. */
function together(
  wind: readonly Figure[],
  swells: readonly Figure[],
): readonly [low: number, high: number] | null {
  const parts = [worst(wind), ...swells.map(counted)].filter((one) => one !== null);
  if (parts.length === 0) return null;
  return [tidy(Math.hypot(...parts.map(([low]) => low))), tidy(Math.hypot(...parts.map(([, high]) => high)))];
}
