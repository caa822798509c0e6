import type { Step } from '../forecast.ts';
import type { LayerKind } from './layers.ts';
import type { Samples } from './sampling.ts';
import { partsAt, type Sample, seriesOf } from './series.ts';

const HOUR_MS = 3_600_000;
const KN_A_METRE_A_SECOND = 3600 / 1852;
const PASCALS_A_HECTOPASCAL = 100;
/** As the one shape of a forecast allows. */
const MOST_STEPS = 2000;
/** Below this, m/s, a wind has no direction worth saying. */
const CALM = 0.05;

/** The first of these that is given is the period; those of one part of the sea only where nothing else is. */
const PERIODS: readonly (readonly [LayerKind, NonNullable<Step['periodKind']>])[] = [
  ['peak period', 'peak'],
  ['mean period', 'mean'],
  ['zero crossing period', 'zero crossing'],
  ['swell period', 'swell'],
  ['wind wave period', 'wind waves'],
];

export interface Steps {
  /** Every hour from the first time on; each holds what is said for its beginning. */
  readonly steps: readonly Step[];
  /** How far off, at most, the points lie the seas are taken from; 0 where the place lies between sea points. */
  readonly nearestSeaNm: number;
  /** When the oldest of what was used was made, ms since 1970 UTC. */
  readonly issued: number | null;
  /** Seas had to be put together from wind waves and swell. */
  readonly seasPutTogether: boolean;
}

type Series = ReadonlyMap<LayerKind, readonly Sample[]>;

/** The steps of one place from all that was taken there. */
export function stepsOf(samples: Samples): Steps {
  const series: Series = new Map([...samples].map(([kind, all]) => [kind, seriesOf(all)]));
  const periods = PERIODS.find(([kind]) => series.has(kind));
  const used = [...series].filter(([kind]) => isUsed(kind, series, periods?.[0])).flatMap(([, all]) => all);
  const steps: Step[] = [];
  let at = nextFrom(used, Number.NEGATIVE_INFINITY);
  while (at < Number.POSITIVE_INFINITY && steps.length < MOST_STEPS) {
    const step = stepAt(series, periods, at);
    if (step) steps.push(step);
    at = step ? at + HOUR_MS : nextFrom(used, at);
  }
  const seas = SEAS.flatMap((kind) => (isUsed(kind, series, undefined) ? (series.get(kind) ?? []) : []));
  return {
    steps,
    nearestSeaNm: rounded(Math.max(0, ...seas.map(({ awayNm }) => awayNm)), 0.1),
    issued: used.length > 0 ? Math.min(...used.map(({ stream }) => stream.referenceTime)) : null,
    seasPutTogether: !series.has('seas') && series.has('wind waves') && series.has('swell'),
  };
}

/** Where something is said again after a time of which nothing is. */
function nextFrom(samples: readonly Sample[], after: number): number {
  return samples.reduce(
    (next, { from }) => (from > after && from < next ? from : next),
    Number.POSITIVE_INFINITY,
  );
}

const SEAS = ['seas', 'wind waves', 'swell'] as const;

function isUsed(kind: LayerKind, series: Series, period: LayerKind | undefined): boolean {
  if (kind === 'wind waves' || kind === 'swell') return !series.has('seas');
  return PERIODS.every(([one]) => one !== kind) || kind === period;
}

function stepAt(series: Series, periods: (typeof PERIODS)[number] | undefined, at: number): Step | null {
  const parts = (kind: LayerKind) => partsAt(series.get(kind) ?? [], at);
  const wind = parts('wind');
  const gust = parts('gust')?.[0];
  const seas = seasFrom(parts('seas')?.[0], parts('wind waves')?.[0], parts('swell')?.[0]);
  const period = periods && parts(periods[0])?.[0];
  const pressure = parts('pressure')?.[0];
  if (!wind && gust === undefined && seas === null && pressure === undefined && period === undefined)
    return null;
  const speed = wind && rounded(Math.hypot(...wind) * KN_A_METRE_A_SECOND, 0.01);
  return {
    from: new Date(at).toISOString(),
    to: new Date(at + HOUR_MS).toISOString(),
    wind: speed === null ? null : [speed, speed],
    dir: wind && directionFrom(wind),
    gust: gust === undefined ? null : rounded(gust * KN_A_METRE_A_SECOND, 0.01),
    seas: seas === null ? null : [seas, seas],
    period: period === undefined ? null : rounded(period, 0.01),
    periodKind: period === undefined ? null : periods![1],
    pressure: pressure === undefined ? null : rounded(pressure / PASCALS_A_HECTOPASCAL, 0.01),
    ...{ squalls: null, how: 'read' as const },
  };
}

/** Where the wind comes from, degrees true, from its east and north parts. */
function directionFrom(parts: readonly number[]): number | null {
  const [east, north] = parts;
  if (north === undefined || Math.hypot(east!, north) < CALM) return null;
  return rounded(((Math.atan2(-east!, -north) * 180) / Math.PI + 360) % 360, 0.1);
}

/** Heights add up by their squares, as energy does. */
function seasFrom(
  seas: number | undefined,
  windWaves: number | undefined,
  swell: number | undefined,
): number | null {
  if (seas !== undefined) return rounded(seas, 0.001);
  if (windWaves === undefined || swell === undefined) return null;
  return rounded(Math.hypot(windWaves, swell), 0.001);
}

/** To a step that is a power of ten, without the tail of a division. */
function rounded(value: number, step: number): number {
  return Math.round(value / step) / Math.round(1 / step);
}
