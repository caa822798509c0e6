import stringWidth from 'string-width';
import { graphemesOf } from '../words/graphemes.ts';
import { isPlain } from '../words/plain.ts';

/** The columns a text takes on a terminal. */
export function widthOf(text: string): number {
  return isPlain(text) ? text.length : stringWidth(text);
}

/** The text cut to at most `columns`, with `…` where something was cut off. Never splits a letter from its accents. */
export function cut(text: string, columns: number): string {
  if (columns <= 0) return '';
  if (widthOf(text) <= columns) return text;
  return `${head(text, columns - 1)}…`;
}

/** The text filled with spaces to `columns`, or cut to it. */
export function pad(text: string, columns: number, side: 'left' | 'right' = 'left'): string {
  const kept = cut(text, columns);
  const room = ' '.repeat(Math.max(0, columns - widthOf(kept)));
  return side === 'left' ? kept + room : room + kept;
}

/** The text in lines of at most `columns`, broken at spaces, or inside a word longer than a line. */
export function wrapWords(text: string, columns: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').filter((part) => part !== '')) {
    const joined = line === '' ? word : `${line} ${word}`;
    if (widthOf(joined) <= columns) {
      line = joined;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (widthOf(line) > columns) {
      const part = head(line, columns) || line.slice(0, 1);
      lines.push(part);
      line = line.slice(part.length);
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** Figures with their units, filled so that the decimal points stand under one another. */
export function onThePoint(figures: readonly string[]): string[] {
  const parts = figures.map((figure) => {
    const [, whole = '', part = '', rest = ''] = /^([^.\s]*(?:\s\d{3})*)(\.\d+)?(.*)$/u.exec(figure) ?? [];
    return { whole, part, rest };
  });
  const wholeMost = Math.max(0, ...parts.map(({ whole }) => widthOf(whole)));
  const partMost = Math.max(0, ...parts.map(({ part }) => part.length));
  const restMost = Math.max(0, ...parts.map(({ rest }) => widthOf(rest)));
  return parts.map(
    ({ whole, part, rest }) => pad(whole, wholeMost, 'right') + part.padEnd(partMost) + pad(rest, restMost),
  );
}

function head(text: string, columns: number): string {
  let kept = '';
  let used = 0;
  for (const segment of graphemesOf(text)) {
    used += widthOf(segment);
    if (used > columns) break;
    kept += segment;
  }
  return kept;
}
