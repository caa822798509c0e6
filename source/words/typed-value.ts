import type { Boat } from '../boat/boat.ts';
import { conditionAt } from '../condition/condition-at.ts';
import { type EntryKind, itemField } from '../logbook/entries.ts';
import type { LoadedBoat } from '../outside.ts';
import { bad, good, type Result } from '../trouble.ts';
import { amountFrom, levelFrom, numberIn, shareFrom, yesNoFrom } from './amounts.ts';
import { directionFrom } from './directions.ts';
import { instant } from './figures.ts';
import { momentFrom } from './moments.ts';
import { unitOf } from './names.ts';
import { isUnit } from './units.ts';
import { unknownWord } from './unknown-word.ts';

/** What is being typed: the kind of entry and all its fields as they stand, since what one means may hang on another. */
export interface Typing {
  readonly kind: EntryKind;
  readonly given: ReadonlyMap<string, string>;
  readonly loaded: LoadedBoat;
  readonly now: number;
  readonly zone: string;
}

/** A field as typed, as the fields of the entry it becomes (`level=1/2` becomes a share), in file units. Texts and words from a list stay as they are. */
export function typedValue(field: string, text: string, typing: Typing): Result<Record<string, unknown>> {
  const names = namesFor(field, typing.kind, typing.loaded.boat);
  if (names) return names.includes(text) ? good({ [field]: text }) : bad(unknownWord('item', text, names));
  if (field === 'level') return level(text, typing);
  const read = Object.hasOwn(readers, field) ? readers[field] : undefined;
  if (!read) return good({ [field]: text });
  if (field === 'seen' && CANNOT_TELL.test(text)) return good({ cannotTell: true });
  const value = read(text, field, typing);
  return value.ok ? good({ [field]: tidy(value.value) }) : value;
}

type Reader = (text: string, field: string, typing: Typing) => Result<unknown>;

const inUnit =
  (unit: Parameters<typeof amountFrom>[1]): Reader =>
  (text, field) =>
    amountFrom(text, unit, field);
const plainNumber: Reader = (text, field) => numberIn(text, null, field);
const yesOrNo: Reader = (text, field) => yesNoFrom(text, field);
const seenOrNot: Reader = (text, field) =>
  /^(not )?seen$/i.test(text) ? good(!/^not/i.test(text)) : yesNoFrom(text, field);

/** How a value is read, by the field's name; one meaning in every kind of entry. */
const readers: { readonly [field: string]: Reader } = {
  at: moment,
  from: moment,
  to: moment,
  amount: (text, field, typing) => amountFrom(text, 'L', field, fullOf(typing)),
  reading: inUnit('h'),
  minutes: inUnit('min'),
  reserveDays: inUnit('days'),
  wind: inUnit('kn'),
  gust: inUnit('kn'),
  seas: inUnit('m'),
  pressure: inUnit('hPa'),
  massKg: inUnit('kg'),
  diameterMm: inUnit('mm'),
  lengthMm: inUnit('mm'),
  dir: (text, field) => directionFrom(text, field),
  share: (text, field) => shareFrom(text, field),
  count: (text, field, { given, loaded }) => stock(text, given.get('spare'), loaded, field),
  uses: parts,
  value: (text, field, { given, loaded }) => {
    const unit = loaded.boat.checks.find(({ id }) => id === given.get('check'))?.unit ?? null;
    return isUnit(unit) ? amountFrom(text, unit, field) : numberIn(text, unit, field);
  },
  dropsPerMinute: plainNumber,
  cost: plainNumber,
  crew: plainNumber,
  leg: (text, field, typing) => {
    // People count legs from 1, files from 0.
    const read = plainNumber(text, field, typing);
    return read.ok ? good(Number(read.value) - 1) : read;
  },
  score: (text, field, typing) => (text === 'none' ? good(null) : plainNumber(text, field, typing)),
  swapped: yesOrNo,
  rough: yesOrNo,
  flakes: yesOrNo,
  ok: yesOrNo,
  seen: seenOrNot,
};

