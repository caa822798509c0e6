import type { Boat } from '../boat/boat.ts';
import type { Answer, Reason, State } from '../readiness/answer.ts';
import { assert } from '../trouble.ts';
import { capital, counted, sentence } from './say.ts';
import { weatherPhrase } from './weather-reasons.ts';
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
      return `the ${reason.which === 'boat' ? 'boat score' : 'score with the weather'} is on the line: ${Number(reason.score.toPrecision(4))} where ${reason.threshold} is wanted, too near to tell apart`;
    case 'no passage':
      return 'no passage is planned; name one: "passage" in boat.json, or record plan passage=<id>';
    case 'log damaged':
      return `${counted(reason.count, 'place in the log is', 'places in the log are')} damaged or missing, so something may be unknown here; hoveshort inspect shows where`;
    case 'fit':
      return `she is fit: of 100 passages like this one ${Math.floor(about.answer.score.boat)} end with nothing vital past its limit`;
    default:
      return weatherPhrase(reason, about.boat, about.answer);
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
