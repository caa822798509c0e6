/** Whether a bearing lies clockwise from `from` to `to`. */
export function isWithin(
  bearing: number,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  return turnOf(bearing - from) <= turnOf(to - from);
}

/** An angle as a turn clockwise, 0 up to 360 degrees. */
export function turnOf(degrees: number): number {
  return degrees - 360 * Math.floor(degrees / 360);
}