/** A clue may be answered a third way. */
const CANNOT_TELL = /^(cannot tell|can't tell|unsure|\?)$/i;

/** The ids a field may hold, where it holds one; null for any other field. */
export function namesFor(field: string, kind: EntryKind, boat: Boat): readonly string[] | null {
  return thingsFor(field, kind, boat)?.map(({ id }) => id) ?? null;
}

function thingsFor(field: string, kind: EntryKind, boat: Boat): readonly { readonly id: string }[] | null {
  if (field === 'passage') return boat.passages;
  if (field === 'anchorage') return boat.anchorages;
  if (field === 'from') return kind === 'gate' ? null : boat.spares;
  if (field !== itemField[kind]) return null;
  const { engines, fluids, anodes, spares, services, checks, dated } = boat;
  switch (field) {
    case 'engine':
      return engines;
    case 'fluid':
      return fluids;
    case 'anode':
      return anodes;
    case 'spare':
      return spares;
    case 'service':
      return services;
    case 'check':
      return checks;
    default:
      return kind === 'dated' ? dated : [engines, fluids, anodes, spares, services, checks, dated].flat();
  }
}

function level(text: string, typing: Typing): Result<Record<string, unknown>> {
  const read = levelFrom(text, 'level', fullOf(typing));
  if (!read.ok) return read;
  if (!('change' in read.value))
    return good(Object.fromEntries(Object.entries(read.value).map(([key, value]) => [key, tidy(value)])));
  const { given, loaded, now } = typing;
  const fluid = conditionAt(loaded.boat, loaded.entries, now).fluids.get(given.get('fluid') ?? '');
  const last = fluid?.events.findLast((event) => event.kind === 'reading');
  if (last?.kind === 'reading') return good({ level: tidy(last.levelL + read.value.change) });
  const expected = 'the level itself: there is no reading before it to change';
  return bad({ kind: 'not understood', field: 'level', text, expected, example: '0.8' });
}

/** What the fluid holds, by which a bare number is of quarts or of gallons. */
function fullOf({ given, loaded }: Typing): number {
  return loaded.boat.fluids.find(({ id }) => id === given.get('fluid'))?.full ?? 0;
}

function moment(text: string, field: string, { now, zone }: Typing): Result<string> {
  const at = momentFrom(text, now, zone);
  if (at !== null) return good(instant(at));
  const expected = 'a moment: with Z, or by the clocks here';
  const example = '2026-02-03T07:40Z, "yesterday 18:00", 07:40, "3 h ago"';
  return bad({ kind: 'not understood', field, text, expected, example });
}

/** A count of stock, in what the spare is counted in. */
function stock(text: string, spare: string | undefined, { boat }: LoadedBoat, field: string): Result<number> {
  const unit = unitOf(boat, spare ?? '');
  const wanted = boat.spares.find(({ id }) => id === spare)?.wanted;
  return unit === 'each' ? numberIn(text, null, field) : amountFrom(text, unit, field, wanted);
}

/** `impellers:1, filters:2`; without a number, one. */
function parts(text: string, field: string, { loaded }: Typing): Result<{ spare: string; count: unknown }[]> {
  const ids = loaded.boat.spares.map(({ id }) => id);
  const found: { spare: string; count: unknown }[] = [];
  for (const part of text.split(',')) {
    const [spare = '', count = '1'] = part.split(':').map((word) => word.trim());
    if (!ids.includes(spare)) return bad(unknownWord('item', spare, ids));
    const read = stock(count, spare, loaded, field);
    if (!read.ok) return read;
    found.push({ spare, count: tidy(read.value) });
  }
  return good(found);
}

/** Without the dust that conversion leaves: 350 ml is 0.35 L, not 0.35000000000000003. */
function tidy<T>(value: T): T {
  return typeof value === 'number' ? (Number(value.toPrecision(12)) as T) : value;
}
