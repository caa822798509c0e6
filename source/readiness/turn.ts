/** Whether a bearing lies clockwise from `from` to `to`. */
export function isWithin(bearing: number, sector: { readonly from: number; readonly to: number }): boolean {
  return turnOf(bearing - sector.from) <= widthOf(sector);
}

/** How far round a sector goes, degrees: 0 to 360 is all the way. */
export function widthOf({ from, to }: { readonly from: number; readonly to: number }): number {
  const wide = turnOf(to - from);
  return wide === 0 && to !== from ? 360 : wide;
}

/** An angle as a turn clockwise, 0 up to 360 degrees. */
export function turnOf(degrees: number): number {
  return degrees - 360 * Math.floor(degrees / 360);
}
