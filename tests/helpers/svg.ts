import type { Line, Tone } from '../../source/screens/lines.ts';
import type { Look } from '../../source/screens/palette.ts';
import { widthOf } from '../../source/screens/width.ts';

const LETTER = { width: 8.4, height: 18, size: 14, base: 13 };
const MARGIN = 12;
const WHITE = '#ffffff';
const INK = '#1c1c1c';

/** A screen as an SVG picture: its lines on a white ground, each piece of text in the look of its tone, stretched to its columns whatever the font. */
export function svgOf(lines: readonly Line[], columns: number, looks: Readonly<Record<Tone, Look>>): string {
  const width = Math.ceil(columns * LETTER.width) + 2 * MARGIN;
  const height = lines.length * LETTER.height + 2 * MARGIN;
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="ui-monospace, Menlo, Consolas, 'DejaVu Sans Mono', monospace" font-size="${LETTER.size}" fill="${INK}">`,
    `<rect width="${width}" height="${height}" rx="6" fill="${WHITE}"/>`,
    ...lines.flatMap(({ spans }, row) => {
      let column = 0;
      return spans.flatMap(({ text, tone }) => {
        const from = column;
        column += widthOf(text);
        return pieceOf(text, looks[tone], from, row);
      });
    }),
    '</svg>',
  ].join('\n')}\n`;
}

function pieceOf(text: string, look: Look, column: number, row: number): string[] {
  const shown = look.inverse ? text : text.trim();
  if (shown === '') return [];
  const x = place(MARGIN + (column + (look.inverse ? 0 : text.indexOf(shown))) * LETTER.width);
  const wide = place(widthOf(shown) * LETTER.width);
  const y = MARGIN + row * LETTER.height;
  const colour = look.color ?? INK;
  const fill = look.inverse ? WHITE : colour;
  const weight = look.bold ? ' font-weight="bold"' : '';
  const ground = `<rect x="${x}" y="${y}" width="${wide}" height="${LETTER.height}" fill="${colour}"/>`;
  const drawn = `<text x="${x}" y="${y + LETTER.base}" textLength="${wide}" lengthAdjust="spacingAndGlyphs"${fill === INK ? '' : ` fill="${fill}"`}${weight} xml:space="preserve">${escaped(shown)}</text>`;
  return look.inverse ? [ground, drawn] : [drawn];
}

function place(points: number): number {
  return Number(points.toFixed(1));
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
