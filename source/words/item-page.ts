import type { ItemDocument } from './item-document.ts';
import { STATE_WORDS } from './reasons.ts';
import {
  amountWords,
  badHundred,
  capital,
  currentWords,
  dayHere,
  dayWords,
  experimentWords,
  goodHundred,
  lastingWords,
  momentWords,
  moneyWords,
  rateWords,
} from './say.ts';

type Of<K extends ItemDocument['kind']> = Extract<ItemDocument, { kind: K }>;

/** All that is known of one item, a sentence a line: its state and why, then its figures. Moments in `zone`; `at` is when the answer is for, ms. */
export function itemLines(item: ItemDocument, at: number, zone: string): string[] {
  const moment = (instant: string) => momentWords(Date.parse(instant), zone, at);
  return [
    `${capital(item.name)}: ${STATE_WORDS[item.state]}; ${item.consequence}.`,
    ...item.reasons,
    ...(isUnknown(item)
      ? ['Nothing is known of it, so nothing is reckoned against it either.']
      : [
          `Holds until things can next be put right in ${Math.floor(item.chance * 100 + 1e-9)} of 100${untilWords(item.goodUntil, moment)}.`,
          item.lookedAt === null ? 'Not looked at yet.' : `Last looked at ${moment(item.lookedAt)}.`,
        ]),
    ...ownLines(item),
  ];
}

/** What wants a look and never had one holds in every passage, which tells nothing. */
export function isUnknown({
  state,
  lookedAt,
}: {
  readonly state: string | null;
  readonly lookedAt: string | null;
}) {
  return state === 'unseen' && lookedAt === null;
}

function untilWords(until: string | null, moment: (instant: string) => string): string {
  if (until === null) return '';
  return until === 'beyond' ? '; good beyond all that is looked at' : `; good until ${moment(until)}`;
}

function ownLines(item: ItemDocument): string[] {
  switch (item.kind) {
    case 'fluid':
      return fluidLines(item);
    case 'anode':
      return anodeLines(item);
    case 'spare':
      return spareLines(item);
    case 'service':
      return serviceLines(item);
    case 'check':
      return item.now ? [`It read ${amountWords(item.now.value, item.now.unit)}.`] : [];
    case 'dated':
      return item.expires === null ? [] : [`Good until ${dayWords(Date.parse(item.expires), 'UTC')}.`];
  }
}

function fluidLines({
  now,
  low,
  full,
  reserve,
  run,
  rest,
  usualDay,
  leak,
  split,
  ...item
}: Of<'fluid'>): string[] {
  const held = (value: number) => amountWords(value, 'L', full);
  const lines = [`Low mark ${held(low)}, full mark ${held(full)}, to be kept ${held(reserve)}.`];
  if (now) lines.push(`About ${held(now.value)} now, give or take ${held(now.sd)}.`);
  if (run && rest && usualDay)
    lines.push(
      `Loses ${litres(run.mean)} an hour running and ${litres(rest.mean)} a day lying: ${litres(usualDay.mean)} on a usual day, 8 times in 10 between ${litres(usualDay.p10)} and ${litres(usualDay.p90)}.`,
    );
  if (leak)
    lines.push(
      `Tight: ${badHundred(leak.tight)}. Leaks running: ${badHundred(leak.running)}; lying: ${badHundred(leak.lying)}; both: ${badHundred(leak.both)}.`,
    );
  if (split === 'cannot tell')
    lines.push(`Running and lying cannot be told apart yet: ${experimentWords(item.toSettle)}.`);
  if (item.job) lines.push(...jobLines(item.job));
  if (item.atEnd)
    lines.push(`About ${held(item.atEnd.mean)} when things can next be put right, leaving now.`);
  if (item.lasts) lines.push(lastsWords(item.lasts, reserve));
  if (item.lookAgain) lines.push(lookAgainWords(item.lookAgain));
  return lines;
}

/** No more than the least that a person can tell apart from at once: 0.1 of an hour, or of a day. */
const AT_ONCE = 0.05;

function lookAgainWords(after: NonNullable<Of<'fluid'>['lookAgain']>): string {
  if (('days' in after ? after.days : after.engineHours) < AT_ONCE) return 'Dip it now.';
  return 'days' in after
    ? `Look again within ${amountWords(after.days, 'days')}.`
    : `Dip every ${amountWords(after.engineHours, 'h')} under way.`;
}

function lastsWords({ days, withStores }: NonNullable<Of<'fluid'>['lasts']>, reserve: number): string {
  const alone =
    days === 0
      ? `Nothing in it is sure to be above ${litres(reserve)}`
      : `On usual days what is in it lasts ${lastingWords(days)}, down to ${litres(reserve)}`;
  return `${alone}${withStores === null ? '' : `; with what is in the stores, ${lastingWords(withStores)}`} (9 times in 10).`;
}

function jobLines({ at, text, lowerChance, ratio, daysToSettle }: NonNullable<Of<'fluid'>['job']>): string[] {
  const settle =
    daysToSettle === null || daysToSettle === 0
      ? ''
      : ` About ${Math.ceil(daysToSettle)} more days of readings would settle it.`;
  return [
    `Since the job on ${day(at)} (${text}): ${goodHundred(lowerChance)} that it loses less; ${amountWords(ratio.p50, null)} times what it was, 8 times in 10 between ${amountWords(ratio.p10, null)} and ${amountWords(ratio.p90, null)}.${settle}`,
  ];
}

function anodeLines({ now, wear, reachesLimit, limit, currentA }: Of<'anode'>): string[] {
  if (!now || !wear || !reachesLimit) return [];
  return [
    `About ${amountWords(now.value, 'share')} left; finished at ${amountWords(limit, 'share')}.`,
    `Wears ${amountWords(wear.mean * 30, 'share')} in 30 days; finished about ${day(reachesLimit.p50)}, 8 times in 10 between ${day(reachesLimit.p10)} and ${day(reachesLimit.p90)}.`,
    ...(currentA === null ? [] : [`A mean galvanic current of about ${currentWords(currentA)} eats it.`]),
  ];
}

function spareLines({ count, unit, rate, shortChance, cover95, buy, cost, locker }: Of<'spare'>): string[] {
  return [
    ...(count === null ? [] : [`${capital(amountWords(count, unit))} aboard.`]),
    ...(rate === null
      ? []
      : [
          `Used unplanned ${rateWords(rate)} (${amountWords(rate.mean, null)}, give or take ${amountWords(rate.sd, null)}).`,
        ]),
    ...(shortChance === null ? [] : [`Runs short on this passage: ${badHundred(shortChance)}.`]),
    ...(cover95 === null ? [] : [`${amountWords(cover95, unit)} would do in 95 of 100.`]),
    ...(buy > 0
      ? [`Buy ${amountWords(buy, unit)}${cost === null ? '' : `, about ${moneyWords(cost)}`}.`]
      : []),
    ...(locker === null ? [] : [`Stowed: ${locker}.`]),
  ];
}

function serviceLines({ dueInHours, dueOn }: Of<'service'>): string[] {
  return [
    ...(dueInHours === null
      ? []
      : [
          dueInHours < 0
            ? `${amountWords(-dueInHours, 'h')} overdue.`
            : `Due in ${amountWords(dueInHours, 'engine hours')}.`,
        ]),
    ...(dueOn === null ? [] : [`Due by ${day(dueOn)}.`]),
  ];
}

function litres(value: number): string {
  return amountWords(value, 'L');
}

function day(instant: string): string {
  return dayHere(Date.parse(instant));
}
