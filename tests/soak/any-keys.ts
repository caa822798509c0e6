import { shownWrongly } from '../helpers/board-at-hand.ts';
import { anOutcome, type Campaign, found } from './campaign.ts';

/** Scripts of keys by chance on every page and at every size: nothing may be thrown, cut off at the bottom or drawn that is not there. */
export const anyKeys: Campaign = {
  name: 'any keys on any page at any size',
  count: 2000,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) {
      outcome.count += 1;
      const fault = shownWrongly(seed + n);
      if (fault !== null) found(outcome, 'undetected', `seed ${seed + n}: ${fault}`);
    }
    return outcome;
  },
};
