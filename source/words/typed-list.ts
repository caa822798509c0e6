import type { Boat } from '../boat/boat.ts';
import { nearest } from '../boat/nearest.ts';
import { bad, good, type Result } from '../trouble.ts';
import { amountFrom, numberIn } from './amounts.ts';
import { unitOf } from './names.ts';
import { numberFrom } from './numbers.ts';
import { shownUnit } from './preferred.ts';

interface Named {
  readonly id: string;
  readonly name: string;
}

/** A comma between two digits is a decimal one. */
const BETWEEN = /\s*(?:;|,(?!\d)|(?<!\d),)\s*/;
const SHOWN_IDS = 3;

/** Ids as typed, commas between them; the name of a thing, or an id in other letters, is as good. */
export function idsFrom(
  typed: string,
  things: readonly Named[],
  field: string,
  of: string,
): Result<readonly string[]> {
  const whole = idOf(typed, things);
  if (whole !== undefined) return good([whole]);
  const ids: string[] = [];
  for (const word of typed.split(BETWEEN).filter((one) => one !== '')) {
    const id = idOf(word, things);
    if (id === undefined) return unknown(word, things, field, of);
    if (!ids.includes(id)) ids.push(id);
  }
  return good(ids);
}

/** The parts of a service as they are typed: `oil-filter 1, engine-oil-can 4.5 L`. */
export function partsText(
  parts: readonly { readonly spare: string; readonly count: number }[],
  boat: Boat,
): string {
  return parts.map(({ spare, count }) => `${spare} ${countText(count, unitOf(boat, spare))}`).join(', ');
}

/** The same from what was typed; a spare without a number is one of it, and the number may stand first. */
export function partsFrom(
  typed: string,
  boat: Boat,
  field: string,
): Result<readonly { readonly spare: string; readonly count: number }[]> {
  const parts: { spare: string; count: number }[] = [];
  for (const part of typed.split(BETWEEN).filter((one) => one !== '')) {
    const { word, count } = spareAndCount(part, boat.spares);
    const spare = idOf(word, boat.spares);
    if (spare === undefined) return unknown(word, boat.spares, field, 'a spare, and how many');
    const unit = unitOf(boat, spare);
    const read = unit === 'each' ? numberIn(count, null, field) : amountFrom(count, unit, field);
    if (!read.ok) return read;
    parts.push({ spare, count: Number(read.value.toPrecision(6)) });
  }
  return good(parts);
}

/** The longest beginning that is a spare, or the whole after a number; what is left counts. */
function spareAndCount(part: string, spares: readonly Named[]): { word: string; count: string } {
  const words = part.replace(/\s*[:×]\s*/gu, ' ').split(/\s+/);
  for (let length = words.length; length > 0; length -= 1) {
    const word = words.slice(0, length).join(' ');
    if (idOf(word, spares) !== undefined) return { word, count: words.slice(length).join(' ') || '1' };
  }
  const isFirst = numberFrom(words[0] ?? '') !== null;
  if (isFirst && words.length > 1) return { word: words.slice(1).join(' '), count: words[0]! };
  const at = words.findIndex((word) => /^[\d.,]/.test(word));
  return at > 0
    ? { word: words.slice(0, at).join(' '), count: words.slice(at).join(' ') }
    : { word: part, count: '1' };
}

function idOf(typed: string, things: readonly Named[]): string | undefined {
  const word = typed.trim().toLowerCase();
  return (
    things.find(({ id }) => id === word) ??
    things.find(({ name }) => name.toLowerCase() === word) ??
    things.find(({ id }) => id === word.replace(/\s+/gu, '-'))
  )?.id;
}

function unknown(word: string, things: readonly Named[], field: string, of: string): Result<never> {
  const near =
    nearest(
      word,
      things.map(({ id }) => id),
    ) ??
    things.find(
      ({ name }) =>
        nearest(word, [name]) !== undefined ||
        (word.trim().length > 2 && name.toLowerCase().startsWith(word.trim().toLowerCase())),
    )?.id;
  const some = things.slice(0, SHOWN_IDS).map(({ id }) => id);
  const example = near ?? (some.length === 0 ? undefined : some.join(', '));
  return bad({
    kind: 'not understood',
    field,
    text: word.trim(),
    expected: things.length === 0 ? `the id of ${of}, and the boat has none` : `the id of ${of}`,
    ...(example === undefined ? {} : { example }),
  });
}

function countText(count: number, unit: 'each' | 'L' | 'm' | 'kg'): string {
  if (unit === 'each') return String(count);
  const { name, each } = shownUnit(unit, count);
  return each === 1 ? `${count} ${name}` : `${Number((count / each).toPrecision(6))} ${name}`;
}
