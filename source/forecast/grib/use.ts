import { type Level, whyNotLevel } from './levels.ts';
import type { Parameter, Quantity } from './parameters.ts';
import type { Why } from './refused.ts';

const DAY = 86_400_000;
/** The longest forecasts of wind and sea reach 46 days (ECMWF's extended range, from memory). */
const MOST_LEAD_DAYS = 60;

/** What a header says that decides whether a field is of use. */
interface Said {
  readonly parameter: Parameter;
  readonly level: Level;
  /** What was made of the values of a span of time; null for an instant. */
  readonly statistic: 'average' | 'greatest' | null;
  /** From when it was made to what it is valid for, ms. */
  readonly lead: number;
  /** The product itself is no forecast of a value. */
  readonly why: Why | null;
}

/** What a field is used for, or why it is not: the product, then the parameter, the level, the statistic. */
export function usage(said: Said): { readonly quantity: Quantity | null; readonly unused: Why | null } {
  const unused = whyNot(said);
  return { quantity: unused ? null : said.parameter.quantity, unused };
}

function whyNot({ parameter, level, statistic, lead, why }: Said): Why | null {
  if (parameter.quantity === null) return { kind: 'parameter', name: parameter.name };
  if (why) return why;
  if (statistic === 'greatest' && parameter.quantity !== 'gust')
    return { kind: 'product', name: 'the greatest of a span of time' };
  if (lead > MOST_LEAD_DAYS * DAY)
    return { kind: 'time', name: `over ${MOST_LEAD_DAYS} days after it was made` };
  return whyNotLevel(parameter.quantity, parameter.code, level);
}
