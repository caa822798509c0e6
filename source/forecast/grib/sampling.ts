import type { Position } from '../forecast.ts';
import { decode } from './decode.ts';
import type { Field } from './field.ts';
import { gate, type Odd } from './gates.ts';
import type { Grid } from './grid.ts';
import type { DecodeJpeg2000 } from './jpeg2000.ts';
import type { Layer, LayerKind } from './layers.ts';
import type { Sample } from './series.ts';
import { type Spot, spotOn, type Taken, taken } from './spot.ts';

/** What the layers give for one position, by kind. */
export type Samples = Map<LayerKind, Sample[]>;

export interface Sampled {
  /** One for each position; empty where no grid reaches it. */
  readonly places: readonly Samples[];
  /** What has a grid that reaches the position, land or sea. */
  readonly reached: readonly ReadonlySet<LayerKind>[];
  /** Fields with values that cannot be or stand apart. */
  readonly odd: readonly (Odd & { readonly field: Field })[];
  /** Fields whose values could not be unpacked. */
  readonly damaged: readonly Field[];
}

const RADIANS = Math.PI / 180;

/** Takes every layer at every position, one layer unpacked at a time. */
export async function sample(
  layers: readonly Layer[],
  positions: readonly Position[],
  decodeJpeg?: DecodeJpeg2000,
): Promise<Sampled> {
  const places: Samples[] = positions.map(() => new Map());
  const reached = positions.map(() => new Set<LayerKind>());
  const odd: (Odd & { field: Field })[] = [];
  const damaged: Field[] = [];
  const spots = new Map<Grid, readonly (Spot | null)[]>();
  for (const layer of layers) {
    const { grid, fields } = layer;
    const here = spots.get(grid) ?? positions.map((at) => spotOn(grid, at));
    spots.set(grid, here);
    if (!here.some((spot) => spot !== null)) continue;
    for (const [i, spot] of here.entries()) if (spot) reached[i]!.add(layer.kind);
    const all: Float64Array[] = [];
    for (const field of fields) {
      const values = await decode(field, decodeJpeg);
      if (!values) {
        damaged.push(field);
        break;
      }
      const found = gate(values, grid, field.quantity!);
      if (found.beyond > 0 || found.apart > 0) odd.push({ ...found, field });
      all.push(values);
    }
    if (all.length === fields.length) take(layer, all, here, places);
  }
  return { places, reached, odd, damaged };
}

function take(
  { kind, fields, from, to, stream }: Layer,
  all: readonly Float64Array[],
  here: readonly (Spot | null)[],
  places: readonly Samples[],
): void {
  const isSea = (point: number) => all.every((values) => !Number.isNaN(values[point]!));
  const byDirection = fields[1]?.quantity === 'wind direction';
  for (const [i, spot] of here.entries()) {
    const found = spot && taken(spot, isSea);
    if (!found) continue;
    const parts = byDirection ? fromDirection(all, found) : all.map((values) => weighed(values, found));
    const samples = places[i]!.get(kind) ?? [];
    places[i]!.set(kind, samples);
    samples.push({ from, to, parts, awayNm: found.awayNm, stream });
  }
}

function weighed(values: Float64Array, { points, weights }: Taken): number {
  return points.reduce((sum, point, i) => sum + values[point]! * weights[i]!, 0);
}

/** East and north parts of winds given by speed and where they come from; the parts are weighed, never the angles. */
function fromDirection([speeds, directions]: readonly Float64Array[], { points, weights }: Taken): number[] {
  let [east, north] = [0, 0];
  for (const [i, point] of points.entries()) {
    const towards = directions![point]! * RADIANS;
    east -= weights[i]! * speeds![point]! * Math.sin(towards);
    north -= weights[i]! * speeds![point]! * Math.cos(towards);
  }
  return [east, north];
}
