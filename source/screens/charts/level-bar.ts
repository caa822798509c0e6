import { amountWords } from '../../words/say.ts';

export interface Level {
  /** Litres. `end` is the level at the end of the stretch, null while it is not known. */
  readonly low: number;
  readonly full: number;
  readonly now: number;
  readonly end: number | null;
}

/**
 * `[  ▫▫▫▪ ]`: low mark to full mark; the reading filled, the way it will have gone by the end of the stretch open.
 * `<` and `>` stand for a bracket that the way or the reading lies beyond. `cells` wide between the brackets.
 */
export function levelBar({ low, full, now, end }: Level, cells: number): string {
  const cellOf = (level: number) => {
    const share = (level - low) / (full - low || 1);
    return Math.max(0, Math.min(cells - 1, Math.round(share * (cells - 1))));
  };
  const reading = cellOf(now);
  const [least, most] =
    end === null ? [reading, reading] : [cellOf(Math.min(now, end)), cellOf(Math.max(now, end))];
  const bar = Array.from({ length: cells }, (_, cell) => {
    if (cell === reading) return '▪';
    return cell >= least && cell <= most ? '▫' : ' ';
  });
  const under = Math.min(now, end ?? now) < low;
  const over = Math.max(now, end ?? now) > full;
  return `${under ? '<' : '['}${bar.join('')}${over ? '>' : ']'}`;
}

/** The same as one sentence. */
export function levelSentence({ low, full, now, end }: Level): string {
  const litres = (level: number) => amountWords(level, 'L', full);
  const way = end === null ? '' : `; about ${litres(end)} at the end of the stretch`;
  return `about ${litres(now)}; low ${litres(low)}, full ${litres(full)}${way}`;
}
