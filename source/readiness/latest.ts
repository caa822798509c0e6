/**
 * The latest departures of one requirement, one a simulated passage, in hours from now: it holds when leaving at d or before.
 * -Infinity: fails even now; Infinity: never fails.
 */
export type Latest = Float64Array;

export function always(count: number): Latest {
  return new Float64Array(count).fill(Infinity);
}

export function never(count: number): Latest {
  return new Float64Array(count).fill(-Infinity);
}

/** Both must hold: the earlier of the two latest departures, passage by passage, into `into`. */
export function both(into: Latest, other: Latest): void {
  for (let i = 0; i < into.length; i += 1) if (other[i]! < into[i]!) into[i] = other[i]!;
}

/** In how many passages it holds, for every departure 0..lastHour: one sweep and a running sum. */
export function curveOf(latest: Latest, lastHour: number): Float64Array {
  const ends = new Float64Array(lastHour + 1);
  for (let i = 0; i < latest.length; i += 1) {
    const hour = Math.min(Math.floor(latest[i]!), lastHour);
    if (hour >= 0) ends[hour] = ends[hour]! + 1;
  }
  for (let hour = lastHour - 1; hour >= 0; hour -= 1) ends[hour] = ends[hour]! + ends[hour + 1]!;
  return ends;
}

/** The last hour up to which the chance stays at or above the threshold: 'beyond' to the end of what is looked at, null when it does not hold now. */
export function lastGoodHour(
  curve: Float64Array,
  count: number,
  threshold: number,
): number | 'beyond' | null {
  const first = curve.findIndex((held) => held < threshold * count);
  if (first === -1) return 'beyond';
  return first === 0 ? null : first - 1;
}
