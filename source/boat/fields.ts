import { z } from 'zod';

/**
 * The fields many kinds of thing share. Each builder gives its schema an `error` that says in plain words what belongs there;
 * `read.ts` shows it as it stands, so it holds the unit and the range.
 */
export function amount(unit: string, least: number, most: number) {
  const error = `a number of ${unit}, ${least} to ${most}`;
  return z.number({ error }).min(least, { error }).max(most, { error });
}

/** A part of something, where 1 is all of it. */
export function part(all: string, least: number, most: number) {
  const error = `a number, ${least} to ${most}, where 1 is ${all}`;
  return z.number({ error }).min(least, { error }).max(most, { error });
}

export function whole(what: string, least: number, most: number) {
  const error = `a whole number of ${what}, ${least} to ${most}`;
  return z.int({ error }).min(least, { error }).max(most, { error });
}

export function oneOf<const T extends readonly [string, ...string[]]>(words: T) {
  return z.enum(words, { error: `one of ${words.map((word) => `"${word}"`).join(', ')}` });
}

export function words(most: number) {
  const error = `text of 1 to ${most} characters, in quotes`;
  return z.string({ error }).min(1, { error }).max(most, { error });
}

export function yesNo() {
  return z.boolean({ error: 'true or false, without quotes' });
}

export function id(of: string) {
  const error = `the id of ${of}: small letters, digits and hyphens, at most 64, as in "gear-oil"`;
  return z
    .string({ error: `the id of ${of}, in quotes` })
    .regex(/^[a-z0-9][a-z0-9-]{0,63}$/, { error })
    .refine((text) => text !== 'constructor', { error: `the id of ${of}: any but "constructor"` });
}

/** The longest list read: a boat of a thousand pumps has other worries. */
export const MOST_ENTRIES = 1000;

export function list<T extends z.ZodType>(of: T, what: string) {
  const error = `a list of ${what} in square brackets, at most ${MOST_ENTRIES}`;
  return z.array(of, { error }).max(MOST_ENTRIES, { error }).default([]);
}

export function group<T extends z.core.$ZodLooseShape>(shape: T, what: string) {
  return z.looseObject(shape, { error: `${what}, in curly brackets` });
}

/** A usual figure and how far it strays. */
export const meanAndSd = (unit: string, most: number) => ({
  mean: amount(unit, 0, most).describe(`The usual figure, in ${unit}.`),
  sd: amount(unit, 0, most).describe(
    `How far it strays: one standard deviation, in ${unit}; (a bad day - usual) / 1.3.`,
  ),
});

export const position = z
  .tuple([amount('degrees of latitude', -90, 90), amount('degrees of longitude', -180, 180)], {
    error: 'latitude and longitude in degrees, as in [56.41, -5.47], south and west below zero',
  })
  .describe('Latitude and longitude on WGS 84, in decimal degrees; south and west are below zero.');

/** Directions clockwise from `from` to `to`, with the limits that hold between them. */
export const sector = group(
  {
    from: amount('degrees true', 0, 360).describe(
      'Where the sector begins, in degrees true, going clockwise.',
    ),
    to: amount('degrees true', 0, 360).describe('Where the sector ends, in degrees true.'),
    wind: amount('knots', 0, 200)
      .optional()
      .describe('The most wind borne from this sector, in knots. Wind counts by where it comes from.'),
    seas: amount('metres', 0, 30)
      .optional()
      .describe('The highest significant seas borne from this sector, in metres.'),
  },
  'a sector with from and to in degrees true',
);

export const consequence = oneOf(['vital', 'important', 'minor']);

export const note = words(2000)
  .optional()
  .describe('Anything worth knowing: where it is, what the manual says.');

/** What every item has, whatever its kind. `kind` reads as in "an anode". */
export const itemFields = (kind: string) => ({
  id: id(kind).describe(
    'Its id: small letters, digits and hyphens; unique in the boat. The log names it by this.',
  ),
  name: words(200).describe('Its name as said aboard.'),
  consequence: consequence
    .optional()
    .describe('What it means when it is past its limit: vital bars leaving. By kind where absent.'),
  everyDays: amount('days', 0.01, 10000).optional().describe('How often it is looked at, in days.'),
  minutes: amount('minutes', 0, 100000)
    .optional()
    .describe('Work to put it right or to look at it, in minutes.'),
  note,
});

/** A schema's type without the room it leaves for unknown fields, and not to be changed in place. */
export type Known<T> = T extends readonly [infer A, infer B]
  ? readonly [Known<A>, Known<B>]
  : T extends readonly (infer E)[]
    ? readonly Known<E>[]
    : T extends object
      ? { readonly [K in keyof T as string extends K ? (unknown extends T[K] ? never : K) : K]: Known<T[K]> }
      : T;
