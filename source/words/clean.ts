import { graphemesOf } from './graphemes.ts';

const MOST_GRAPHEMES = 10_000;
/** Marks on one letter beyond this are not writing. */
const MOST_CODE_POINTS = 8;

const PLAIN = /^[\n\t\x20-\x7e]*$/;

/**
 * Text as it may be drawn: line feed and tab stay; other control characters become their pictures, C1, bidi controls, lone surrogates and line
 * separators U+FFFD; format, private and unassigned characters are dropped, the zero-width joiner kept. At most 8 code points a
 * grapheme and `mostGraphemes` in all; what is cut off shows as U+FFFD or an ellipsis. Linear in what is kept.
 */
export function clean(text: string, mostGraphemes: number = MOST_GRAPHEMES): string {
  if (text.length <= mostGraphemes && PLAIN.test(text)) return text;
  const mostUnits = mostGraphemes * 2 * MOST_CODE_POINTS;
  const drawable = Array.from(text.slice(0, mostUnits), drawn).join('');
  let kept = '';
  let count = 0;
  for (const segment of graphemesOf(drawable)) {
    if (count === mostGraphemes) return `${kept}…`;
    kept += shortened(segment);
    count += 1;
  }
  return text.length > mostUnits ? `${kept}…` : kept;
}

/** The same on one line, for a name or a value inside a sentence: line feeds and tabs become spaces. */
export function cleanLine(text: string, mostGraphemes: number = 80): string {
  return clean(text.slice(0, mostGraphemes * 2 * MOST_CODE_POINTS).replace(/[\r\n\t]+/g, ' '), mostGraphemes);
}

function drawn(character: string): string {
  const code = character.codePointAt(0)!;
  if (code === 0x0a || code === 0x09) return character;
  if (code < 0x20) return String.fromCodePoint(0x2400 + code);
  if (code === 0x7f) return '\u2421';
  if (BECOMES_MARK.test(character)) return '\ufffd';
  if (DROPPED.test(character) && code !== 0x200d) return '';
  return character;
}

/** C1, bidi controls, lone surrogates, line and paragraph separators. */
const BECOMES_MARK = /[\x80-\x9f\p{Bidi_Control}\p{Cs}\p{Zl}\p{Zp}]/u;
const DROPPED = /[\p{Cf}\p{Co}\p{Cn}]/u;

/** The mark in the last place keeps what follows from joining on. */
function shortened(grapheme: string): string {
  const points = [...grapheme];
  return points.length <= MOST_CODE_POINTS
    ? grapheme
    : `${points.slice(0, MOST_CODE_POINTS - 1).join('')}\ufffd`;
}
