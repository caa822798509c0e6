import { bindingsAt } from './bindings.ts';
import { boardLines, bodyRows, filled, rule } from './board.ts';
import { keyWords } from './key-words.ts';
import { BLANK, exactly, type Line, line, paragraph, say } from './lines.ts';
import { type Model, pageOf } from './model.ts';
import { headingLine } from './panels/heading.ts';
import { sightOf } from './sight.ts';
import { storeInHand } from './stores/stores-moves.ts';
import { troublePageLines } from './trouble-page.ts';
import { pageRows, shownFirst, turnedPage } from './turned.ts';
import { widthOf } from './width.ts';
import { shownFrom, windowOf } from './window.ts';

const LEAST = { columns: 40, rows: 12 };

/** The whole screen: exactly as many lines as the window has rows, each exactly as wide. */
export function screenLines(model: Model): Line[] {
  const { columns, rows } = model.size;
  if (columns < LEAST.columns || rows < LEAST.rows) return tooSmall(model);
  const { title, body } = pageOf(model).page === 'board' ? boardParts(model) : turnedParts(model);
  return [
    exactly(title, columns),
    rule(columns),
    ...filled(body, columns, rows - 4),
    rule(columns),
    exactly(bottomLine(model), columns),
  ];
}

function boardParts(model: Model): { title: Line; body: Line[] } {
  const { columns } = model.size;
  const sight = sightOf(model);
  if (sight) return { title: headingLine(sight, columns), body: boardLines(sight) };
  if (model.boat.is === 'loading') {
    return {
      title: line(say('  HOVESHORT', 'title')),
      body: paragraph('The boat folder is being read.', columns, { indent: 2 }),
    };
  }
  const lines = [line(say('  This boat cannot be opened.', 'title')), BLANK, ...troublePageLines(model)];
  return { title: line(say('  HOVESHORT', 'title')), body: shownFrom(lines, 0, bodyRows(model.size)) };
}

function turnedParts(model: Model): { title: Line; body: Line[] } {
  const page = pageOf(model);
  if (page.page === 'board') return boardParts(model);
  const { title, lines } = turnedPage(model, page);
  const rows = pageRows(model.size);
  const inHand = storeInHand(model);
  const from = shownFirst(model, page, lines);
  return { title, body: inHand === null ? shownFrom(lines, from, rows) : windowOf(lines, inHand, rows) };
}

/** The answer to the last key, or the keys that matter here, made from the key table: the foremost and the last of them where there is little room. */
function bottomLine(model: Model): Line {
  if (model.notice !== null) return line(say(`  ${model.notice}`, 'title'));
  const shorts = bindingsAt(model).flatMap(({ short, foremost }) =>
    short === undefined ? [] : [{ words: keyWords(short, model), stays: foremost === true }],
  );
  const text = (from: number, gap: string) =>
    `  ${shorts
      .filter(({ stays }, at) => stays || at >= from)
      .map(({ words }) => words)
      .join(gap)}`;
  const fits = (words: string) => widthOf(words) <= model.size.columns;
  const from = Math.max(
    0,
    shorts.findIndex((_, at) => fits(text(at, '  '))),
  );
  const wide = text(from, '   ');
  return line(say(fits(wide) ? wide : text(from, '  ')));
}

function tooSmall({ size, boat }: Model): Line[] {
  const { columns, rows } = size;
  const verdict = boat.is === 'open' && boat.document ? [boat.document.verdict.toUpperCase()] : [];
  const words = [
    ...verdict,
    `The board wants ${LEAST.columns} columns and ${LEAST.rows} rows; here are ${columns} and ${rows}. q leaves.`,
  ];
  return filled(
    words.flatMap((text) => paragraph(text, columns)),
    columns,
    rows,
  );
}
