import type { Boat } from '../boat/boat.ts';
import type { Draft, EntryKind } from '../logbook/entries.ts';
import { LEAK_WORDS } from './leak-words.ts';
import { nameOf, unitOf } from './names.ts';
import { amountWords, capital, momentHere } from './say.ts';

/** An entry, saved or not yet, as a line of the log reads: what it is about, then what happened; no time, no writer. */
export function entryWords(entry: Draft, boat: Boat): string {
  const name = (id: string) => nameOf(boat, id);
  const say = words[entry.kind] as (entry: Draft, about: About) => string;
  return capital(say(entry, { name, boat }));
}

type DraftOf<K extends EntryKind> = Extract<Draft, { kind: K }>;

interface About {
  readonly boat: Boat;
  /** The name of a thing, or its id where the boat does not have it. */
  name(id: string): string;
}

/** One sentence maker a kind of entry. */
const words: { readonly [K in EntryKind]: (entry: DraftOf<K>, about: About) => string } = {
  hours: (entry, { name }) =>
    `${name(entry.engine)}: meter at ${entry.reading} h${entry.swapped ? ', the first reading of a new meter' : ''}`,
  dip: (entry, about) =>
    `${about.name(entry.fluid)}: ${levelWords(entry, about) ?? offWords(entry.off)}${howWords(entry)}`,
  topup: (entry, about) =>
    `${about.name(entry.fluid)}: ${amountWords(entry.amount, 'L', fullOf(entry.fluid, about))} poured in${after(levelWords(entry, about), ', now ')}${from(entry.from, about)}`,
  change: (entry, about) =>
    `${about.name(entry.fluid)}: drained and refilled${after(levelWords(entry, about), ', now ')}${from(entry.from, about)}`,
  job: (entry, { name }) =>
    `${name(entry.item)}: ${entry.text}${after(entry.minutes, ', ', ' min')}${after(entry.cause, ', for ')}`,
  leak: (entry, { name }) =>
    `${name(entry.item)}: ${LEAK_WORDS[entry.class]}${after(entry.dropsPerMinute, ', ', ' drops a minute')}${after(entry.text, '; ')}`,
  anode: (entry, { name }) =>
    `${name(entry.anode)}: ${anodeWords(entry)}${entry.flakes ? ', flakes when tapped' : ''}`,
  renew: (entry, about) => `${about.name(entry.anode)}: renewed${from(entry.from, about)}`,
  use: (entry, about) =>
    `${about.name(entry.spare)}: ${stock(entry, about)} used${after(entry.for, ' for ')}${after(entry.text, '; ')}`,
  stow: (entry, about) =>
    `${about.name(entry.spare)}: ${stock(entry, about)} put aboard${after(entry.cost, ', cost ')}${after(entry.text, '; ')}`,
  count: (entry, about) =>
    `${about.name(entry.spare)}: ${stock(entry, about)} aboard by count${after(entry.text, '; ')}`,
  service: (entry, about) => `${about.name(entry.service)}: done${partsWords(entry, about)}`,
  check: (entry, about) => `${about.name(entry.check)}: ${answerWords(entry, about)}`,
  dated: (entry, { name }) => `${name(entry.item)}: good until ${entry.expires}`,
  clue: (entry, { name }) =>
    `${name(entry.item)}: clue ${entry.clue} ${entry.cannotTell ? 'cannot be told' : entry.seen ? 'seen' : 'not seen'}`,
  plan: (entry, { name }) =>
    `passage planned: ${name(entry.passage)}${after(entry.crew, ', ', ' aboard')}${after(entry.reserveDays, ', ', ' days in reserve')}`,
  gate: (entry, { name }) =>
    `gate on ${name(entry.passage)}, leg ${entry.leg + 1}: open ${momentHere(Date.parse(entry.from))} to ${momentHere(Date.parse(entry.to))}`,
  left: (entry, { name }) => `left${entry.anchorage === undefined ? '' : ` ${name(entry.anchorage)}`}`,
  arrived: (entry, { name }) =>
    `arrived${entry.anchorage === undefined ? '' : ` at ${name(entry.anchorage)}`}`,
  weather: (entry) => `weather: ${weatherWords(entry)}`,
  forecast: ({ counts }) =>
    counts === 'newest'
      ? 'forecast: the newest counts again'
      : `forecast: that of ${forecastWhen(counts)} counts`,
  decision: (entry) =>
    `decided to ${entry.choice}: the verdict was ${entry.verdict}${entry.score === null ? '' : ` at ${amountWords(entry.score, null)}`}${after(entry.text, '; ')}`,
  remark: (entry, { name }) => `${entry.item === undefined ? '' : `${name(entry.item)}: `}${entry.text}`,
  strike: (entry) => `struck: entry ${entry.entry}${after(entry.why, ', because ')}`,
};

