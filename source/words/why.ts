import type { Boat } from '../boat/boat.ts';
import type { ItemAnswer, Why } from '../readiness/answer.ts';
import { LEAK_WORDS } from './leak-words.ts';
import { nameOf, unitOf } from './names.ts';
import { amountWords, dayHere, dayWords, goodHundred } from './say.ts';

/** Why an item is not plainly fit: its figure, and what would change it. Without the item's name, no capital, no full stop: it stands after `Gear oil: ` or as a line under it. Days are UTC. */
export function whyPhrase(why: Why, item: About, boat: Boat): string {
  const say = phrases[why.why] as (why: Why, item: About, boat: Boat) => string;
  return say(why, item, boat);
}

/** Said of a leaving check that is still to be made, and is nothing the matter. */
export const BEFORE_LEAVING = 'looked at before every departure, and not yet for this one';

/** The item a reason is told of. */
type About = Pick<ItemAnswer, 'id' | 'kind'> & { readonly buy?: number; readonly now?: ItemAnswer['now'] };

type Facts<W extends Why['why']> = Extract<Why, { why: W }>;

/** A sentence maker for every reason there can be. */
const phrases: { readonly [W in Why['why']]: (why: Facts<W>, item: About, boat: Boat) => string } = {
  'past limit': pastLimit,
  'may fail': mayFail,
  'wrong answer': wrongAnswer,
  drifts: (why) =>
    `reads ${why.way === 'up' ? 'higher' : 'lower'} since ${dayHere(why.at)}, about ${amountWords(why.after, why.unit)} where it was ${amountWords(why.before, why.unit)}; find out why`,
  'never looked at': (_, item) => `not looked at yet; ${lookAt(item)}`,
  'looked at long ago': (why, item) =>
    `not looked at for ${days(why.days)}; every ${days(why.everyDays).replace(/^1 /, '')} is wanted: ${lookAt(item)}`,
  unsettled: (why, _, boat) =>
    `not looked at since the work on ${nameOf(boat, why.by)} on ${dayHere(why.at)}; look again: after work nothing is taken for granted`,
  'before leaving': () => BEFORE_LEAVING,
  changed: (why) => `goes at another rate since ${dayHere(why.at)}, and no job explains it; find out why`,
  rising: (why) =>
    `has risen with nothing poured in (${goodHundred(why.chance)} that it did): water or fuel may be getting in; find out before the engine runs`,
  leak: (why) => `leaks, ${LEAK_WORDS[why.class]}; look at the level more often until it is dry`,
  'fuel leak': () => 'leaks, and of a fuel any leak is too much; find it, stop it, and look again',
  'over full': () => 'stands over its full mark, which itself makes leaks; take some out',
  expired: (why) => `good until ${dateWords(why.expires)} and no longer; replace`,
  'expires soon': (why) => `good until ${dateWords(why.expires)}, ${days(why.days)} more; time to replace`,
  overdue: (why) => `${overdueBy(why)}; do it, then enter it`,
  'parts not aboard': (why, _, boat) =>
    `takes ${amountWords(why.wants, unitOf(boat, why.spare))} from ${nameOf(boat, why.spare)}, and ${
      why.aboard === null
        ? 'nobody has counted what is aboard'
        : `there is ${amountWords(why.aboard, unitOf(boat, why.spare))} aboard`
    }`,
  'never done': () => 'not entered yet; enter when it was last done',
  'below wanted': (why, item, boat) =>
    `${amountWords(why.count, unitOf(boat, item.id))} aboard, ${amountWords(why.wanted, unitOf(boat, item.id))} wanted`,
  'not counted': () => 'not entered yet; count what is aboard',
  'not entered': () => 'not entered yet; enter the date it is good until',
  'used twice': (why) => `used twice within ${amountWords(why.hours, 'h')}; find what ate the last one`,
  'wears fast': (why) =>
    `wears half as fast again as those before it, or faster (${goodHundred(why.chance)}); look for stray or shore current, or a lost bond`,
  'no wear': (why) =>
    `has not worn in ${days(why.days)}; it may have no contact, be painted over, or have coated itself`,
  'wrong alloy': (why) => `${why.metal} is the wrong metal for ${why.water} water`,
  flakes: () => 'flakes when tapped, and is finished whatever its size; renew it',
  'no one thing': (why) => `no one thing: together ${Math.floor(why.boat)} of 100`,
};

function pastLimit(why: Facts<'past limit'>, item: About, boat: Boat): string {
  const value = amountWords(why.value, why.unit);
  const limit = amountWords(why.limit, why.unit);
  const just = value === limit ? 'just ' : '';
  const fluid = boat.fluids.find(({ id }) => id === item.id);
  if (fluid) {
    const mark =
      fluid.low > 0 && why.limit === fluid.low ? `the low mark at ${limit}` : `the ${limit} to be kept`;
    return `about ${value} now, ${just}under ${mark}; top it up`;
  }
  if (item.kind === 'anode')
    return `about ${value} of its metal left, and it is finished at ${limit}; renew it`;
  return `${value}, past its limit of ${limit}; ${remedyOf(item)}`;
}

/** Up, as the passages that hold are rounded down: the two make a hundred, and none is lost. */
const ROUNDING = 1e-9;

function mayFail(why: Facts<'may fail'>, item: About): string {
  const most = 1 - why.threshold;
  const allowed = why.chance > most ? `, where at most ${Number((most * 100).toFixed(1))} may` : '';
  return `fails in ${Math.ceil(why.chance * 100 - ROUNDING)} of 100 passages${allowed}; ${remedyOf(item)}`;
}

function wrongAnswer(why: Facts<'wrong answer'>): string {
  if (why.value === null) return 'not as it should be; put it right and look again';
  const wants =
    why.atLeast !== null && why.value < why.atLeast
      ? `at least ${amountWords(why.atLeast, why.unit)}`
      : `at most ${amountWords(why.atMost ?? why.value, why.unit)}`;
  return `reads ${amountWords(why.value, why.unit)}, where ${wants} is wanted; put it right and look again`;
}

function overdueBy(why: Facts<'overdue'>): string {
  const by = [
    why.hours !== null && why.hours > 0 ? amountWords(why.hours, 'h') : null,
    why.days !== null && why.days > 0 ? days(why.days) : null,
  ].filter((one) => one !== null);
  return by.length === 0 ? 'overdue' : `${by.join(' and ')} overdue`;
}

function remedyOf(item: About): string {
  switch (item.kind) {
    case 'fluid':
      return 'top it up, or find where it goes';
    case 'anode':
      return 'renew it';
    case 'spare':
      return item.buy === undefined || item.buy === 0
        ? 'carry more'
        : `buy ${amountWords(item.buy, item.now?.unit ?? null)}`;
    case 'service':
      return 'do it before leaving';
    case 'check':
      return 'put it right and look again';
    case 'dated':
      return 'replace it';
  }
}

function lookAt(item: About): string {
  if (item.kind === 'fluid') return 'dip it and enter what you find';
  return item.kind === 'spare' ? 'count what is aboard' : 'look at it and enter what you find';
}

function dateWords(date: string): string {
  return dayWords(Date.parse(date), 'UTC');
}

function days(count: number): string {
  const whole = Math.round(count);
  return whole === 1 ? '1 day' : `${whole} days`;
}
