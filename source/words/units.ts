import { FOOT_M, NAUTICAL_MILE_KM, STATUTE_MILE_KM } from '../forecast/units.ts';

/** Units as people name them, in file units. NIST SP 811 (2008), Appendix B.8 and B.9; exact by definition unless said. */

export const US_GALLON_L = 3.785411784;
export const IMPERIAL_GALLON_L = 4.54609;
const POUND_KG = 0.45359237;
const INCH_MM = 25.4;
/** Conventional inch of mercury, 3386.389 Pa. Rounded by its publisher to 7 digits. */
const INCH_OF_MERCURY_HPA = 33.86389;
/** Conventional millimetre of mercury, 133.3224 Pa. Rounded likewise. */
const MILLIMETRE_OF_MERCURY_HPA = 1.333224;

export type Unit = 'L' | 'h' | 'min' | 'days' | 'kn' | 'm' | 'kg' | 'mm' | 'hPa' | 'nm';

/** What one of each counts in the file unit. The file unit itself comes first. */
export const unitFactors: { readonly [unit in Unit]: { readonly [name: string]: number } } = {
  L: {
    l: 1,
    ...all(['litre', 'litres', 'liter', 'liters', 'ltr'], 1),
    ...all(['ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters', 'cc', 'cm3'], 0.001),
    cl: 0.01,
    dl: 0.1,
    m3: 1000,
    ...either(['gal', 'gallon', 'gallons'], { us: US_GALLON_L, imperial: IMPERIAL_GALLON_L }),
    ...either(['qt', 'quart', 'quarts'], { us: US_GALLON_L / 4, imperial: IMPERIAL_GALLON_L / 4 }),
    ...either(['pt', 'pint', 'pints'], { us: US_GALLON_L / 8, imperial: IMPERIAL_GALLON_L / 8 }),
    ...either(['fl oz', 'floz'], { us: US_GALLON_L / 128, imperial: IMPERIAL_GALLON_L / 160 }),
    // Oil is sold by the US quart; nobody sells it by the imperial one any more (common practice, no source).
    ...all(['qt', 'quart', 'quarts'], US_GALLON_L / 4),
  },
  h: {
    h: 1,
    ...all(['hr', 'hrs', 'hour', 'hours'], 1),
    ...all(['min', 'minute', 'minutes'], 1 / 60),
    ...all(['d', 'day', 'days'], 24),
  },
  min: { min: 1, ...all(['mins', 'minute', 'minutes'], 1), ...all(['h', 'hr', 'hrs', 'hour', 'hours'], 60) },
  days: {
    days: 1,
    ...all(['d', 'day'], 1),
    ...all(['h', 'hour', 'hours'], 1 / 24),
    ...all(['week', 'weeks'], 7),
  },
  kn: {
    kn: 1,
    ...all(['kt', 'kts', 'kns', 'knot', 'knots'], 1),
    ...all(['m/s', 'mps'], 3.6 / NAUTICAL_MILE_KM),
    ...all(['km/h', 'kmh', 'kph'], 1 / NAUTICAL_MILE_KM),
    mph: STATUTE_MILE_KM / NAUTICAL_MILE_KM,
  },
  m: {
    m: 1,
    ...all(['metre', 'metres', 'meter', 'meters'], 1),
    ...all(['ft', 'foot', 'feet', "'"], FOOT_M),
    ...all(['fm', 'fathom', 'fathoms'], 6 * FOOT_M),
    cm: 0.01,
  },
  kg: {
    kg: 1,
    ...all(['kilo', 'kilos', 'kilogram', 'kilograms'], 1),
    ...all(['g', 'gram', 'grams'], 0.001),
    ...all(['lb', 'lbs', 'pound', 'pounds'], POUND_KG),
    ...all(['oz', 'ounce', 'ounces'], POUND_KG / 16),
  },
  mm: {
    mm: 1,
    ...all(['millimetre', 'millimetres', 'millimeter', 'millimeters'], 1),
    cm: 10,
    ...all(['in', 'inch', 'inches', '"', '\u201d', "''"], INCH_MM),
  },
  hPa: {
    hpa: 1,
    ...all(['mb', 'mbar', 'millibar', 'millibars'], 1),
    kpa: 10,
    ...all(['inhg', 'in hg'], INCH_OF_MERCURY_HPA),
    ...all(['mmhg', 'mm hg'], MILLIMETRE_OF_MERCURY_HPA),
  },
  nm: {
    nm: 1,
    ...all(['m', 'mile', 'miles', 'nautical mile', 'nautical miles'], 1),
    km: 1 / NAUTICAL_MILE_KM,
  },
};

/** Whether it is a file unit people type in others too. */
export function isUnit(unit: string | null): unit is Unit {
  return unit !== null && Object.hasOwn(unitFactors, unit);
}

/** Words that name two units: which of them is meant is asked, never guessed. */
export const twoUnits: { readonly [name: string]: string } = {
  ...all(['gal', 'gallon', 'gallons'], 'us gal or imp gal'),
  ...all(['pt', 'pint', 'pints'], 'us pt or imp pt'),
  ...all(['fl oz', 'floz', 'oz'], 'us fl oz or imp fl oz'),
};

function all<T>(names: readonly string[], value: T): { readonly [name: string]: T } {
  return Object.fromEntries(names.map((name) => [name, value]));
}

function either(
  names: readonly string[],
  { us, imperial }: { us: number; imperial: number },
): { readonly [name: string]: number } {
  return Object.fromEntries(
    names.flatMap((name) => [
      ...['us', 'u.s.', 'us liquid'].map((which) => [`${which} ${name}`, us] as const),
      ...['imp', 'imp.', 'imperial', 'uk'].map((which) => [`${which} ${name}`, imperial] as const),
      [`${name} us`, us] as const,
      [`${name} imp`, imperial] as const,
      [`${name} uk`, imperial] as const,
    ]),
  );
}
