import { beaufortKn } from '../forecast/beaufort.ts';
import { bad, good, type Result } from '../trouble.ts';
import { numberFrom } from './numbers.ts';
import { preferred, shownUnit } from './preferred.ts';
import { twoUnits, type Unit, unitFactors } from './units.ts';

/** What can be typed besides a bare number, in plain words, and an example, by unit. */
const ASKED: { readonly [unit in Unit]: readonly [otherwise: string | null, example: string] } = {
  L: ['an amount with its unit', '0.4, 300 ml, 0.4 qt'],
  h: [null, '3412.6, 45 min'],
  min: [null, '20, 1.5 h'],
  days: [null, '10, 2 weeks'],
  kn: ['a wind with its unit', '18, f6, 9 m/s'],
  m: ['a height with its unit', '1.5, 5 ft'],
  kg: ['a weight with its unit', '0.35, 350 g, 0.8 lb'],
  mm: ['a length with its unit', '16, 5/8 in'],
  hPa: ['a pressure with its unit', '1013, 29.92 inHg'],
  nm: [null, '62'],
};

/**
 * An amount as people type it, in the file unit: `300 ml`, `0.4 qt`, `1 1/2`, `2,5`, `f6`, `29.92 inHg`. Without a unit it is in the
 * one preferred for an amount of `about`. What could be two things (a bare gallon, 3,412) is in trouble with what to choose from, unless it is one
 * preferred; `field` is how the trouble names it.
 */
export function amountFrom(typed: string, unit: Unit, field: string, about = 0): Result<number> {
  const [otherwise] = ASKED[unit];
  const example = exampleOf(unit);
  const { said, each } = shownUnit(unit, about);
  const expected = otherwise === null ? said : `${said}, or ${otherwise}`;
  const trouble = (wants: string, choice: string) =>
    bad({ kind: 'not understood', field, text: typed, expected: wants, example: choice });
  const special = unit === 'kn' ? beaufortKn(typed) : unit === 'h' ? clockHours(typed) : null;
  if (special !== null) return good(special);

  const read = numberFrom(typed);
  if (read === 'ambiguous') return trouble('a number with a point, or without marks', bothWays(typed));
  if (read === null) return trouble(expected, example);
  const name = read.rest.replace(/\.$/, '');
  if (name === '') return good(read.value * each);
  const factors = unitFactors[unit];
  if (Object.hasOwn(factors, name)) return good(read.value * factors[name]!);
  if (unit === 'L' && Object.hasOwn(twoUnits, name) && preferred().volume !== 'litres')
    return good(
      read.value *
        factors[`${preferred().volume === 'US' ? 'us' : 'imp'} ${name === 'oz' ? 'fl oz' : name}`]!,
    );
  if (unit === 'L' && Object.hasOwn(twoUnits, name))
    return trouble(`${twoUnits[name]}`, choices(typed, name));
  return trouble(expected, example);
}

/** Examples of an amount as it can be typed, a bare number in the unit preferred first. */
export function exampleOf(unit: Unit): string {
  if (unit === 'kn' && preferred().wind === 'm/s') return '9, f6, 18 kn';
  if (unit === 'm' && preferred().height === 'ft') return '5, 1.5 m';
  return ASKED[unit][1];
}

/** A share as people type it, where 1 is all of it: `60%`, `1/4`, `0.25`, `half`, `full`, `new`, `low`. */
export function shareFrom(typed: string, field: string): Result<number> {
  const word = typed.trim().toLowerCase();
  if (Object.hasOwn(SHARES, word)) return good(SHARES[word]!);
  const read = numberFrom(typed);
  if (read !== null && read !== 'ambiguous') {
    if (read.rest === '%' || read.rest === 'percent') return good(read.value / 100);
    if (read.rest === '' && Math.abs(read.value) <= MOST_SHARE) return good(read.value);
  }
  const expected = 'a share, with % or as a part of 1';
  return bad({ kind: 'not understood', field, text: typed, expected, example: '60%, 1/4, 0.25, half, full' });
}

/** Beyond this a bare number is rather a percentage than a share, and is asked about. */
const MOST_SHARE = 3;

const SHARES: { readonly [word: string]: number } = {
  full: 1,
  new: 1,
  'three quarters': 0.75,
  half: 0.5,
  quarter: 0.25,
  low: 0,
};

