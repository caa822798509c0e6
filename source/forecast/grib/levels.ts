import type { Quantity } from './parameters.ts';
import type { Why } from './refused.ts';

/** The height a field is given for. `type` as in edition 2, code table 4.5; edition 1's are put over to it. */
export interface Level {
  readonly type: number;
  readonly value: number | null;
}

/** Fixed surfaces of code table 4.5. */
const SURFACE = 1;
const ISOBARIC = 100;
const MEAN_SEA = 101;
const ABOVE_MEAN_SEA = 102;
export const ABOVE_GROUND = 103;
const SEQUENCE = 241;
const OTHER = 255;

/** Edition 1, code table 3, to edition 2's numbers and units. */
export function level1(type: number, value: number): Level {
  if (type === 1) return { type: SURFACE, value };
  if (type === 100) return { type: ISOBARIC, value: value * 100 };
  if (type === 102) return { type: MEAN_SEA, value };
  if (type === 103) return { type: ABOVE_MEAN_SEA, value };
  if (type === 105) return { type: ABOVE_GROUND, value };
  return { type: OTHER, value };
}

/** Winds stand at 10 m, in wave files at the surface; waves at the surface or mean sea level. Null where the level is one of those. */
export function whyNotLevel(quantity: Quantity, parameterCode: string, level: Level): Why | null {
  const { type, value } = level;
  if (quantity === 'pressure' && isPlainPressure(parameterCode) && type !== MEAN_SEA) return not(level);
  if (type === SURFACE || type === MEAN_SEA) return null;
  if (type === ABOVE_MEAN_SEA && (value ?? 0) === 0) return null;
  if (type === ABOVE_GROUND && isWind(quantity) && value === 10) return null;
  return not(level);
}

export function levelName({ type, value }: Level): string {
  if (type === SURFACE) return 'surface';
  if (type === MEAN_SEA) return 'mean sea level';
  if (type === ISOBARIC && value !== null) return `${value / 100} hPa`;
  if ((type === ABOVE_MEAN_SEA || type === ABOVE_GROUND) && value !== null) return `${value} m`;
  if (type === SEQUENCE) return `part ${value ?? '?'} of the swell`;
  return `level of type ${type}`;
}

function not(level: Level): Why {
  return { kind: 'level', name: levelName(level) };
}

const WIND: readonly Quantity[] = ['wind u', 'wind v', 'wind speed', 'wind direction', 'gust'];

function isWind(quantity: Quantity): boolean {
  return WIND.includes(quantity);
}

/** Pressure not reduced to sea level: edition 2's 0-3-0, edition 1's number 1. */
function isPlainPressure(code: string): boolean {
  return code === '0-3-0' || code.endsWith('.1');
}
