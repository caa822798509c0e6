import { bad, good, type Result } from '../trouble.ts';
import { amountFrom } from './amounts.ts';

/** Margins in hours; false: any hour. */
type Daylight = { readonly afterSunrise?: number; readonly beforeSunset?: number } | false;

/** `0.5 h after sunrise, 1 h before sunset`, or `off`. */
export function daylightText(daylight: Daylight): string {
  if (daylight === false) return 'off';
  const { afterSunrise = 0, beforeSunset = 0 } = daylight;
  return `${afterSunrise} h after sunrise, ${beforeSunset} h before sunset`;
}

/** The margins as typed: as `daylightText` has them, one of the two, or both bare in that order: `0.5 1`, `30 min, 1 h`. `off`: any hour. */
export function daylightFrom(typed: string, field: string): Result<Daylight> {
  const text = typed.trim().toLowerCase();
  if (text === 'off' || text === 'no') return good(false);
  const said = /^(?:(.+?)\s+after\s+sunrise)?\s*(?:,|;|and|\s)?\s*(?:(.+?)\s+before\s+sunset)?$/.exec(text);
  const [after, before] = said?.[1] || said?.[2] ? [said[1], said[2]] : text.split(/\s*[,;]\s+|\s+(?=\d)/);
  const read = [after ?? '0', before ?? '0'].map((part) => amountFrom(part, 'h', field));
  const [afterSunrise, beforeSunset] = read.map((one) => (one.ok ? one.value : Number.NaN));
  const isBoth = text.split(/\s*[,;]\s+|\s+(?=\d)/).length <= 2 && text !== '';
  if (isBoth && isMargin(afterSunrise) && isMargin(beforeSunset)) return good({ afterSunrise, beforeSunset });
  return bad({
    kind: 'not understood',
    field,
    text: typed,
    expected: 'hours after sunrise and before sunset, each 0 to 12, or off for any hour',
    example: '0.5 after sunrise, 1 before sunset',
  });
}

function isMargin(hours: number | undefined): hours is number {
  return hours !== undefined && hours >= 0 && hours <= 12;
}