/** A level as people type it: litres, a share of low to full, off the stick, or a change from the level before. */
export type Level =
  | { readonly level: number }
  | { readonly share: number }
  | { readonly off: 'below' | 'above' }
  | { readonly change: number };

/**
 * `2.5`, `300 ml`: an amount. `1/4`, `60%`, `half`, `full`, `low`: a share from low mark to full mark. `off`, `over`: off the stick. `+0.2`, `-300 ml`: a
 * change; a lone fraction with a sign could be of a litre or of the stick, and is asked about. A bare number is in the unit preferred for what holds `about`.
 */
export function levelFrom(typed: string, field: string, about = 0): Result<Level> {
  const word = typed.trim().toLowerCase();
  const trouble = { kind: 'not understood' as const, field, text: typed };
  if (Object.hasOwn(OFF_THE_STICK, word)) return good({ off: OFF_THE_STICK[word]! });
  const signed = /^[+\-\u2212]/.test(word);
  const fraction = isLoneFraction(typed);
  if (fraction && signed) {
    return bad({
      ...trouble,
      expected: 'a change with its unit',
      example: `${typed.trim()} ${shownUnit('L', about).name}`,
    });
  }
  if (fraction || word.endsWith('%') || Object.hasOwn(SHARES, word)) {
    const share = shareFrom(typed, field);
    return share.ok ? good({ share: share.value }) : share;
  }
  const amount = amountFrom(typed, 'L', field, about);
  if (amount.ok) return good(signed ? { change: amount.value } : { level: amount.value });
  const [asked] = amount.troubles;
  const { said } = shownUnit('L', about);
  if (asked?.kind !== 'not understood' || asked.expected !== `${said}, or ${ASKED.L[0]}`) return amount;
  const expected = `${said}, a share from low to full, or off the stick`;
  return bad({ ...trouble, expected, example: '0.8, 300 ml, 1/4, 60%, full, off, +0.2' });
}

function isLoneFraction(typed: string): boolean {
  const read = numberFrom(typed);
  return read !== null && read !== 'ambiguous' && read.fraction && read.rest === '';
}

const OFF_THE_STICK: { readonly [word: string]: 'below' | 'above' } = {
  off: 'below',
  below: 'below',
  nothing: 'below',
  none: 'below',
  over: 'above',
  above: 'above',
};

/** `y`, `yes`, `ok`, `n`, `no` and the like. */
export function yesNoFrom(typed: string, field: string): Result<boolean> {
  const word = typed.trim().toLowerCase();
  if (['y', 'yes', 'ok', 'true'].includes(word)) return good(true);
  if (['n', 'no', 'false', 'not ok'].includes(word)) return good(false);
  return bad({ kind: 'not understood', field, text: typed, expected: 'yes or no', example: 'yes' });
}

/** A number in a unit of the boat's own, as checks have: bare, or with that unit behind it. */
export function numberIn(typed: string, unit: string | null, field: string): Result<number> {
  const read = numberFrom(typed);
  const own = unit?.trim().toLowerCase() ?? '';
  if (read !== null && read !== 'ambiguous' && (read.rest === '' || read.rest === own))
    return good(read.value);
  const expected = unit === null ? 'a number' : `a number of ${unit}`;
  const example = read === 'ambiguous' ? bothWays(typed) : `12.5${unit === null ? '' : ` ${unit}`}`;
  return bad({ kind: 'not understood', field, text: typed, expected, example });
}

/** Hours as a clock shows them: `7:30`, `7h30`, `1 h 20 min`. */
function clockHours(typed: string): number | null {
  const found = /^\s*(\d{1,6}) ?(?::|h|hours?,?) ?(\d{1,2}) ?(?:min|minutes|m)?\s*$/i.exec(typed);
  if (!found || Number(found[2]) > 59) return null;
  return Number(found[1]) + Number(found[2]) / 60;
}

function bothWays(typed: string): string {
  const text = typed.trim();
  return `${text.replace(',', '')} or ${text.replace(',', '.')}`;
}

function choices(typed: string, name: string): string {
  const value = typed.trim().slice(0, -name.length).trim();
  return twoUnits[name]!.split(' or ')
    .map((unit) => `${value} ${unit}`)
    .join(' or ');
}
