import type { BareUnits } from '../forecast/content.ts';
import { FOOT_M, NAUTICAL_MILE_KM } from '../forecast/units.ts';
import type { Preferred } from '../outside.ts';
import { IMPERIAL_GALLON_L, US_GALLON_L } from './units.ts';

/** What the files are in, and what is taken where nothing is preferred. */
export const FILE_UNITS: Preferred = { volume: 'litres', height: 'm', wind: 'kn', clock: '24 h' };

const utc = () => 'UTC';

let held = FILE_UNITS;
let heldZone = utc;

/**
 * Sets what is preferred, for every amount and moment worded or read from here on. Held here and not handed down: a hundred places word amounts, none
 * of them would do else than pass it on, and a program has one person before it. `zone` gives an IANA name; it is asked only where a moment is worded, since a
 * machine takes long to say which is its own.
 */
export function prefer({ volume, height, wind, clock }: Preferred, zone: () => string = utc): void {
  held = { volume, height, wind, clock };
  heldZone = zone;
}

/** What is preferred now. */
export function preferred(): Preferred {
  return held;
}

/** What a wind or a height of seas typed without a unit is in, in a row of a forecast. */
export function bareUnits(): BareUnits {
  return { wind: held.wind, seas: held.height };
}

/** The zone preferred now, for sentences that stand in a document. Pages have theirs as an argument. */
export function preferredZone(): string {
  return heldZone();
}

/** A unit as it is shown: its short name, its name in a question, and how much of the file unit one of it is. */
export interface ShownUnit {
  readonly name: string;
  readonly said: string;
  readonly each: number;
}

const US_QUART: ShownUnit = { name: 'US qt', said: 'US quarts', each: US_GALLON_L / 4 };
const US_GALLON: ShownUnit = { name: 'US gal', said: 'US gallons', each: US_GALLON_L };
const IMPERIAL_PINT: ShownUnit = { name: 'imp pt', said: 'imperial pints', each: IMPERIAL_GALLON_L / 8 };
const IMPERIAL_GALLON: ShownUnit = { name: 'imp gal', said: 'imperial gallons', each: IMPERIAL_GALLON_L };
const FOOT: ShownUnit = { name: 'ft', said: 'feet', each: FOOT_M };
const METRE_A_SECOND: ShownUnit = { name: 'm/s', said: 'metres a second', each: 3.6 / NAUTICAL_MILE_KM };

const SAID: { readonly [unit: string]: string } = {
  L: 'litres',
  kn: 'knots',
  m: 'metres',
  kg: 'kilograms',
  mm: 'millimetres',
  hPa: 'hectopascals',
  nm: 'nautical miles',
  h: 'hours',
  min: 'minutes',
};

/** Below so many litres oil is spoken of in quarts or pints, above in gallons (common practice, no source). */
const SMALL_L = { US: 4 * US_GALLON_L, imperial: 2 * IMPERIAL_GALLON_L };

/** The unit an amount of `unit`, a file unit, is shown and typed in. `about` is how much of it there is or can be: oil goes by the quart, fuel by the gallon. */
export function shownUnit(unit: string, about: number): ShownUnit {
  if (unit === 'L' && held.volume === 'US') return Math.abs(about) < SMALL_L.US ? US_QUART : US_GALLON;
  if (unit === 'L' && held.volume === 'imperial')
    return Math.abs(about) < SMALL_L.imperial ? IMPERIAL_PINT : IMPERIAL_GALLON;
  if (unit === 'm' && held.height === 'ft') return FOOT;
  if (unit === 'kn' && held.wind === 'm/s') return METRE_A_SECOND;
  return { name: unit, said: SAID[unit] ?? unit, each: 1 };
}
