import type { Fluid } from '../boat/fluid.ts';
import { nearest } from '../boat/nearest.ts';
import { isOutsideTank, levelOf, mostIn } from '../condition/level.ts';
import type { FirstReadings } from '../logbook/first-entries.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { amountFrom, levelFrom, numberIn, yesNoFrom } from './amounts.ts';
import { momentFrom } from './moments.ts';
import type { Clock } from './new-boat.ts';
import { positionFrom } from './positions.ts';
import { shownUnit } from './preferred.ts';
import { amountWords } from './say.ts';
import { isUnit } from './units.ts';

/** How an answer as typed becomes whatever it is put into, or what was expected. */
type Read<T> = (typed: string, clock: Clock) => Result<T>;
type Put<V, T> = (value: V) => T;

/** `least` may be reached, `above` may not. */
type Range = ({ readonly least: number } | { readonly above: number }) & { readonly most: number };

/** An amount in a unit people type in others too, or in the own unit of a check. */
export function amountIn<T>(
  field: string,
  unit: string | null,
  range: Range & { readonly about?: number },
  put: Put<number, T>,
): Read<T> {
  return (typed) => {
    const read = isUnit(unit) ? amountFrom(typed, unit, field, range.about) : numberIn(typed, unit, field);
    if (!read.ok) return read;
    const value = numberOf(read.value);
    const low = 'least' in range ? value < range.least : value <= range.above;
    if (!low && value <= range.most) return good(put(value));
    const { name, each } = shownUnit(unit ?? '', range.about ?? range.most);
    const figure = (amount: number) => numberOf(amount / each, 6);
    const from = 'least' in range ? figure(range.least) : `more than ${figure(range.above)}`;
    const expected = `${from} to ${figure(range.most)} ${name}`.trimEnd();
    return bad(notUnderstood(field, typed, expected));
  };
}

export function wholeIn<T>(
  field: string,
  what: string,
  least: number,
  most: number,
  put: Put<number, T>,
): Read<T> {
  return (typed) => {
    const read = numberIn(typed, what, field);
    if (read.ok && Number.isInteger(read.value) && read.value >= least && read.value <= most)
      return good(put(read.value));
    return bad(notUnderstood(field, typed, `a whole number of ${what}, ${least} to ${most}`, '2'));
  };
}

const MOST_LETTERS = 200;

export function nameIn<T>(field: string, put: Put<string, T>): Read<T> {
  return (typed) => {
    const name = typed.trim();
    if (name !== '' && name.length <= MOST_LETTERS && !/\p{Cc}/u.test(name)) return good(put(name));
    return bad(notUnderstood(field, typed, `a name of 1 to ${MOST_LETTERS} letters, on one line`));
  };
}

export function choiceOf<W extends string, T>(field: string, words: readonly W[], put: Put<W, T>): Read<T> {
  return (typed) => {
    const word = words.find((one) => one === typed.trim().toLowerCase());
    if (word !== undefined) return good(put(word));
    const near = nearest(typed.trim().toLowerCase(), words);
    return bad(notUnderstood(field, typed, `one of ${words.join(', ')}`, near ?? words[0]));
  };
}

export function yesNoIn<T>(field: string, put: Put<boolean, T>): Read<T> {
  return (typed) => {
    const read = yesNoFrom(typed, field);
    return read.ok ? good(put(read.value)) : read;
  };
}

/** A level a tank with these marks can show; nothing stands before it that it could be a change of. */
export function levelIn<T>(fluid: Fluid, put: Put<FirstReadings['levels'][string], T>): Read<T> {
  return (typed) => {
    const read = levelFrom(typed, fluid.id, fluid.full);
    if (!read.ok) return read;
    const level = read.value;
    const litres = 'change' in level || 'off' in level ? fluid.low : (levelOf(fluid, level) ?? fluid.low);
    const most = amountWords(mostIn(fluid), 'L', fluid.full);
    if ('change' in level || isOutsideTank(fluid, litres))
      return bad(
        notUnderstood(fluid.id, typed, `a level from 0 to ${most}, a share from low to full, or off`, 'full'),
      );
    return good(put('level' in level ? { level: numberOf(level.level) } : level));
  };
}

export function momentBefore<T>(field: string, put: Put<number, T>): Read<T> {
  return (typed, { now, zone }) => {
    const at = momentFrom(typed, now, zone);
    if (at !== null && at <= now) return good(put(at));
    return bad(notUnderstood(field, typed, 'a moment that has been', '2026-01-15, "20 days ago"'));
  };
}

export function positionIn<T>(field: string, put: Put<readonly [number, number], T>): Read<T> {
  return (typed) => {
    const read = positionFrom(typed, field);
    return read.ok ? good(put(read.value)) : read;
  };
}

/** The same, where `off` switches it off. */
export function orOff<T>(read: Read<T>, off: () => T): Read<T> {
  return (typed, clock) => (typed.trim().toLowerCase() === 'off' ? good(off()) : read(typed, clock));
}

/** Without the dust that conversion leaves. */
export function numberOf(value: number, digits = 12): number {
  return Number(value.toPrecision(digits));
}

function notUnderstood(field: string, text: string, expected: string, example?: string): Trouble {
  return { kind: 'not understood', field, text, expected, ...(example === undefined ? {} : { example }) };
}
