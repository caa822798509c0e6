import { z } from 'zod';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import type { Given, Reading } from './content.ts';
import type { Position, Problem, Step } from './forecast.ts';
import { headlinesOf, squallsOf } from './grid-hazards.ts';
import { edgesOf, type Held, intervalFrom, valueAt } from './grid-layers.ts';
import { instantFrom } from './iso-time.ts';
import { oddities } from './oddities.ts';
import { tableTroubles } from './table-troubles.ts';
import { knotsIn, metresIn, tidy } from './units.ts';

const MOST_VALUES = 2000;
const values = <T extends z.ZodType>(value: T) =>
  z
    .looseObject({
      uom: z.string({ error: 'its unit' }).optional(),
      values: z
        .array(z.looseObject({ validTime: z.string({ error: 'a time and a duration' }), value }), {
          error: 'a list of values',
        })
        .max(MOST_VALUES, { error: `at most ${MOST_VALUES} values` }),
    })
    .optional();
const figures = values(z.number({ error: 'a number or null' }).nullable());
const weatherSchema = values(
  z.array(z.looseObject({ coverage: z.string().nullish(), weather: z.string().nullish() })).nullable(),
);
const hazardSchema = values(
  z.array(z.looseObject({ phenomenon: z.string(), significance: z.string() })).nullable(),
);
const fileSchema = z.looseObject(
  {
    geometry: z
      .looseObject({ coordinates: z.array(z.array(z.array(z.number())).max(1000)).max(10) })
      .nullish(),
    properties: z.looseObject(
      {
        updateTime: z.string({ error: 'when it was issued' }),
        ...{ windSpeed: figures, windDirection: figures, windGust: figures, pressure: figures },
        ...{ waveHeight: figures, wavePeriod: figures },
        weather: weatherSchema,
        hazards: hazardSchema,
      },
      { error: 'the layers of a grid point' },
    ),
  },
  { error: 'a grid point' },
);
type Layers = z.output<typeof fileSchema>['properties'];
type Name = 'windSpeed' | 'windDirection' | 'windGust' | 'pressure' | 'waveHeight' | 'wavePeriod';

/** What a layer counts in its unit, and the range of its values in file units. */
const LAYERS: {
  readonly [name in Name]: {
    readonly factor: (unit: string) => number | null;
    readonly range: readonly [number, number];
  };
} = {
  windSpeed: { factor: knotsIn, range: [0, 250] },
  windGust: { factor: knotsIn, range: [0, 300] },
  windDirection: { factor: () => 1, range: [0, 360] },
  waveHeight: { factor: metresIn, range: [0, 40] },
  wavePeriod: { factor: () => 1, range: [0, 60] },
  pressure: { factor: (unit) => (unit === 'Pa' ? 0.01 : unit === 'hPa' ? 1 : null), range: [850, 1100] },
};

/** Whether a parsed JSON is the forecast of a national grid point. */
export function isGridPoint(json: unknown): boolean {
  if (typeof json !== 'object' || json === null || !('properties' in json)) return false;
  const { properties } = json;
  return typeof properties === 'object' && properties !== null && 'validTimes' in properties;
}

/**
 * Reads a national grid point: layers of values, each with a time and an ISO 8601 duration. A layer of waves that is one single zero stands for "no sea here": it is
 * missing, never a calm.
 */
export function readGridPoint(json: unknown, given: Given): Result<Reading> {
  const parsed = fileSchema.safeParse(json);
  if (!parsed.success) return bad(...tableTroubles(parsed.error));
  const { properties, geometry } = parsed.data;
  const troubles: Trouble[] = [];
  const issued = instantFrom(properties.updateTime, null);
  if (issued === null) troubles.push(wrong('updateTime', properties.updateTime, 'a time with its offset'));
  const height = layerOf(properties, 'waveHeight', troubles);
  const noSea = height.length === 1 && height[0]?.value === 0;
  const layers = {
    ...{
      wind: layerOf(properties, 'windSpeed', troubles),
      dir: layerOf(properties, 'windDirection', troubles),
    },
    ...{
      gust: layerOf(properties, 'windGust', troubles),
      pressure: layerOf(properties, 'pressure', troubles),
    },
    seas: noSea ? [] : height,
    period: noSea ? [] : layerOf(properties, 'wavePeriod', troubles),
    squalls: heldIn(properties.weather, 'weather', troubles).map((held) => ({
      ...held,
      value: squallsOf(held.value ?? []),
    })),
  };
  const headlines = heldIn(properties.hazards, 'hazards', troubles).flatMap(headlinesOf);
  if (troubles.length > 0 || issued === null) return bad(...troubles);
  const steps = stepsOf(layers);
  if (steps.length === 0) return bad({ kind: 'no figures' });
  if (steps.length > MOST_VALUES)
    return bad(wrong('properties', `${steps.length} times`, `at most ${MOST_VALUES}`));
  const at = centreOf(geometry?.coordinates[0] ?? []);
  const problems: Problem[] = [
    ...(noSea ? [{ kind: 'no sea here', where: 'waveHeight' } as const] : []),
    ...oddities(steps, true),
  ];
  const place = {
    place: given.place ?? '',
    ...(at ? { at } : {}),
    headlines: headlines.slice(0, 100),
    steps,
  };
  return good({
    content: {
      source: 'json',
      issuer: '',
      issuedAt: new Date(issued).toISOString(),
      places: [place],
      notRead: [],
      problems,
    },
  });
}

