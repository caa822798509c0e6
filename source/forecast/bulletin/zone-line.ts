const JOINED = '(?:[->](?:[A-Z]{2}[CZ])?\\d{3})';
/** `LMZ740>742-030315-`: the zones a text is for and the day, hour and minute (UTC) after which it no longer counts. */
const WHOLE = new RegExp(`^([A-Z]{2}[CZ]\\d{3}${JOINED}*)-(\\d{6})-$`);
const BEGUN = new RegExp(`^[A-Z]{2}[CZ]\\d{3}${JOINED}*-$`);

/** A zone line names a few zones; the widest ranges in use stay far below. */
const MOST_ZONES = 100;

const DAY = 86_400_000;

export interface ZoneLine {
  readonly zones: readonly string[];
  /** DDHHMM, without a month. */
  readonly purge: string;
}

/** Reads a zone line in the Universal Geographic Code of the US National Weather Service; `>` is every number between. Null where it is none. */
export function zoneLine(line: string): ZoneLine | null {
  const found = WHOLE.exec(line);
  if (!found) return null;
  const [, codes = '', purge = ''] = found;
  const zones: string[] = [];
  let state = '';
  for (const [, joint, prefix, digits = ''] of codes.matchAll(/([->]?)([A-Z]{2}[CZ])?(\d{3})/g)) {
    state = prefix ?? state;
    const last = Number(zones.at(-1)?.slice(3) ?? digits);
    for (let number = last + 1; joint === '>' && number < Number(digits); number += 1)
      zones.push(`${state}${String(number).padStart(3, '0')}`);
    zones.push(`${state}${digits}`);
  }
  return zones.length > MOST_ZONES ? null : { zones, purge };
}

/** Whether the line may be the first part of a zone line that goes on below. */
export function beginsZoneLine(line: string): boolean {
  return BEGUN.test(line);
}

/** The first instant after the issue (ms) with that day, hour and minute. Null where no month of the next year has it. */
export function purgeInstant(purge: string, issuedAt: number): number | null {
  const [day = 0, hour = 0, minute = 0] = (purge.match(/\d\d/g) ?? []).map(Number);
  if (hour > 23 || minute > 59) return null;
  for (let ahead = 0; ahead <= 62; ahead += 1) {
    const date = new Date(issuedAt + ahead * DAY);
    const at = Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), date.getUTCDate(), hour, minute);
    if (date.getUTCDate() === day && at >= issuedAt) return at;
  }
  return null;
}
