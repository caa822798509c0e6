import type { Boat } from '../boat/boat.ts';
import { nearest } from '../boat/nearest.ts';
import type { Holds, PartField } from '../boat/part-fields.ts';
import type { Kind } from '../boat/parts.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { amountFrom, numberIn, yesNoFrom } from './amounts.ts';
import { daylightFrom, daylightText } from './daylight-margins.ts';
import { numberFrom } from './numbers.ts';
import { positionFrom, positionWords } from './positions.ts';
import { shownUnit } from './preferred.ts';
import { rateFrom } from './rates.ts';
import { type Sector, sectorsFrom, sectorsText } from './sectors.ts';
import { type Leg, legFrom, legText } from './typed-leg.ts';
import { idsFrom, partsFrom, partsText } from './typed-list.ts';
import { isUnit, type Unit } from './units.ts';

type Of = Pick<PartField, 'path' | 'holds' | 'expects'>;

/** What a value of boat.json is as it would be typed; empty for none. */
export function textOf(value: unknown, { holds }: Of, boat: Boat): string {
  if (value === undefined) return '';
  if (value === false && holds.is !== 'yes or no') return 'off';
  switch (holds.is) {
    case 'number':
    case 'limit':
    case 'bad day':
      return figureText(value as number, holds.unit);
    case 'yes or no':
      return value ? 'yes' : 'no';
    case 'ids':
      return [value].flat().join(', ');
    case 'parts':
      return partsText(value as Parameters<typeof partsText>[0], boat);
    case 'position':
      return positionWords(value as [number, number]);
    case 'sectors':
    case 'leg sectors':
      return sectorsText(value as readonly Sector[]);
    case 'daylight':
      return daylightText(value as Parameters<typeof daylightText>[0]);
    case 'leg':
      return legText(value as Leg);
    default:
      return String(value);
  }
}

/** What was typed as a value of boat.json, or why it cannot stand there. `about`: what stood there, by which a bare number is of quarts or gallons. */
export function valueFrom(typed: string, field: Of, boat: Boat, about = 0): Result<unknown> {
  const text = typed.trim();
  const { holds, expects } = field;
  const read = readAs(text, holds, nameOf(field), { boat, about });
  if (!read.ok) return withSchemaWords(read, field, text);
  if (holds.is === 'bad day' || holds.is === 'leg') return read;
  const expected = expects(read.value);
  return expected === null ? read : bad(notUnderstood(nameOf(field), text, expected));
}

function readAs(
  text: string,
  holds: Holds,
  name: string,
  { boat, about }: { boat: Boat; about: number },
): Result<unknown> {
  switch (holds.is) {
    case 'limit':
      return /^(off|no)$/i.test(text) ? good(false) : numberOf(text, holds.unit, name, about);
    case 'number':
    case 'bad day':
      return numberOf(text, holds.unit, name, about);
    case 'yes or no':
      return yesNoFrom(text, name);
    case 'choice':
      return choiceFrom(text, holds.words, name);
    case 'id': {
      const read = idsFrom(text, boat[holds.of], name, oneOf(holds.of));
      return read.ok && read.value.length === 1 ? good(read.value[0]) : read;
    }
    case 'ids': {
      const read = idsFrom(text, boat[holds.of], name, oneOf(holds.of));
      return read.ok && holds.single && read.value.length === 1 ? good(read.value[0]) : read;
    }
    case 'parts':
      return partsFrom(text, boat, name);
    case 'position':
      return placeFrom(text, boat, name);
    case 'sectors':
    case 'leg sectors':
      return sectorsFrom(text, name);
    case 'daylight':
      return daylightFrom(text, name);
    case 'leg':
      return legFrom(text, (part) => placeFrom(part, boat, name), name);
    case 'words':
      return good(text);
  }
}

