import type { Grid } from './grid.ts';
import type { Level } from './levels.ts';
import type { Parameter, Quantity } from './parameters.ts';
import type { Why } from './refused.ts';

/** One field of a GRIB file: everything its headers say, and where its packed values lie. */
export interface Field {
  /** Which message of the file, from 1; several fields may share it. */
  readonly message: number;
  readonly edition: 1 | 2;
  /** Originating centre, common code table C-11. */
  readonly centre: number;
  readonly parameter: Parameter;
  /** Null where the field is of no use here, `unused` then says why. */
  readonly quantity: Quantity | null;
  readonly unused: Why | null;
  readonly level: Level;
  /** When the forecast was made, ms since 1970 UTC. */
  readonly referenceTime: number;
  /** What it is valid for, ms since 1970 UTC: an instant has both the same, a mean or greatest value a span. */
  readonly from: number;
  readonly to: number;
  /** The member of an ensemble, 0 the control; null outside an ensemble. */
  readonly member: number | null;
  readonly grid: Grid;
  readonly packed: Packed;
}

/** Packed values. Value = (reference + X * 2^binary) / 10^decimal (WMO No. 306, I.2, regulation 92.9.4). */
export interface Packed {
  readonly packing: Packing;
  /** How many values are packed: the points of the grid, or those the bitmap marks. */
  readonly count: number;
  /** One bit a point, from the first point on; null where every point has a value. */
  readonly bitmap: Uint8Array | null;
  readonly reference: number;
  readonly binary: number;
  readonly decimal: number;
  readonly bits: number;
  /** Edition 2's section 5, for what only one packing has. Empty in edition 1. */
  readonly section5: Uint8Array;
  readonly data: Uint8Array;
}

export type Packing = 'simple' | 'complex' | 'complex with differences' | 'IEEE' | 'JPEG 2000' | 'CCSDS';
