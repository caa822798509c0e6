import type { Condition } from '../condition/condition.ts';
import type { Piece } from '../passage/pieces.ts';
import type { LegInput } from './leg-weather.ts';
import type { HourlyWeather } from './weather-table.ts';

const MS_AN_HOUR = 3_600_000;

/** A stretch of the passage with one weather: where on the way it begins, how long it is, whose weather it has. */
export interface Span {
  readonly leg: number;
  readonly fromNm: number;
  readonly nm: number;
  readonly weather: LegInput;
  /** The hour from which the forecast says nothing more there. */
  readonly endHour: number;
  /** Open hours of a tidal gate at its start, hours from now; null where there is none. */
  readonly gates: readonly { readonly from: number; readonly to: number }[] | null;
}

/** Pieces one after the other with the same weather on the same leg are one span; a gate stands at the start of its leg. */
export function spansOf(
  { pieces, tables }: { readonly pieces: readonly Piece[]; readonly tables: readonly HourlyWeather[] },
  condition: Condition,
  common: Omit<LegInput, 'weather' | 'piece'>,
): readonly Span[] {
  const spans: (Span & { table: HourlyWeather })[] = [];
  for (const [place, piece] of pieces.entries()) {
    const table = tables[place]!;
    const last = spans.at(-1);
    if (last?.leg === piece.leg && last.table === table) {
      spans[spans.length - 1] = { ...last, nm: last.nm + piece.nm };
      continue;
    }
    spans.push({
      leg: piece.leg,
      fromNm: piece.fromNm,
      nm: piece.nm,
      table,
      endHour: table.endHour,
      weather: { ...common, weather: table, piece },
      gates: last?.leg === piece.leg ? null : gatesOf(condition, piece.leg),
    });
  }
  return spans;
}

function gatesOf({ gates, passage, at }: Condition, leg: number): Span['gates'] {
  const open = gates.filter((gate) => gate.passage === passage?.id && gate.leg === leg);
  if (open.length === 0) return null;
  return open.map(({ from, to }) => ({
    from: (Date.parse(from) - at) / MS_AN_HOUR,
    to: (Date.parse(to) - at) / MS_AN_HOUR,
  }));
}
