/** A number as people write it, and what follows it. */
interface Numbered {
  readonly value: number;
  /** The rest, lower case, blanks between words single. */
  readonly rest: string;
  /** Whether it was written as a lone fraction, as in `1/4`: of a whole that the asker knows. */
  readonly fraction: boolean;
}

/** `ambiguous`: it could be two numbers, as 3,412. */
export type NumberRead = Numbered | 'ambiguous' | null;

const LONGEST = 60;

/**
 * The number a text begins with: `2.5`, `2,5`, `1/4`, `1 1/2`, `1½`, `3 412.6`, `3,412.6`, `-0.3`, and the rest of the text. Null where it
 * begins with none.
 */
export function numberFrom(typed: string): NumberRead {
  if (typed.length > LONGEST) return null;
  const text = plain(typed);
  return fractionFrom(text) ?? decimalFrom(text);
}

/** Fractions written as one character are opened, odd blanks and minus signs made plain. */
function plain(typed: string): string {
  return typed
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (one) => ` ${one}`)
    .normalize('NFKD')
    .replace(/\u2044/g, '/')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}

function fractionFrom(text: string): Numbered | null {
  const found = /^([+-]?)(?:(\d{1,6}) )?(\d{1,4}) ?\/ ?(\d{1,4})(?![\d.,/])/.exec(text);
  if (!found) return null;
  const [all, sign, whole, over, under] = found;
  if (Number(under) === 0) return null;
  const size = Number(whole ?? 0) + Number(over) / Number(under);
  return {
    value: sign === '-' ? -size : size,
    rest: text.slice(all.length).trim(),
    fraction: whole === undefined,
  };
}

/** Thousands by blanks, apostrophes, commas or points; the last mark, where it is another one, is the decimal mark. */
const DECIMAL =
  /^([+-]?)(\d{1,3}(?:([ ',.])\d{3})(?:\3\d{3})*(?:(?!\3)[.,]\d+)?|\d{1,12}(?:[.,]\d{1,12})?|[.,]\d{1,12})(?![\d.,/])/;

function decimalFrom(text: string): NumberRead {
  const found = DECIMAL.exec(text);
  if (!found) return null;
  const [all, sign, digits = ''] = found;
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits)) return 'ambiguous';
  const size = Number(withPoint(digits));
  return { value: sign === '-' ? -size : size, rest: text.slice(all.length).trim(), fraction: false };
}

function withPoint(digits: string): string {
  const joined = digits.replace(/[ ']/g, '');
  const marks = joined.match(/[.,]/g) ?? [];
  if (marks.length <= 1) return joined.replace(',', '.');
  const last = joined.lastIndexOf(marks.at(-1)!);
  const isDecimal = marks.at(-1) !== marks[0];
  const whole = joined.slice(0, last).replace(/[.,]/g, '');
  return isDecimal ? `${whole}.${joined.slice(last + 1)}` : joined.replace(/[.,]/g, '');
}
