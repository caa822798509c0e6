import { bad, good, type Result } from '../trouble.ts';
import { amountFrom } from './amounts.ts';
import { positionWords } from './positions.ts';

type Position = readonly [latitude: number, longitude: number];

/** Where a leg ends, its length as sailed in nautical miles, and what it is called. */
export interface Leg {
  readonly to: Position;
  readonly nm?: number | undefined;
  readonly place?: string | undefined;
}

/** `47°13.8'N 20°21.0'W, 13.5 nm, Gannister Point`. */
export function legText({ to, nm, place }: Leg): string {
  return [
    positionWords(to),
    ...(nm === undefined ? [] : [`${nm} nm`]),
    ...(place === undefined ? [] : [place]),
  ].join(', ');
}

/** A leg as typed; the length and the place may be left out. `placeFrom` reads where it ends. */
export function legFrom(
  typed: string,
  placeFrom: (text: string) => Result<Position>,
  field: string,
): Result<Leg> {
  const text = typed.trim();
  for (const end of ends(text)) {
    const to = placeFrom(text.slice(0, end).trim());
    if (!to.ok) continue;
    const { nm, place } = lengthAndPlace(text.slice(end).replace(/^[\s,;]+/u, ''), field);
    if (nm !== null && (!(nm > 0) || nm > MOST_NM)) break;
    if (place.length > MOST_LETTERS || (place !== '' && !/\p{L}/u.test(place))) break;
    return good({ to: to.value, ...(nm === null ? {} : { nm }), ...(place === '' ? {} : { place }) });
  }
  return bad({
    kind: 'not understood',
    field,
    text: typed,
    expected: `where the leg ends, then its length above 0 and up to ${MOST_NM} nm, then what it is called`,
    example: `47°13.8'N 20°21'W, 13.5 nm, Gannister Point`,
  });
}

const MOST_NM = 10_000;
const MOST_LETTERS = 200;
/** No position is longer, and an anchorage's name has no more letters. */
const LONGEST = 220;

/** Where the position may end, the longest first: at a blank, a comma, or the end. */
function ends(text: string): readonly number[] {
  const marks = [...text.slice(0, LONGEST).matchAll(/[\s,;]/gu)].map(({ index }) => index);
  return [...marks, text.length].reverse();
}

/** The length has its unit, or a comma or nothing behind it: there are places that begin with a number. */
function lengthAndPlace(rest: string, field: string): { nm: number | null; place: string } {
  const found =
    /^(\d+(?:[.,]\d+)?\s*(?:nm|nautical miles?|miles?|km|m)?)(?:[,;]+\s*|\s*$|(?<=[a-z])\s+)(.*)$/iu.exec(
      rest,
    );
  const read = found ? amountFrom(found[1]!, 'nm', field) : null;
  if (!found || !read?.ok) return { nm: null, place: rest };
  return { nm: Number(read.value.toPrecision(12)), place: found[2]!.trim() };
}
