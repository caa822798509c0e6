import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { answerFor } from '../../source/commands/answer-for.ts';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import { textOf } from '../../source/screens/lines.ts';
import type { Model } from '../../source/screens/model.ts';
import { palettes } from '../../source/screens/palette.ts';
import { screenLines } from '../../source/screens/screen.ts';
import { aModel, moved, SIZES } from './a-model.ts';
import { namedInstants } from './sample-calendar.ts';
import { svgOf } from './svg.ts';

export const PICTURES = 'tests/pictures';

/** The screens of the sample boat on the morning named for hold, as files: the board as text at each size, two pages as SVG. */
export async function pictures(): Promise<Map<string, string>> {
  const board = await sampleModel();
  const made = new Map<string, string>();
  for (const size of SIZES) made.set(`board-${size.columns}x${size.rows}.txt`, textAt({ ...board, size }));
  made.set(
    'board-120x36.svg',
    pictureOf('The board on the sample boat', { ...board, size: { columns: 120, rows: 36 } }),
  );
  made.set('weather-80x24.svg', pictureOf('The weather page on the sample boat', moved(board, 'w')));
  return made;
}

/** The board open on the sample boat, on the morning named for hold. */
export async function sampleModel(given: { readonly zone?: string } = {}): Promise<Model> {
  const now = Date.parse(namedInstants.hold);
  const state = mkdtempSync(join(tmpdir(), 'hoveshort-pictures-'));
  const read = await boatFolder(keepingOn('sample-boat', state, () => now)).read();
  rmSync(state, { recursive: true, force: true });
  if (!read.ok) throw new Error(JSON.stringify(read.troubles, null, 2));
  const { condition, document } = answerFor(read.value, { at: now, seed: 1, simulations: 4096 });
  return aModel({ now, ...given }, document, {
    ...read.value,
    readOnly: null,
    seenUntil: null,
    condition,
    own: { tables: [], troubles: [] },
  });
}

function textAt(model: Model): string {
  return screenLines(model)
    .map((line) => `${textOf(line).trimEnd()}\n`)
    .join('');
}

function pictureOf(title: string, model: Model): string {
  return svgOf(title, screenLines(model), model.size.columns, palettes.day.looks);
}

if (import.meta.main) {
  mkdirSync(PICTURES, { recursive: true });
  for (const [name, text] of await pictures()) writeFileSync(join(PICTURES, name), text);
}
