const KNOWN: Readonly<Record<string, string>> = {
  '·': '.',
  '─': '-',
  '…': '~',
  '▪': '#',
  '▫': 'o',
  '▏': '|',
  '↑': '^',
  '↓': 'v',
  '←': '<',
  '→': '>',
  '°': 'o',
  '–': '-',
  '—': '-',
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  ø: 'o',
  Ø: 'O',
  æ: 'a',
  Æ: 'A',
  ß: 's',
};
const BRAILLE = 0x2800;
/** The dots of a braille cell by height, top first. */
const HEIGHTS = [0x01 | 0x08, 0x02 | 0x10, 0x04 | 0x20, 0x40 | 0x80];

/** The same page for a terminal without UTF-8: as many columns, letters without their accents, charts in strokes. */
export function asciiOf(text: string, widthOf: (text: string) => number): string {
  let plain = '';
  for (const letter of text) {
    plain += letter < '\u007f' ? letter : (KNOWN[letter] ?? strokeOf(letter) ?? bareOf(letter, widthOf));
  }
  return plain;
}

/** A braille cell as one stroke at the height of its dots; a steep one as an upright. */
function strokeOf(letter: string): string | null {
  const dots = letter.codePointAt(0)! - BRAILLE;
  if (dots < 0 || dots > 0xff) return null;
  const heights = [0, 1, 2, 3].filter((height) => dots & HEIGHTS[height]!);
  if (heights.length === 0) return ' ';
  if (heights.length >= 3) return '|';
  const middle = heights.reduce((sum, height) => sum + height, 0) / heights.length;
  return middle < 1 ? "'" : middle <= 2 ? '-' : '.';
}

function bareOf(letter: string, widthOf: (text: string) => number): string {
  const bare = letter.normalize('NFKD').replace(/[^ -~]/gu, '');
  const columns = widthOf(letter);
  return bare.length === columns ? bare : '?'.repeat(columns);
}
