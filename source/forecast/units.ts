/** Exact by definition (NIST SP 811, 2008, Appendix B.8). */
export const FOOT_M = 0.3048;
export const NAUTICAL_MILE_KM = 1.852;
export const STATUTE_MILE_KM = 1.609344;

const KNOTS: { readonly [name: string]: number } = {
  kt: 1,
  kn: 1,
  knot: 1,
  'm/s': 3.6 / NAUTICAL_MILE_KM,
  mps: 3.6 / NAUTICAL_MILE_KM,
  m_s: 3.6 / NAUTICAL_MILE_KM,
  'km/h': 1 / NAUTICAL_MILE_KM,
  kmh: 1 / NAUTICAL_MILE_KM,
  kph: 1 / NAUTICAL_MILE_KM,
  km_h: 1 / NAUTICAL_MILE_KM,
  mph: STATUTE_MILE_KM / NAUTICAL_MILE_KM,
  'mp/h': STATUTE_MILE_KM / NAUTICAL_MILE_KM,
};

const METRES: { readonly [name: string]: number } = {
  m: 1,
  meter: 1,
  metre: 1,
  ft: FOOT_M,
  feet: FOOT_M,
  foot: FOOT_M,
  "'": FOOT_M,
};

/** Knots in one of a unit of speed as forecasts name it; null where it is none. */
export function knotsIn(unit: string): number | null {
  return lookUp(KNOTS, unit);
}

/** Metres in one of a unit of height as forecasts name it; null where it is none. */
export function metresIn(unit: string): number | null {
  return lookUp(METRES, unit);
}

/** To 9 digits, so that 14.816 km/h is 8 kn and not 8.000000000000002. */
export function tidy(value: number): number {
  return Number(value.toPrecision(9));
}

function lookUp(table: { readonly [name: string]: number }, unit: string): number | null {
  const name = unit.trim().toLowerCase();
  const one = Object.hasOwn(table, name) ? name : name.replace(/s$/, '');
  return Object.hasOwn(table, one) ? table[one]! : null;
}
