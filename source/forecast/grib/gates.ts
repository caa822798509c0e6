import type { Grid } from './grid.ts';
import type { Quantity } from './parameters.ts';

/** GRIB has no checksum, so values are held against what wind and sea can be. */
interface Gate {
  /** Outside these a value cannot be, in the units of the tables. */
  readonly least: number;
  readonly most: number;
  /** Further apart than this two neighbours are not. */
  readonly leap: number;
  /** Further than this from all of its neighbours a point is not. */
  readonly spike: number;
}

/**
 * Judgement, no source. Well past records: gust 113 m/s, significant height 19 m (World Meteorological Organization's archive of extremes), pressure 870 and 1085 hPa
 * (from memory); leaps and spikes several times the greatest in real forecasts of 1/6 to 2.5 degrees.
 */
const WIND: Gate = { least: -105, most: 105, leap: 45, spike: 18 };
const SPEED: Gate = { ...WIND, least: 0, most: 120 };
const HEIGHT: Gate = { least: 0, most: 28, leap: 10, spike: 5 };
const PERIOD: Gate = { least: 0, most: 40, leap: Number.POSITIVE_INFINITY, spike: Number.POSITIVE_INFINITY };
const GATES: Readonly<Record<Quantity, Gate>> = {
  'wind u': WIND,
  'wind v': WIND,
  'wind speed': SPEED,
  'wind direction': { ...PERIOD, most: 360 },
  gust: SPEED,
  seas: HEIGHT,
  'wind waves': HEIGHT,
  swell: HEIGHT,
  'peak period': PERIOD,
  'mean period': PERIOD,
  'zero crossing period': PERIOD,
  'wind wave period': PERIOD,
  'swell period': PERIOD,
  pressure: { least: 85_000, most: 109_000, leap: 4000, spike: 1500 },
};

/** Towards the poles directions turn from column to column, and with them the parts of the wind. */
const POLAR_DEG = 75;

export interface Odd {
  /** How many values cannot be. They are now missing. */
  readonly beyond: number;
  /** The worst of them; 0 for none. */
  readonly worst: number;
  /** How many points stand apart from their neighbours, and the greatest difference. */
  readonly apart: number;
  readonly most: number;
}

/** Takes values that cannot be out of a field (they become missing, in place), and counts those that stand apart from their neighbours. */
export function gate(values: Float64Array, grid: Grid, quantity: Quantity): Odd {
  const { least, most, leap, spike } = GATES[quantity];
  let [beyond, worst] = [0, 0];
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    if (Number.isNaN(value) || (value >= least && value <= most)) continue;
    beyond += 1;
    if (Math.abs(value) >= Math.abs(worst)) worst = value;
    values[i] = Number.NaN;
  }
  if (leap === Number.POSITIVE_INFINITY) return { beyond, worst, apart: 0, most: 0 };
  return { beyond, worst, ...standingApart(values, grid, { leap, spike }) };
}

function standingApart(
  values: Float64Array,
  { rows, columns, north, rowDeg }: Grid,
  { leap, spike }: { leap: number; spike: number },
): { readonly apart: number; readonly most: number } {
  let [apart, most] = [0, 0];
  for (let row = 0; row < rows; row += 1) {
    if (Math.abs(north - row * rowDeg) > POLAR_DEG) continue;
    for (let column = 0; column < columns; column += 1) {
      const at = row * columns + column;
      const value = values[at]!;
      let [near, far, sides] = [Number.POSITIVE_INFINITY, 0, 0];
      const look = (other: number) => {
        const difference = Math.abs(value - other);
        if (Number.isNaN(difference)) return;
        sides += 1;
        near = Math.min(near, difference);
        far = Math.max(far, difference);
      };
      if (column > 0) look(values[at - 1]!);
      if (column + 1 < columns) look(values[at + 1]!);
      if (row > 0) look(values[at - columns]!);
      if (row + 1 < rows) look(values[at + columns]!);
      if (far <= leap && (near <= spike || sides < 2)) continue;
      apart += 1;
      most = Math.max(most, far);
    }
  }
  return { apart, most };
}