function wrong(where: string, found: string, expected: string): Trouble {
  return { kind: 'table not understood', where, found, expected };
}

function layerOf(layers: Layers, name: Name, troubles: Trouble[]): readonly Held<number>[] {
  const layer = layers[name];
  const held = heldIn(layer, name, troubles);
  if (held.every(({ value }) => value === null)) return [];
  const unit = (layer?.uom ?? '').replace(/^.*:/, '').replace(/-1$/, '');
  const { factor, range } = LAYERS[name];
  const each = factor(unit);
  if (each === null) {
    troubles.push(wrong(`${name}.uom`, unit === '' ? 'no unit' : unit, 'a unit this program knows'));
    return [];
  }
  const read = held.flatMap((one) => (one.value === null ? [] : [{ ...one, value: tidy(one.value * each) }]));
  const odd = read.find(({ value }) => !(value >= range[0] && value <= range[1]));
  if (odd) troubles.push(wrong(name, String(odd.value), `a value from ${range[0]} to ${range[1]}`));
  return read;
}

/** The values of a layer with their times, in order; a time that is not understood, or runs into the one before, is in trouble. */
function heldIn<T>(
  layer: { readonly values: readonly { readonly validTime: string; readonly value: T }[] } | undefined,
  name: string,
  troubles: Trouble[],
): readonly Held<T>[] {
  const held: Held<T>[] = [];
  for (const { validTime, value } of layer?.values ?? []) {
    const interval = intervalFrom(validTime);
    if (interval === null || interval.from < (held.at(-1)?.to ?? interval.from)) {
      troubles.push(wrong(name, validTime, 'a time and a duration after the one before it'));
      return held;
    }
    held.push({ ...interval, value });
  }
  return held;
}

interface Held7 {
  readonly wind: readonly Held<number>[];
  readonly dir: readonly Held<number>[];
  readonly gust: readonly Held<number>[];
  readonly pressure: readonly Held<number>[];
  readonly seas: readonly Held<number>[];
  readonly period: readonly Held<number>[];
  readonly squalls: readonly Held<Step['squalls']>[];
}

/** One step between each two changes of what is read; none before the first wind or sea, none after the last. */
function stepsOf(layers: Held7): readonly Step[] {
  const edges = edgesOf(Object.values(layers));
  const steps = edges.slice(0, -1).map((from, i): Step => {
    const [wind, seas, period] = [
      valueAt(layers.wind, from),
      valueAt(layers.seas, from),
      valueAt(layers.period, from),
    ];
    return {
      from: new Date(from).toISOString(),
      to: new Date(edges[i + 1]!).toISOString(),
      wind: wind === null ? null : [wind, wind],
      dir: valueAt(layers.dir, from),
      gust: valueAt(layers.gust, from),
      seas: seas === null ? null : [seas, seas],
      period,
      periodKind: null,
      pressure: valueAt(layers.pressure, from),
      squalls: valueAt(layers.squalls, from),
      how: 'read',
    };
  });
  const isSaid = ({ wind, seas }: Step) => wind !== null || seas !== null;
  return steps.slice(Math.max(0, steps.findIndex(isSaid)), steps.findLastIndex(isSaid) + 1);
}

/** The middle of a cell of the grid; its last corner is its first again. */
function centreOf(ring: readonly (readonly number[])[]): Position | null {
  const corners = ring
    .slice(0, -1)
    .filter(([lon, lat]) => Math.abs(lon ?? 999) <= 180 && Math.abs(lat ?? 999) <= 90);
  if (corners.length === 0 || corners.length < ring.length - 1) return null;
  const mean = (i: 0 | 1) =>
    tidy(corners.reduce((sum, corner) => sum + (corner[i] ?? 0), 0) / corners.length);
  return [mean(1), mean(0)];
}
