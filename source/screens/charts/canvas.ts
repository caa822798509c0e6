/** Dots across and down in one braille cell. */
const DOTS_ACROSS = 2;
export const DOTS_DOWN = 4;
/** The bit of each dot, top row first (Unicode, Braille Patterns, U+2800 to U+28FF). */
const BITS = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;
const BLANK = 0x2800;

/** A small drawing surface: dots in braille cells, `columns` x `rows` of them. Dot 0,0 is the bottom left. */
export interface Canvas {
  readonly width: number;
  readonly height: number;
  dot(x: number, y: number): void;
  /** A straight line between two dots. */
  stroke(from: Dot, to: Dot): void;
  /** The picture, top line first; an empty cell is a space. */
  lines(): string[];
}

interface Dot {
  readonly x: number;
  readonly y: number;
}

export function canvasOf(columns: number, rows: number): Canvas {
  const cells = new Uint8Array(columns * rows);
  const width = columns * DOTS_ACROSS;
  const height = rows * DOTS_DOWN;
  function dot(x: number, y: number): void {
    const across = Math.round(x);
    const down = height - 1 - Math.round(y);
    // What is not known, NaN, lies nowhere.
    if (!(across >= 0 && across < width && down >= 0 && down < height)) return;
    const cell = Math.floor(down / DOTS_DOWN) * columns + Math.floor(across / DOTS_ACROSS);
    cells[cell]! |= BITS[(down % DOTS_DOWN) as 0 | 1 | 2 | 3][(across % DOTS_ACROSS) as 0 | 1];
  }
  function stroke(from: Dot, to: Dot): void {
    const steps = Math.max(1, Math.ceil(Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y))));
    for (let step = 0; step <= steps; step += 1) {
      dot(from.x + ((to.x - from.x) * step) / steps, from.y + ((to.y - from.y) * step) / steps);
    }
  }
  const lines = () =>
    Array.from({ length: rows }, (_, row) =>
      Array.from(cells.subarray(row * columns, (row + 1) * columns), (bits) =>
        bits === 0 ? ' ' : String.fromCodePoint(BLANK + bits),
      ).join(''),
    );
  return { width, height, dot, stroke, lines };
}
