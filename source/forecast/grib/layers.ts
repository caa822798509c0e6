import type { Field } from './field.ts';
import type { Grid } from './grid.ts';
import { ABOVE_GROUND } from './levels.ts';
import type { Quantity } from './parameters.ts';

/** What a forecast is made of: wind as a vector or a speed, or one of the other quantities. */
export type LayerKind = 'wind' | Exclude<Quantity, 'wind u' | 'wind v' | 'wind speed' | 'wind direction'>;

/** One thing over a whole grid at one time. */
export interface Layer {
  readonly kind: LayerKind;
  /** Of a wind: u and v, or speed and direction, or speed alone. */
  readonly fields: readonly Field[];
  readonly from: number;
  readonly to: number;
  readonly grid: Grid;
  /** The same model run, level and grid at all its times. */
  readonly stream: Stream;
}

/** Layers that belong together; the lower in the order of `better`, the rather taken. */
export interface Stream {
  readonly referenceTime: number;
  /** Given for 10 m, not merely for the surface. */
  readonly atTenMetres: boolean;
  readonly cellDeg2: number;
}

/** The newest run first, wind at 10 m before wind at the surface, the finer grid before the coarser. */
export function better(a: Stream, b: Stream): number {
  return (
    b.referenceTime - a.referenceTime ||
    Number(b.atTenMetres) - Number(a.atTenMetres) ||
    a.cellDeg2 - b.cellDeg2
  );
}

/** The layers of use in some fields, all of one member. U and V, or speed and direction, come together; U and V rather than speed and direction. */
export function layersOf(fields: readonly Field[]): readonly Layer[] {
  const streams = new Map<string, Stream>();
  const groups = new Map<string, Map<Quantity, Field>>();
  const grids = new Map<Grid, number>();
  for (const field of fields) {
    if (field.quantity === null) continue;
    if (!grids.has(field.grid)) grids.set(field.grid, grids.size);
    const key = `${streamKey(field, grids.get(field.grid)!)}/${field.from}/${field.to}`;
    const group = groups.get(key) ?? new Map<Quantity, Field>();
    groups.set(key, group);
    // The same field twice, as in a download joined from two: the first stands.
    if (!group.has(field.quantity)) group.set(field.quantity, field);
  }
  return [...groups.values()].flatMap((group) => layersIn(group, streams, grids));
}

function streamKey({ centre, level, referenceTime }: Field, grid: number): string {
  return `${centre}/${level.type}/${level.value}/${referenceTime}/${grid}`;
}

function layersIn(
  group: ReadonlyMap<Quantity, Field>,
  streams: Map<string, Stream>,
  grids: ReadonlyMap<Grid, number>,
): readonly Layer[] {
  const layer = (kind: LayerKind, fields: readonly Field[]): Layer => {
    const [field] = fields as readonly [Field];
    const { from, to, grid } = field;
    const key = `${kind}/${fields.length}/${fields[0]!.quantity}/${streamKey(field, grids.get(grid)!)}`;
    const stream = streams.get(key) ?? streamOf(field);
    streams.set(key, stream);
    return { kind, fields, from, to, grid, stream };
  };
  const [u, v, speed, direction] = WIND_FIELDS.map((quantity) => group.get(quantity));
  const layers: Layer[] = [];
  if (u && v) layers.push(layer('wind', [u, v]));
  else if (speed) layers.push(layer('wind', direction ? [speed, direction] : [speed]));
  for (const [quantity, field] of group) {
    if (!isOfWind(quantity)) layers.push(layer(quantity, [field]));
  }
  return layers;
}

const WIND_FIELDS = ['wind u', 'wind v', 'wind speed', 'wind direction'] as const;

function isOfWind(quantity: Quantity): quantity is (typeof WIND_FIELDS)[number] {
  return (WIND_FIELDS as readonly Quantity[]).includes(quantity);
}

function streamOf({ referenceTime, level, grid }: Field): Stream {
  return {
    referenceTime,
    atTenMetres: level.type === ABOVE_GROUND,
    cellDeg2: grid.rowDeg * grid.columnDeg,
  };
}
