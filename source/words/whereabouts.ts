import type { Boat } from '../boat/boat.ts';
import type { Condition } from '../condition/condition.ts';
import type { Beliefs } from '../inference/belief.ts';
import type { VerdictDocument } from './document.ts';
import { instant, six, sixOrNull } from './figures.ts';

/** Where she is, since when, and what her meters read, for the document. */
export function whereaboutsOf(
  boat: Boat,
  condition: Condition,
  beliefs: Beliefs,
): Pick<VerdictDocument, 'engines' | 'underWaySince' | 'anchorage'> {
  const anchorage = boat.anchorages.find(({ id }) => id === condition.anchorage);
  return {
    engines: boat.engines.map(({ id, name }) => {
      const record = condition.engines.get(id);
      const waiting = beliefs.waiting.get(id);
      return {
        id,
        name,
        hours: sixOrNull(record?.hours ?? null),
        readAt: record?.readAt == null ? null : instant(record.readAt),
        perDay: waiting === undefined || 'fixed' in waiting ? 0 : six(waiting.shape / waiting.rate),
      };
    }),
    underWaySince: condition.underWay ? instant(condition.underWay.since) : null,
    anchorage: anchorage
      ? {
          id: anchorage.id,
          name: anchorage.name,
          since: condition.arrivedAt === null ? null : instant(condition.arrivedAt),
        }
      : null,
  };
}
