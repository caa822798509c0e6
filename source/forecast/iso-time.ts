const INSTANT = /^(\d{4}-\d\d-\d\d)[T ](\d\d:\d\d)(?::(\d\d)(?:\.\d{1,6})?)?(Z|[+-]\d\d(?::?\d\d)?)?$/i;

/**
 * An ISO 8601 time as ms since 1970 UTC; one without an offset is `aheadSeconds` ahead of UTC, and null where that is not known. Null for anything else,
 * days that do not exist among it.
 */
export function instantFrom(text: string, aheadSeconds: number | null): number | null {
  const found = INSTANT.exec(text.trim());
  if (!found) return null;
  const [, date = '', time = '', second = '00', offset] = found;
  const wall = Date.parse(`${date}T${time}:${second}Z`);
  if (Number.isNaN(wall) || !new Date(wall).toISOString().startsWith(date)) return null;
  const ahead = offset === undefined ? aheadSeconds : secondsAhead(offset);
  return ahead === null ? null : wall - ahead * 1000;
}

/** An ISO 8601 duration in days, hours and minutes as ms: `P1DT6H`, `PT30M`. Null for anything else. */
export function durationFrom(text: string): number | null {
  const found = /^P(?:(\d{1,4})D)?(?:T(?:(\d{1,4})H)?(?:(\d{1,5})M)?)?$/.exec(text.trim());
  if (!found || text.length < 3) return null;
  const [, days = 0, hours = 0, minutes = 0] = found;
  const total = ((Number(days) * 24 + Number(hours)) * 60 + Number(minutes)) * 60_000;
  return total > 0 ? total : null;
}

function secondsAhead(offset: string): number {
  if (offset.toUpperCase() === 'Z') return 0;
  const [hours = '0', minutes = '0'] = offset.slice(1).match(/\d\d/g) ?? [];
  return (offset.startsWith('-') ? -1 : 1) * (Number(hours) * 3600 + Number(minutes) * 60);
}
