import { z } from 'zod';
import { WAYS_TO_READ } from '../boat/ways-to-read.ts';
import { SQUALLS } from '../forecast/squalls.ts';

const id = z.string().regex(/^[a-z0-9][a-z0-9-]{0,63}$/);
const instant = z.iso.datetime({ precision: null });
const text = z.string().max(2000);
const litres = z.number().min(-1e6).max(1e6);
const share = z.number().min(-1).max(3);
const count = z.number().min(0).max(1e6);
const how = z.enum(WAYS_TO_READ);
const squalls = z.enum(SQUALLS);
/** What a leaking place shows, worst last; the classes are those of US Army equipment manuals (model 3.7). */
const leakClass = z.enum(['dry', 'wet', 'drops', 'falls']);

/** The fields of every kind of entry, in file units (litres, hours, knots, metres, hPa, UTC instants). One schema a kind. */
export const entryKinds = {
  /** The engine's meter. `swapped`: the first reading of a new meter. */
  hours: z.looseObject({ engine: id, reading: z.number().min(0).max(1e6), swapped: z.boolean().optional() }),
  /** A look at a level, in litres or as a share: 0 the low mark, 1 the full mark. */
  dip: z.looseObject({
    fluid: id,
    level: litres.optional(),
    share: share.optional(),
    off: z.enum(['below', 'above']).optional(),
    how: how.optional(),
    rough: z.boolean().optional(),
  }),
  topup: z.looseObject({
    fluid: id,
    amount: z.number().min(0).max(1e6),
    level: litres.optional(),
    share: share.optional(),
    from: id.optional(),
  }),
  change: z.looseObject({
    fluid: id,
    level: litres.optional(),
    share: share.optional(),
    from: id.optional(),
  }),
  /** `cause`: what of a table for `trace` it was meant to put right. */
  job: z.looseObject({
    item: id,
    text,
    minutes: z.number().min(0).max(1e5).optional(),
    cause: id.optional(),
  }),
  leak: z.looseObject({
    item: id,
    class: leakClass,
    dropsPerMinute: z.number().min(0).max(1e5).optional(),
    text: text.optional(),
  }),
  anode: z.looseObject({
    anode: id,
    share: z.number().min(0).max(1.2).optional(),
    massKg: z.number().min(0).max(1e3).optional(),
    diameterMm: z.number().min(0).max(1e4).optional(),
    lengthMm: z.number().min(0).max(1e4).optional(),
    flakes: z.boolean().optional(),
  }),
  renew: z.looseObject({ anode: id, from: id.optional() }),
  use: z.looseObject({ spare: id, count, for: text.optional(), text: text.optional() }),
  stow: z.looseObject({
    spare: id,
    count,
    cost: z.number().min(0).max(1e9).optional(),
    text: text.optional(),
  }),
  count: z.looseObject({ spare: id, count, text: text.optional() }),
  service: z.looseObject({
    service: id,
    uses: z
      .array(z.object({ spare: id, count }))
      .max(100)
      .optional(),
  }),
  check: z.looseObject({
    check: id,
    ok: z.boolean().optional(),
    value: z.number().min(-1e9).max(1e9).optional(),
  }),
  dated: z.looseObject({ item: id, expires: z.iso.date() }),
  /** Evidence for `trace`: looked for, and seen or not; or looked for, and it could not be told. */
  clue: z.looseObject({
    item: id,
    clue: z.string().max(64),
    seen: z.boolean().optional(),
    cannotTell: z.literal(true).optional(),
  }),
  plan: z.looseObject({
    passage: id,
    crew: z.number().int().min(1).max(100).optional(),
    reserveDays: z.number().min(0).max(100).optional(),
  }),
  /** A tidal gate at the start of a leg, the leg's place in the passage's `legs`, from 0: open from one instant to the other. */
  gate: z.looseObject({ passage: id, leg: z.number().int().min(0).max(1000), from: instant, to: instant }),
  left: z.looseObject({ anchorage: id.optional() }),
  arrived: z.looseObject({ anchorage: id.optional() }),
  weather: z.looseObject({
    wind: z.number().min(0).max(250).optional(),
    gust: z.number().min(0).max(300).optional(),
    dir: z.number().min(0).max(360).optional(),
    seas: z.number().min(0).max(40).optional(),
    pressure: z.number().min(850).max(1100).optional(),
    squalls: squalls.optional(),
  }),
  /** Which of the forecasts aboard counts from then on, by its name in forecasts/ without the `.json`; `newest`: the one issued last, as without a choice. */
  forecast: z.looseObject({ counts: z.string().regex(/^(?:newest|\d{8}T\d{4}Z-[0-9a-f]{12})$/) }),
  decision: z.looseObject({
    verdict: z.enum(['go', 'hold', 'not ready']),
    score: z.number().min(0).max(100).nullable(),
    choice: z.enum(['go', 'stay']),
    text: text.optional(),
  }),
  remark: z.looseObject({ text, item: id.optional() }),
  strike: z.looseObject({ entry: z.string().max(64), why: text.optional() }),
};

export type EntryKind = keyof typeof entryKinds;
export type Fields<K extends EntryKind> = z.output<(typeof entryKinds)[K]>;

/** What a person or a script gives: the entry before it has its place in the log. `at` is when it happened, UTC. */
export type Draft = {
  [K in EntryKind]: { kind: K; at: string; by?: string; key?: string } & Fields<K>;
}[EntryKind];

/** One line of the log. `rec` is when it was typed, `lc` its Lamport count, `n` its writer's own number. */
export type Entry = Draft & {
  readonly id: string;
  readonly writer: string;
  readonly n: number;
  readonly lc: number;
  readonly rec: string;
};

export type EntryOf<K extends EntryKind> = Extract<Entry, { kind: K }>;

/** The field that names an item, for the kinds that have one. */
export const itemField: { readonly [K in EntryKind]?: string } = {
  hours: 'engine',
  dip: 'fluid',
  topup: 'fluid',
  change: 'fluid',
  job: 'item',
  leak: 'item',
  anode: 'anode',
  renew: 'anode',
  use: 'spare',
  stow: 'spare',
  count: 'spare',
  service: 'service',
  check: 'check',
  dated: 'item',
  clue: 'item',
  remark: 'item',
};
