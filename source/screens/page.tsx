import { Box, Text } from 'ink';
import { asciiOf } from './ascii.ts';
import type { Line } from './lines.ts';
import { type Look, type Palette, type PaletteName, palettes } from './palette.ts';
import { widthOf } from './width.ts';

interface PageProps {
  readonly lines: readonly Line[];
  readonly palette: PaletteName;
  readonly utf8: boolean;
  readonly columns: number;
  readonly rows: number;
}

/**
 * Lines as they are drawn: each tone in its look, letters the terminal can show. Ink goes over every letter and every piece
 * of a page at each key, so a line ends with its last letter, and neighbours that look alike are one piece.
 */
export function Page({ lines, palette, utf8, columns, rows }: PageProps) {
  const { ground, looks } = palettes[palette];
  const paint = ground === null ? {} : { backgroundColor: ground };
  return (
    <Box width={columns} height={rows} flexDirection="column" {...paint}>
      {lines.map((line, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its row
        <Text key={row} wrap="truncate" {...looks.plain}>
          {piecesOf(line, looks).map(({ text, look, at }) => {
            const shown = utf8 ? text : asciiOf(text, widthOf);
            if (look === looks.plain) return shown;
            return (
              <Text key={at} {...look}>
                {shown}
              </Text>
            );
          })}
        </Text>
      ))}
    </Box>
  );
}

interface Piece {
  readonly at: number;
  readonly text: string;
  readonly look: Look;
}

/** A blank line is one space: a text without letters would take no row. */
function piecesOf({ spans }: Line, looks: Palette['looks']): Piece[] {
  const pieces: Piece[] = [];
  for (const { text, tone } of spans) {
    const last = pieces.at(-1);
    const look = text.trim() === '' && last && !last.look.inverse ? last.look : looks[tone];
    if (last?.look === look) pieces[pieces.length - 1] = { ...last, text: last.text + text };
    else pieces.push({ at: pieces.length, text, look });
  }
  const end = pieces.findLastIndex(({ text }) => text.trim() !== '');
  if (end < 0) return [{ at: 0, text: ' ', look: looks.plain }];
  return pieces
    .slice(0, end + 1)
    .map((piece, at) => (at === end ? { ...piece, text: trimmed(piece) } : piece));
}

/** What is drawn inverse shows its spaces. */
function trimmed({ text, look }: Piece): string {
  return look.inverse ? text : text.trimEnd();
}
