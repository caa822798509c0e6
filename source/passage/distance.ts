import type { Leg, Passage } from '../boat/passage.ts';

/** Latitude and longitude in decimal degrees on WGS 84; south and west below zero. */
export type Position = readonly [number, number];

/** WGS 84: semi-major axis in metres and flattening (NIMA TR8350.2). */
const AXIS_M = 6378137;
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY = Math.sqrt(FLATTENING * (2 - FLATTENING));
/** The international nautical mile in metres (NIST SP 811, B.8). */
const NM_M = 1852;
const RADIANS = Math.PI / 180;

/** A passage's length in nautical miles: each leg as given, else along the rhumb line. */
export function passageNm(passage: Passage): number {
  return passage.legs.reduce((sum, leg) => sum + legNm(leg), 0);
}

export function legNm(leg: Leg): number {
  return leg.nm ?? rhumbLine(leg.from, leg.to).nm;
}

/**
 * The rhumb line between two positions, the short way round: length in nautical miles, course in degrees true.
 * Meridian distance and isometric latitude on the ellipsoid (Snyder, Map Projections: A Working Manual, USGS 1395, eqs 3-1, 3-21).
 */
export function rhumbLine(from: Position, to: Position): { readonly nm: number; readonly courseDeg: number } {
  const [south, north] = [from[0] * RADIANS, to[0] * RADIANS];
  const east = wrapped((to[1] - from[1]) * RADIANS);
  const rise = meridianM(north) - meridianM(south);
  const stretched = isometric(north) - isometric(south);
  const metresEast =
    east * (Math.abs(north - south) < 1e-9 ? parallelRadiusM((north + south) / 2) : rise / stretched);
  const courseDeg = Math.atan2(metresEast, rise) / RADIANS;
  return { nm: Math.hypot(rise, metresEast) / NM_M, courseDeg: (courseDeg + 360) % 360 };
}

function wrapped(radians: number): number {
  return radians - 2 * Math.PI * Math.round(radians / (2 * Math.PI));
}

function isometric(latitude: number): number {
  const sine = Math.sin(latitude);
  return Math.atanh(sine) - ECCENTRICITY * Math.atanh(ECCENTRICITY * sine);
}

function parallelRadiusM(latitude: number): number {
  return (AXIS_M * Math.cos(latitude)) / Math.sqrt(1 - (ECCENTRICITY * Math.sin(latitude)) ** 2);
}

/** Distance along the meridian from the equator (Snyder eq 3-21: the series to the sixth power of the eccentricity). */
function meridianM(latitude: number): number {
  const e2 = ECCENTRICITY ** 2;
  const e4 = e2 ** 2;
  const e6 = e2 ** 3;
  return (
    AXIS_M *
    ((1 - e2 / 4 - (3 * e4) / 64 - (5 * e6) / 256) * latitude -
      ((3 * e2) / 8 + (3 * e4) / 32 + (45 * e6) / 1024) * Math.sin(2 * latitude) +
      ((15 * e4) / 256 + (45 * e6) / 1024) * Math.sin(4 * latitude) -
      ((35 * e6) / 3072) * Math.sin(6 * latitude))
  );
}
