/** Standard gravity, m/s2: exact, 3rd CGPM (1901). */
const GRAVITY = 9.80665;
/** A sharp-edged hole passes so much of what an ideal one would: published answers on flooding boats give about 0.6. */
const SHARP_EDGE = 0.6;
/** A pump at work, with hose, lift and tired volts, does about half of what its label says: a published seamanship tip (2021). */
const PUMP_AT_WORK = 0.5;

/** Litres a minute through an opening that far under water: Torricelli's law, area x root(2 g depth) x discharge. */
export function inflowLPerMinute(diameterMm: number, depthM: number, discharge = SHARP_EDGE): number {
  const areaM2 = Math.PI * (diameterMm / 2000) ** 2;
  return discharge * areaM2 * Math.sqrt(2 * GRAVITY * depthM) * 60_000;
}

/** Litres a minute a pump really moves, from the litres an hour on its label. */
export function pumpedLPerMinute(labelLPerHour: number): number {
  return (labelLPerHour * PUMP_AT_WORK) / 60;
}