/** Where a number is not read, the schema's own words say what can stand there, its range with it. */
function withSchemaWords(read: Result<unknown>, field: Of, text: string): Result<unknown> {
  const { holds, expects } = field;
  const [trouble] = read.ok ? [] : read.troubles;
  const isFigure = holds.is === 'number' || holds.is === 'limit' || holds.is === 'bad day';
  const asked = trouble?.kind === 'not understood' && / or /.test(trouble.example ?? '');
  const expected = expects(text);
  return isFigure && !asked && expected !== null ? bad(notUnderstood(nameOf(field), text, expected)) : read;
}

/** A position, or the anchorage that lies there, by its id or its name. */
function placeFrom(text: string, { anchorages }: Boat, name: string): Result<readonly [number, number]> {
  const word = text.trim().toLowerCase();
  const known = anchorages.find((one) => one.id === word || one.name.toLowerCase() === word);
  if (known) return good(known.at);
  const read = positionFrom(text, name);
  return read.ok ? good([tidy(read.value[0], 9), tidy(read.value[1], 9)] as const) : read;
}

function choiceFrom(text: string, words: readonly string[], name: string): Result<string> {
  const word = words.find((one) => one.toLowerCase() === text.toLowerCase());
  if (word !== undefined) return good(word);
  const near = nearest(text, words);
  return bad(notUnderstood(name, text, `one of ${words.join(', ')}`, near));
}

function numberOf(text: string, unit: string | null, name: string, about: number): Result<number> {
  const rate = unit?.startsWith('uses ') ? rateFrom(text, unit === 'uses a day' ? 'day' : 'hour') : null;
  if (rate !== null) return good(rate);
  const share = unit === null ? shareOf(text) : null;
  if (share !== null) return good(share);
  const file = fileUnit(unit);
  const read = file === null ? numberIn(text, null, name) : amountFrom(text, file, name, about);
  return read.ok ? good(tidy(read.value, 12)) : read;
}

function shareOf(text: string): number | null {
  const read = numberFrom(text);
  return read === null || read === 'ambiguous' || read.rest !== '%' ? null : tidy(read.value / 100, 12);
}

function figureText(value: number, unit: string | null): string {
  const file = fileUnit(unit);
  if (file === null) return String(tidy(value, unit === null ? 6 : 12));
  const { name, each } = shownUnit(file, value);
  return `${tidy(value / each, 6)} ${name === 'days' && value === 1 ? 'day' : name}`;
}

/** What the schemas call a unit that people type in others too. */
const FILE_UNITS: { readonly [said: string]: Unit } = {
  litres: 'L',
  'litres an engine hour': 'L',
  'litres a day': 'L',
  knots: 'kn',
  metres: 'm',
  kilograms: 'kg',
  millimetres: 'mm',
  'nautical miles': 'nm',
  days: 'days',
  hours: 'h',
  'engine hours': 'h',
  minutes: 'min',
};

function fileUnit(said: string | null): Unit | null {
  const unit = said === null ? undefined : FILE_UNITS[said];
  return unit !== undefined && isUnit(unit) ? unit : null;
}

const ONE_OF: { readonly [kind in Kind]?: string } = {
  engines: 'an engine',
  spares: 'a spare',
  checks: 'a check',
  passages: 'a passage',
  anchorages: 'an anchorage',
};

function oneOf(kind: Kind): string {
  return ONE_OF[kind] ?? 'an item';
}

function nameOf({ path }: Of): string {
  return path.join('.');
}

function notUnderstood(field: string, text: string, expected: string, example?: string): Trouble {
  return {
    kind: 'not understood',
    field,
    text,
    expected: plainly(expected),
    ...(example === undefined ? {} : { example }),
  };
}

/** Quotes and brackets are the file's; here they are not typed. */
export function plainly(expected: string): string {
  return expected.replace(/, (?:in|without) quotes$/u, '').replace(' in square brackets', '');
}

/** Without the dust that conversion leaves. */
function tidy(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}
