import stringWidth from 'string-width';

/** Rows of cells as lines with their columns aligned, those in `rightOf` to the right. Trailing blanks are cut. */
export function aligned(
  rows: readonly (readonly string[])[],
  rightOf: ReadonlySet<number> = new Set(),
): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [column, cell] of row.entries()) {
      widths[column] = Math.max(widths[column] ?? 0, stringWidth(cell));
    }
  }
  return rows.map((row) =>
    row
      .map((cell, column) => {
        const blanks = ' '.repeat((widths[column] ?? 0) - stringWidth(cell));
        return rightOf.has(column) ? blanks + cell : cell + blanks;
      })
      .join('  ')
      .trimEnd(),
  );
}

/** Text broken between words so that no line passes `columns`, each line after `indent` blanks, the ones after the first after `hang` more. A longer word keeps a line of its own. */
export function wrapped(text: string, columns: number, indent = 0, hang = 0): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    const room = columns - indent - (lines.length > 0 ? hang : 0);
    if (line !== '' && stringWidth(line) + 1 + stringWidth(word) > room) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  lines.push(line);
  return lines.map((one, index) => ' '.repeat(indent + (index > 0 ? hang : 0)) + one);
}
