import type { Boat } from '../boat/boat.ts';
import type { ItemAnswer, Why } from '../readiness/answer.ts';
import { amountWords, dayWords, hundred } from './say.ts';

/** What a leaking place shows, worst last; the classes are those of US Army equipment manuals (model 3.7). */
const LEAK_WORDS = { wet: 'wet to the touch', drops: 'drops form', falls: 'drops fall' };

/** Why an item is not plainly fit: its figure, and what would change it. Without the item's name, no capital, no full stop: it stands after `Gear oil: ` or as a line under it. Days are UTC. */
export function whyPhrase(why: Why, item: ItemAnswer, boat: Boat): string {
  switch (why.why) {
    case 'past limit':
      return pastLimit(why, item, boat);
    case 'may fail':
      return `holds to the end in ${hundred(why.chance * 100)}, where ${Math.ceil(why.threshold * 100 - 1e-9)} are wanted; ${remedyOf(item)}`;
    case 'wrong answer':
      return wrongAnswer(why);
    case 'never looked at':
      return `not looked at yet; ${lookAt(item)}`;
    case 'looked at long ago':
      return `not looked at for ${days(why.days)}, where every ${days(why.everyDays)} is wanted; ${lookAt(item)}`;
    case 'unsettled':
      return `not looked at since the work on ${nameOf(boat, why.by)} on ${dayWords(why.at, 'UTC')}; look again, nothing is taken for granted after work`;
    case 'before leaving':
      return 'looked at before every departure, and not yet for this one';
    case 'changed':
      return `goes at another rate since ${dayWords(why.at, 'UTC')}, and no job explains it; find out why`;
    case 'rising':
      return `has risen with nothing poured in (${hundred(why.chance * 100)}): something may be getting in; find out what before the engine runs`;
    case 'leak':
      return `leaks: ${LEAK_WORDS[why.class]}; look at the level more often until it is dry`;
    case 'fuel leak':
      return 'leaks, and of a fuel any leak is too much; find it, stop it, and look again';
    case 'over full':
      return 'stands over its full mark, which itself makes leaks; take some out';
    default:
      return dueOrStore(why, item, boat);
  }
}

/** What comes due, runs out or wears. */
type Store = Exclude<
  Why,
  {
    why:
      | 'past limit'
      | 'may fail'
      | 'wrong answer'
      | 'never looked at'
      | 'looked at long ago'
      | 'unsettled'
      | 'before leaving'
      | 'changed'
      | 'rising'
      | 'leak'
      | 'fuel leak'
      | 'over full';
  }
>;

function dueOrStore(why: Store, item: ItemAnswer, boat: Boat): string {
  switch (why.why) {
    case 'expired':
      return `good until ${dateWords(why.expires)} and no longer; replace`;
    case 'expires soon':
      return `good until ${dateWords(why.expires)}, ${days(why.days)} more; time to replace`;
    case 'overdue':
      return `${overdueBy(why)}; do it, then enter it`;
    case 'due on the way':
      return 'falls due on the way; do it before leaving';
    case 'parts not aboard':
      return `takes ${part(boat, why.spare, why.wants)}, and ${why.aboard} aboard`;
    case 'never done':
      return 'not entered yet; enter when it was last done';
    case 'below wanted':
      return `${amountWords(why.count, unitOf(boat, item.id))} aboard, ${amountWords(why.wanted, unitOf(boat, item.id))} wanted`;
    case 'not counted':
      return 'not entered yet; count what is aboard';
    case 'used twice':
      return `used twice within ${amountWords(why.hours, 'h')}; find what ate the last one`;
    case 'wears fast':
      return `wears half as fast again as those before it, or more (${hundred(why.chance * 100)}); look for stray or shore current, or a lost bond`;
    case 'no wear':
      return `has not worn in ${days(why.days)}; it may have no contact, be painted over, or be coated`;
    case 'wrong alloy':
      return `${why.metal} is the wrong metal for ${why.water} water`;
    case 'flakes':
      return 'flakes when tapped, and is finished whatever its size; renew it';
    case 'no one thing':
      return `no one thing: together ${Math.floor(why.boat)} of 100`;
  }
}

function pastLimit(why: Extract<Why, { why: 'past limit' }>, item: ItemAnswer, boat: Boat): string {
  const value = amountWords(why.value, why.unit);
  const limit = amountWords(why.limit, why.unit);
  const fluid = boat.fluids.find(({ id }) => id === item.id);
  if (fluid) {
    const mark =
      fluid.low > 0 && why.limit === fluid.low ? `the low mark at ${limit}` : `the ${limit} to be kept`;
    return `about ${value} now, under ${mark}; top it up`;
  }
  if (item.kind === 'anode')
    return `about ${value} of its metal left, and it is finished at ${limit}; renew it`;
  return `${value}, past its limit of ${limit}; ${remedyOf(item)}`;
}

function wrongAnswer(why: Extract<Why, { why: 'wrong answer' }>): string {
  if (why.value === null) return 'not as it should be; put it right and look again';
  const reads = `reads ${amountWords(why.value, why.unit)}`;
  const wants =
    why.atLeast !== null && why.value < why.atLeast
      ? `at least ${amountWords(why.atLeast, why.unit)}`
      : `at most ${amountWords(why.atMost ?? why.value, why.unit)}`;
  return `${reads}, where ${wants} is wanted; put it right and look again`;
}

function overdueBy(why: Extract<Why, { why: 'overdue' }>): string {
  const by = [
    why.hours !== null && why.hours > 0 ? amountWords(why.hours, 'h') : null,
    why.days !== null && why.days > 0 ? days(why.days) : null,
  ].filter((one) => one !== null);
  return by.length === 0 ? 'overdue' : `${by.join(' and ')} overdue`;
}

function remedyOf(item: ItemAnswer): string {
  switch (item.kind) {
    case 'fluid':
      return 'top it up, or find where it goes';
    case 'anode':
      return 'renew it';
    case 'spare':
      return item.buy > 0 ? `buy ${amountWords(item.buy, item.now?.unit ?? null)}` : 'carry more';
    case 'service':
      return 'do it before leaving';
    case 'check':
      return 'put it right and look again';
    case 'dated':
      return 'replace it';
  }
}

function lookAt(item: ItemAnswer): string {
  if (item.kind === 'fluid') return 'dip it and enter what you find';
  return item.kind === 'spare' ? 'count what is aboard' : 'look at it and enter what you find';
}

function part(boat: Boat, spare: string, wants: number): string {
  const unit = unitOf(boat, spare);
  const name = nameOf(boat, spare);
  return unit === 'each' ? `${wants} x ${name}` : `${amountWords(wants, unit)} ${name}`;
}

function unitOf(boat: Boat, spare: string): string {
  return boat.spares.find(({ id }) => id === spare)?.unit ?? 'each';
}

function nameOf(boat: Boat, id: string): string {
  const all = [
    ...boat.fluids,
    ...boat.anodes,
    ...boat.spares,
    ...boat.services,
    ...boat.checks,
    ...boat.dated,
  ];
  return all.find((one) => one.id === id)?.name ?? id;
}

function dateWords(date: string): string {
  return dayWords(Date.parse(date), 'UTC');
}

function days(count: number): string {
  const whole = Math.round(count);
  return whole === 1 ? '1 day' : `${whole} days`;
}
