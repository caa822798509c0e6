import { Box, Text } from 'ink';
import { asciiOf } from './ascii.ts';
import type { Line } from './lines.ts';
import { type PaletteName, palettes } from './palette.ts';
import { widthOf } from './width.ts';

interface PageProps {
  readonly lines: readonly Line[];
  readonly palette: PaletteName;
  readonly utf8: boolean;
  readonly columns: number;
  readonly rows: number;
}

/** Lines as they are drawn: each tone in its look, letters the terminal can show. */
export function Page({ lines, palette, utf8, columns, rows }: PageProps) {
  const { ground, looks } = palettes[palette];
  const paint = ground === null ? {} : { backgroundColor: ground };
  return (
    <Box width={columns} height={rows} overflow="hidden" flexDirection="column" {...paint}>
      {lines.map(({ spans }, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its row
        <Text key={row} wrap="truncate">
          {spans.map(({ text, tone }, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a span is its place in the line
            <Text key={at} {...looks[tone]}>
              {utf8 ? text : asciiOf(text, widthOf)}
            </Text>
          ))}
        </Text>
      ))}
    </Box>
  );
}
