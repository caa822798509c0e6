import type { Boat } from '../boat/boat.ts';
import type { Answer, Reason, State } from '../readiness/answer.ts';
import { assert } from '../trouble.ts';
import { amountWords, capital, counted, momentWords, sentence } from './say.ts';
import { whyPhrase } from './why.ts';

/** The four states as they are said. */
export const STATE_WORDS: { readonly [S in State]: string } = {
  fit: 'fit',
  watch: 'watch',
  unfit: 'unfit',
  unseen: 'not looked at',
};

/** Why the verdict is what it is: one sentence a person would say aloud, with its figure and what would change it. Times are UTC and say so. */
export function reasonSentence(reason: Reason, about: { boat: Boat; answer: Answer }): string {
  return sentence(phrase(reason, about));
}

function phrase(reason: Reason, about: { boat: Boat; answer: Answer }): string {
  switch (reason.reason) {
    case 'item':
      return itemPhrase(reason, about);
    case 'nothing vital':
      return 'nothing aboard is marked vital, so nothing here can bar leaving and no answer can be given; mark in boat.json what she depends on ("consequence": "vital")';
    case 'nothing entered':
      return 'the log is empty, so nothing is known of her; look round once and enter what you find';
    case 'boat short':
      return `of 100 passages like this one ${Math.floor(reason.boat)} end with nothing vital past its limit; ${reason.threshold} are wanted`;
    case 'on the line':
      return `the boat score is on the line: ${Number(reason.boat.toPrecision(4))} where ${reason.threshold} is wanted, too near to tell apart`;
    case 'no passage':
      return 'no passage is planned; name one: "passage" in boat.json, or record plan passage=<id>';
    case 'no forecast':
      return 'there is no forecast, so the weather is not judged and the answer is never go';
    case 'forecast old':
      return `the forecast is ${amountWords(reason.hours, 'h')} old; get a newer one`;
    case 'no weather limits':
      return `no limit is set for ${reason.missing.join(' and ')}; give each a number, or false, under "limits" in boat.json: until then the answer is never go`;
    case 'no window':
      return 'no window in this forecast';
    case 'waits for window':
      return `she is fit, the weather is not yet; it opens ${momentWords(reason.at, 'UTC', about.answer.at)} UTC`;
    case 'weather now':
      return `${reason.what}; no leaving on this forecast, get a newer one`;
    case 'log damaged':
      return `${counted(reason.count, 'place in the log is', 'places in the log are')} damaged or missing, so something may be unknown here; hoveshort inspect shows where`;
    case 'fit':
      return `she is fit: of 100 passages like this one ${Math.floor(about.answer.score.boat)} end with nothing vital past its limit`;
  }
}

function itemPhrase(
  reason: Extract<Reason, { reason: 'item' }>,
  { boat, answer }: { boat: Boat; answer: Answer },
): string {
  const item = answer.items.find(({ id }) => id === reason.item);
  assert(item, `a reason about ${reason.item}, which has no answer`);
  const worst = item.why[0];
  return `${capital(item.name)}: ${worst ? whyPhrase(worst, item, boat) : STATE_WORDS[reason.state]}`;
}
