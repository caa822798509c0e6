import type { Condition } from '../../condition/condition.ts';
import { amountWords, counted, dayWords } from '../../words/say.ts';
import type { ShownItem } from '../shown-item.ts';
import { type Plot, type Point, plotLines } from './plot.ts';
import { timeTicks } from './time-axis.ts';

const TICK_COLUMNS = 10;
const DAY_MS = 86_400_000;

/** What the log says of an item over time, ready to draw; null for what has no figure, and for a fluid, which has a chart of its own. */
export interface History {
  /** What was read. */
  readonly points: readonly Point[];
  /** What is drawn besides: an anode that was fitted new, what is left now. */
  readonly besides: readonly Point[];
  readonly levels: Plot['levels'];
  readonly unit: string | null;
  readonly joined: Plot['joined'];
  /** What is plotted: `metal left`, `count aboard`. */
  readonly what: string;
}

export function historyOf(item: ShownItem, condition: Condition): History | null {
  switch (item.kind) {
    case 'anode': {
      const fittings = condition.anodes.get(item.id)?.fittings ?? [];
      const fitted = fittings.flatMap(({ fittedAt }) =>
        fittedAt === null ? [] : [{ at: fittedAt, value: 1 }],
      );
      return {
        points: fittings.flatMap(({ looks }) => looks.map(({ at, share }) => ({ at, value: share }))),
        besides: [...fitted, ...(item.now === null ? [] : [{ at: condition.at, value: item.now.value }])],
        levels: [{ value: item.limit, word: 'limit' }],
        unit: 'share',
        joined: 'straight',
        what: 'metal left',
      };
    }
    case 'spare': {
      const points = (condition.spares.get(item.id)?.history ?? []).map(({ at, count }) => ({
        at,
        value: count,
      }));
      return { points, besides: [], levels: [], unit: item.unit, joined: 'stepped', what: 'count aboard' };
    }
    case 'check': {
      const answers = condition.checks.get(item.id)?.answers ?? [];
      const points = answers.flatMap(({ at, value }) => (value === null ? [] : [{ at, value }]));
      const unit = item.now?.unit ?? null;
      return points.length === 0
        ? null
        : { points, besides: [], levels: [], unit, joined: 'straight', what: 'answer' };
    }
    default:
      return null;
  }
}

/** The history as a chart of `columns` x (`rows` + 1). Null with fewer than two points: nothing to draw a line through. */
export function historyLines(
  { points: read, besides, levels, unit, joined }: History,
  { now, zone, columns, rows }: { now: number; zone: string; columns: number; rows: number },
): string[] | null {
  const points = [...read, ...besides].sort((a, b) => a.at - b.at);
  if (points.length < 2) return null;
  const from = points[0]!.at;
  const to = Math.max(now, points.at(-1)!.at, from + DAY_MS);
  const values = [...points, ...levels].map(({ value }) => value);
  const least = Math.min(...values);
  const most = Math.max(...values);
  const room = (most - least || Math.abs(most) || 1) * 0.06;
  return plotLines(
    {
      points: joined === 'stepped' ? [...points, { at: to, value: points.at(-1)!.value }] : points,
      from,
      to,
      least: joined === 'stepped' ? Math.min(0, least) : least - room,
      most: most + room,
      levels,
      ticks: timeTicks(from, to, zone, Math.floor(columns / TICK_COLUMNS)),
      marks: marksOf({ levels, joined, least, most }),
      label: (value) => amountWords(value, unit),
      joined,
    },
    columns,
    rows,
  );
}

function marksOf({
  levels,
  joined,
  least,
  most,
}: Pick<History, 'levels' | 'joined'> & { least: number; most: number }): number[] {
  if (levels.length > 0) return levels.map(({ value }) => value);
  return joined === 'stepped' ? [most, 0] : [most, least];
}

/** The same as one sentence. */
export function historySentence({ points, levels, unit, what }: History, zone: string): string {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return `No ${what} yet.`;
  const amount = (value: number) => amountWords(value, unit);
  const day = (at: number) => dayWords(at, zone);
  if (points.length === 1) return `One ${what}: ${amount(first.value)} on ${day(first.at)}.`;
  const values = points.map(({ value }) => value);
  const marks = levels.map(({ value, word }) => `${word} ${amount(value)}`).join(', ');
  return `${[
    `${counted(points.length, 'reading', 'readings')} of the ${what}, from ${amount(first.value)} on ${day(first.at)} to ${amount(last.value)} on ${day(last.at)}`,
    `between ${amount(Math.min(...values))} and ${amount(Math.max(...values))}`,
    ...(marks === '' ? [] : [marks]),
  ].join('; ')}.`;
}
