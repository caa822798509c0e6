import { inflowLPerMinute, pumpedLPerMinute } from '../tracing/flooding.ts';
import { bad, good, type Result } from '../trouble.ts';
import { amountFrom } from './amounts.ts';
import type { Flooding } from './trace-document.ts';

/** As people type them: the size of an opening, how far it is under water, the litres an hour of a pump by its label. */
export interface TypedFlooding {
  readonly opening: string;
  readonly depth: string;
  readonly pump: string | null;
}

/** What comes in by such an opening, and what such a pump takes out. */
export function floodingFrom({ opening, depth, pump }: TypedFlooding): Result<Flooding> {
  const mm = sizeFrom(amountFrom(opening, 'mm', 'opening'), opening, 'opening');
  const m = sizeFrom(amountFrom(depth, 'm', 'depth'), depth, 'depth');
  const label = pump === null ? good(null) : sizeFrom(labelFrom(pump), pump, 'pump');
  if (!mm.ok || !m.ok || !label.ok)
    return bad(...[mm, m, label].flatMap((one) => (one.ok ? [] : one.troubles)));
  return good({
    inflow: inflowLPerMinute(mm.value, m.value),
    pumped: label.value === null ? null : pumpedLPerMinute(label.value),
  });
}

function sizeFrom(read: Result<number>, typed: string, field: string): Result<number> {
  if (!read.ok || (read.value >= 0 && read.value <= MOST)) return read;
  return bad({ kind: 'not understood', field, text: typed, expected: 'a size of 0 or more' });
}

/** `3000`, `800 US gal`, `3000 L/h`: a volume, by the hour as labels give it. */
function labelFrom(typed: string): Result<number> {
  return amountFrom(typed.replace(/ *(\/ *h|an hour|per hour)$/iu, ''), 'L', 'pump', USUAL_LABEL_L);
}

/** More than any boat has; so that no figure is beyond telling. */
const MOST = 1e6;
/** What a bilge pump is labelled with, so that a bare number is in the unit such amounts are given in. */
const USUAL_LABEL_L = 3000;
