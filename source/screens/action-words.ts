import type { ActionDocument } from '../words/action-document.ts';
import { amountWords, durationWords, hundred } from '../words/say.ts';
import { nameOf, type Sight } from './sight.ts';

/** How a verb reads before the name of what it is done to, where the verb alone does not. */
const VERBS: { readonly [action: string]: string } = {
  look: 'look at',
  service: 'do',
  'stop the leak': 'stop the leak of',
};

export interface ActionWords {
  readonly text: string;
  readonly takes: string;
  readonly after: string;
}

/** An action as a person says it: `top up gear oil`, what it takes, how long and what the boat stands at then. */
export function actionWords(sight: Sight, action: ActionDocument): ActionWords {
  const some = (spare: string, count: number) => {
    const item = sight.items.find(({ id }) => id === spare);
    const unit = item?.kind === 'spare' ? item.unit : 'each';
    return `${amountWords(count, unit)} ${unit === 'each' ? 'x ' : ''}${nameOf(sight, spare)}`;
  };
  const takes = action.takes.map(({ spare, count }) => some(spare, count));
  const what = action.buys === null ? nameOf(sight, action.item) : some(action.item, action.buys);
  return {
    text: `${VERBS[action.do] ?? action.do} ${what}`,
    takes: takes.length === 0 ? '' : `takes ${takes.join(', ')}`,
    after: `${durationWords(action.minutes / 60)}, ${action.do === 'look' ? 'if found well' : 'then'} the boat ${hundred(action.boatScoreAfter)}`,
  };
}

/** The same as one phrase. */
export function actionPhrase(sight: Sight, action: ActionDocument): string {
  const { text, takes, after } = actionWords(sight, action);
  return [text, takes, after].filter((part) => part !== '').join(', ');
}
