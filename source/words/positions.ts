import { bad, good, type Result } from '../trouble.ts';

/**
 * A position as typed, latitude then longitude in decimal degrees, south and west below zero: `56.41 -5.47`, `56°24.6'N 5°28.2'W`, `N56 24.6 W5 28.2`.
 * Without letters both are decimal degrees with their signs. Only n, s, e and w: an o is east in some languages and west in others.
 */
export function positionFrom(typed: string, field: string): Result<readonly [number, number]> {
  // Where there is no degree sign, an o between two figures stands for it.
  const text = typed
    .trim()
    .toUpperCase()
    .slice(0, LONGEST)
    .replace(/(?<=\d)O(?=\d)/g, '°');
  const [latitude, longitude] = plain(text) ?? lettered(text) ?? [Number.NaN, Number.NaN];
  if (Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180) return good([latitude, longitude]);
  return bad({
    kind: 'not understood',
    field,
    text: typed,
    expected: 'latitude and longitude, in decimal degrees or with n or s and e or w',
    example: `56.41 -5.47, or 56°24.6'N 5°28.2'W`,
  });
}

const LONGEST = 60;
/** With decimal commas a blank must stand between the two. */
const COMMAS = /^([+\-\u2212]?\d{1,3},\d{1,10})°?[;\s]+([+\-\u2212]?\d{1,3},\d{1,10})°?$/;
const SIGNED = /^([+\-\u2212]?\d{1,3}(?:\.\d{1,10})?)°?\s*[,;\s]\s*([+\-\u2212]?\d{1,3}(?:\.\d{1,10})?)°?$/;

function plain(text: string): readonly [number, number] | null {
  const found = COMMAS.exec(text) ?? SIGNED.exec(text);
  if (!found) return null;
  const [latitude, longitude] = [found[1]!, found[2]!].map((part) =>
    Number(part.replace('\u2212', '-').replace(',', '.')),
  );
  return [latitude!, longitude!];
}

const ANGLE = String.raw`\d{1,3}(?:[.,]\d{1,10})?(?:[°\s]+\d{1,2}(?:[.,]\d{1,10})?(?:['′’\s]+\d{1,2}(?:[.,]\d{1,10})?)?)?[°'′’"″”]*`;
const AFTER = new RegExp(String.raw`^(${ANGLE})\s*([NS])[\s,;]*(${ANGLE})\s*([EW])$`);
const BEFORE = new RegExp(String.raw`^([NS])\s*(${ANGLE})[\s,;]*([EW])\s*(${ANGLE})$`);

function lettered(text: string): readonly [number, number] | null {
  const after = AFTER.exec(text);
  if (after) return [angle(after[1]!, after[2]!), angle(after[3]!, after[4]!)];
  const before = BEFORE.exec(text);
  return before && [angle(before[2]!, before[1]!), angle(before[4]!, before[3]!)];
}

/** Degrees, minutes, seconds; NaN where there are 60 minutes or more. */
function angle(text: string, letter: string): number {
  const parts = (text.match(/\d+(?:[.,]\d+)?/g) ?? []).map((part) => Number(part.replace(',', '.')));
  const [degrees = Number.NaN, minutes = 0, seconds = 0] = parts;
  if (minutes >= 60 || seconds >= 60) return Number.NaN;
  const size = degrees + minutes / 60 + seconds / 3600;
  return letter === 'S' || letter === 'W' ? -size : size;
}

/** A position in degrees and minutes, as it can be typed again: `47°06.0'N 20°36.0'W`. To a thousandth of a minute, about 2 m. */
export function positionWords([latitude, longitude]: readonly [number, number]): string {
  return `${angleWords(latitude, 'N', 'S')} ${angleWords(longitude, 'E', 'W')}`;
}

function angleWords(angle: number, positive: string, negative: string): string {
  const thousandths = Math.round(Math.abs(angle) * 60_000);
  const minutes = (thousandths % 60_000) / 1000;
  const [whole, part = '0'] = String(minutes).split('.');
  const letter = angle < 0 ? negative : positive;
  return `${Math.floor(thousandths / 60_000)}°${whole!.padStart(2, '0')}.${part}'${letter}`;
}