function levelWords(
  { fluid, level, share }: { fluid: string; level?: number | undefined; share?: number | undefined },
  about: About,
): string | null {
  if (level !== undefined) return amountWords(level, 'L', fullOf(fluid, about));
  if (share === undefined) return null;
  if (share === 1) return 'at the full mark';
  if (share === 0) return 'at the low mark';
  return `${amountWords(share, 'share')} of the way from low to full`;
}

/** What it holds, so that all that is said of it is in one unit. */
function fullOf(fluid: string, { boat }: About): number | undefined {
  return boat.fluids.find(({ id }) => id === fluid)?.full;
}

function offWords(off: 'below' | 'above' | undefined): string {
  return off === 'above' ? 'over the full mark' : 'nothing on the stick';
}

function howWords({ how, rough }: DraftOf<'dip'>): string {
  return `${how === undefined ? '' : ` (${how})`}${rough ? ', boat rolling' : ''}`;
}

function anodeWords({ share, massKg, diameterMm, lengthMm }: DraftOf<'anode'>): string {
  if (share !== undefined) return `${amountWords(share, 'share')} left`;
  if (massKg !== undefined) return `weighs ${amountWords(massKg, 'kg')}`;
  return [
    ...(diameterMm === undefined ? [] : [`${amountWords(diameterMm, 'mm')} thick`]),
    ...(lengthMm === undefined ? [] : [`${amountWords(lengthMm, 'mm')} long`]),
  ].join(', ');
}

function stock({ spare, count }: { spare: string; count: number }, { boat }: About): string {
  return amountWords(count, unitOf(boat, spare));
}

function partsWords({ uses }: DraftOf<'service'>, about: About): string {
  if (!uses || uses.length === 0) return '';
  return `, with ${uses.map((part) => `${stock(part, about)} ${about.name(part.spare)}`).join(', ')}`;
}

function answerWords({ check, ok, value }: DraftOf<'check'>, { boat }: About): string {
  if (value !== undefined)
    return amountWords(value, boat.checks.find(({ id }) => id === check)?.unit ?? null);
  return ok ? 'as it should be' : 'not as it should be';
}

function weatherWords({ wind, gust, dir, seas, pressure, squalls }: DraftOf<'weather'>): string {
  return [
    after(amountOr(wind, 'kn'), 'wind '),
    after(amountOr(gust, 'kn'), 'gusts '),
    dir === undefined ? '' : `from ${dir} degrees`,
    after(amountOr(seas, 'm'), 'seas '),
    after(pressure, '', ' hPa'),
    after(squalls, 'squalls: '),
  ]
    .filter((one) => one !== '')
    .join(', ');
}

/** `20260203T0600Z-1a2b3c4d5e6f` as `3 Feb 2026 06:00 UTC`: when it was issued. */
function forecastWhen(name: string): string {
  const digits = name.slice(0, 14).replace('T', '');
  const [year, month, day, hour, minute] = [0, 4, 6, 8, 10].map((at, i) =>
    Number(digits.slice(at, i === 0 ? 4 : at + 2)),
  ) as [number, number, number, number, number];
  return momentHere(Date.UTC(year, month - 1, day, hour, minute));
}

function amountOr(value: number | undefined, unit: string): string | undefined {
  return value === undefined ? undefined : amountWords(value, unit);
}

function from(spare: string | undefined, { name }: About): string {
  return spare === undefined ? '' : `, from ${name(spare)}`;
}

function after(value: string | number | null | undefined, before: string, behind = ''): string {
  return value === undefined || value === null ? '' : `${before}${value}${behind}`;
}
