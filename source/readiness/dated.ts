const MS_A_DAY = 86_400_000;

/** The end of a date, UTC: a dated thing fails then (model 5). */
export function endOfDate(expires: string): number {
  return Date.parse(`${expires}T00:00:00Z`) + MS_A_DAY;
}
