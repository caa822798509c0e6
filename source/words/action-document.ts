import type { Action } from '../readiness/answer.ts';
import { six, sixOrNull } from './figures.ts';

/** Something to do, what it takes from the stores, and the boat's score with it and all before it done. */
export interface ActionDocument {
  do: string;
  item: string;
  takes: { spare: string; count: number }[];
  minutes: number;
  boatScoreAfter: number;
  /** How much of the item is bought, in its unit; null where nothing is. */
  buys: number | null;
}

export function actionDocument(action: Action): ActionDocument {
  return {
    do: action.do,
    item: action.item,
    takes: action.takes.map(({ spare, count }) => ({ spare, count: six(count) })),
    minutes: six(action.minutes),
    boatScoreAfter: six(action.boatScoreAfter),
    buys: sixOrNull(action.buys),
  };
}
