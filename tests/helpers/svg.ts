import type { Line, Tone } from '../../source/screens/lines.ts';
import type { Look } from '../../source/screens/palette.ts';
import { widthOf } from '../../source/screens/width.ts';

/** Letters of the usual monospace fonts are 0.6 as wide as the font is large. */
const LETTER = { width: 8, height: 17, size: 13.33, base: 13 };
const MARGIN = 12;
const WHITE = '#ffffff';
const INK = '#1c1c1c';

/** Letters of one font, or one of them over and over. */
const PRINTED = /^(?:[ -~]*|(.)\1*)$/u;

/** A screen as an SVG picture: its lines on a white ground, each piece of text in the look of its tone and in its columns whatever the fonts. */
export function svgOf(
  title: string,
  lines: readonly Line[],
  columns: number,
  looks: Readonly<Record<Tone, Look>>,
): string {
  const width = columns * LETTER.width + 2 * MARGIN;
  const height = lines.length * LETTER.height + 2 * MARGIN;
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="ui-monospace, Menlo, Consolas, 'DejaVu Sans Mono', monospace" font-size="${LETTER.size}" fill="${INK}">`,
    `<title>${escaped(title)}</title>`,
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
  const x = MARGIN + (column + (look.inverse ? 0 : text.indexOf(shown))) * LETTER.width;
  const wide = widthOf(shown) * LETTER.width;
  const y = MARGIN + row * LETTER.height;
  const colour = look.color ?? INK;
  const fill = look.inverse ? WHITE : colour;
  const drawn = [
    `<text y="${y + LETTER.base}" xml:space="preserve"`,
    PRINTED.test(shown)
      ? ` x="${x}" textLength="${wide}" lengthAdjust="spacingAndGlyphs"`
      : ` x="${lettersFrom(x, shown).join(' ')}"`,
    fill === INK ? '' : ` fill="${fill}"`,
    look.bold ? ' font-weight="bold"' : '',
    `>${escaped(shown)}</text>`,
  ].join('');
  const ground = `<rect x="${x}" y="${y}" width="${wide}" height="${LETTER.height}" fill="${colour}"/>`;
  return look.inverse ? [ground, drawn] : [drawn];
}

/** Where each letter stands: marks of a chart come from another font than the spaces between them, and would not line up. */
function lettersFrom(start: number, text: string): number[] {
  let x = start;
  return [...text].map((letter) => {
    const at = x;
    x += widthOf(letter) * LETTER.width;
    return at;
  });
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
