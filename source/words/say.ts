import { wallOf } from '../maths/wall-clock.ts';
import { preferred, preferredZone, shownUnit } from './preferred.ts';

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const HOURS = new Set(['h', 'engine h', 'engine hours']);

/** `gear oil is low` as `Gear oil is low.` */
export function sentence(phrase: string): string {
  const whole = capital(phrase);
  return /[.!?]$/.test(whole) ? whole : `${whole}.`;
}

export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** A score (a percentage) as `97 in 100`: rounded down, so that a doubt is never rounded away. */
export function hundred(score: number): string {
  return `${Math.floor(score + 1e-9)} in 100`;
}

/** A chance of something bad, 0..1, as `4 in 100`; `less than 1 in 100` where it is smaller, or was never drawn. */
export function badHundred(chance: number): string {
  return chance < 0.01 ? 'less than 1 in 100' : `${Math.round(chance * 100)} in 100`;
}

/** How sure something is, 0..1, as `81 in 100`; `more than 99 in 100` where it is surer: nothing read off a log is certain. */
export function goodHundred(chance: number): string {
  return chance > 0.99 ? 'more than 99 in 100' : hundred(100 * chance);
}

/**
 * `0.85 L`, `38 h`, `40 %`, `2`: at most three significant digits below a thousand, whole numbers above; hours to a tenth. `value` is in file units, the
 * words in those preferred. `about`: what is said beside it, so that all of it is in one unit.
 */
export function amountWords(value: number, unit: string | null, about = value): string {
  if (unit === 'share') return `${figure(value * 100, 2)} %`;
  if (unit !== null && HOURS.has(unit) && value >= 0.1)
    return `${figure(Math.round(value * 10) / 10, 3)} ${unit}`;
  if (unit === null || unit === 'each') return figure(value, 3);
  const { name, each } = shownUnit(unit, about);
  return `${figure(value / each, 3)} ${name}`;
}

/** The same without its unit, where the unit stands beside it. */
export function figureWords(value: number, unit: string, about = value): string {
  return figure(value / shownUnit(unit, about).each, 3);
}

function figure(value: number, digits: number): string {
  return Math.abs(value) >= 10 ** digits
    ? String(Math.round(value))
    : String(Number(value.toPrecision(digits)));
}

/** A date as `3 Feb 2026`. Instants are ms since 1970 UTC, zones IANA names. */
export function dayWords(at: number, zone: string): string {
  const shown = shownAt(at, zone);
  return `${shown.getUTCDate()} ${MONTHS[shown.getUTCMonth()]} ${shown.getUTCFullYear()}`;
}

/** A moment as `Tue 3 Feb 2026 07:40`; the year is left out where it is that of `beside`. */
export function momentWords(at: number, zone: string, beside?: number): string {
  const shown = shownAt(at, zone);
  const year = shown.getUTCFullYear();
  const years = beside !== undefined && shownAt(beside, zone).getUTCFullYear() === year ? '' : ` ${year}`;
  const day = `${WEEKDAYS[shown.getUTCDay()]} ${shown.getUTCDate()} ${MONTHS[shown.getUTCMonth()]}`;
  return `${day}${years} ${clockWords(shown.getUTCHours(), shown.getUTCMinutes())}`;
}

/** The same in the zone preferred; in UTC it says so, since a document names no zone beside it. */
export function momentHere(at: number, beside?: number): string {
  const zone = preferredZone();
  return `${momentWords(at, zone, beside)}${zone === 'UTC' ? ' UTC' : ''}`;
}

/** A date as `3 Feb 2026`, in the zone preferred. */
export function dayHere(at: number): string {
  return dayWords(at, preferredZone());
}

/** `07:40`, or `7:40am`: one word, so that a moment has as many whichever is preferred. */
function clockWords(hour: number, minute: number): string {
  if (preferred().clock === '24 h') return `${two(hour)}:${two(minute)}`;
  return `${hour % 12 || 12}:${two(minute)}${hour < 12 ? 'am' : 'pm'}`;
}

/** Hours, not below 0, as `1 d 22 h`, `7 h 30 min`, `20 min`. */
export function durationWords(hours: number): string {
  const minutes = Math.round(hours * 60);
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 24 * 60)
    return minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
  const whole = Math.round(hours);
  return whole % 24 === 0 ? `${whole / 24} d` : `${Math.floor(whole / 24)} d ${whole % 24} h`;
}

/** A current, given in A, as `3.2 mA` or `1.1 A`. */
export function currentWords(amperes: number): string {
  return amperes < 1 ? `${figure(1000 * amperes, 2)} mA` : `${figure(amperes, 2)} A`;
}

/** Money, the boat's own: `38`, `4.50`. */
export function moneyWords(money: number): string {
  return Number.isInteger(money) ? String(money) : money.toFixed(2);
}

/** How often something happens: `about once in 260 engine hours`, `about 3 a day`. */
export function rateWords({ mean, per }: { mean: number; per: 'engine hour' | 'day' }): string {
  if (mean < 1 / 2) return `about once in ${amountWords(1 / mean, null)} ${per}s`;
  return `about ${amountWords(mean, null)} ${per === 'day' ? 'a day' : 'an engine hour'}`;
}

/** What would tell a loss running from one lying; where no dips would, where it drips. */
export function experimentWords(toSettle: { runs: number; hours: number } | null): string {
  if (toSettle === null)
    return 'lay a clean pad under it for a run and another for a night, the engine stopped whenever you reach in';
  const hours = amountWords(toSettle.hours, 'h');
  const which = toSettle.runs === 1 ? 'one charging run' : `each of ${toSettle.runs} charging runs`;
  return `dip before and after ${which} of ${hours}`;
}

/** How long something lasts: `3.6 days`; `beyond` ten years nothing is foretold. */
export function lastingWords(days: number | 'beyond'): string {
  if (days === 'beyond') return 'more than ten years';
  return days < 10 ? `${amountWords(Math.floor(10 * days) / 10, 'days')}` : `${Math.floor(days)} days`;
}

/** `1 look`, `9 looks`. */
export function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}

/** The board says the same dozens of moments at every key. */
const MOST_KNOWN = 1000;
const known = new Map<string, Map<number, Date>>();

/** What the clocks of the zone show, read off a date's UTC. */
function shownAt(at: number, zone: string): Date {
  const inZone = known.get(zone) ?? new Map<number, Date>();
  const found = inZone.get(at);
  if (found) return found;
  if (inZone.size >= MOST_KNOWN) inZone.clear();
  const shown = new Date(wallOf(at, zone));
  known.set(zone, inZone.set(at, shown));
  return shown;
}

/** How long a passage is; under way how much of it is left: `42 nm, about 7 h`, `42 nm, 15 nm to go, about 3 h`. */
export function lengthWords({
  nm,
  hours,
  toGo,
}: {
  readonly nm: number;
  readonly hours: number;
  readonly toGo: { readonly nm: number; readonly hours: number } | null;
}): string {
  const left = toGo ? `, ${Math.round(toGo.nm)} nm to go` : '';
  return `${Math.round(nm)} nm${left}, about ${durationWords(Math.round(toGo?.hours ?? hours))}`;
}
