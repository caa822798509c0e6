import { sayBeside, understoodAs } from '../../words/answered.ts';
import { sentence } from '../../words/say.ts';
import { fieldSpans } from '../field.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import type { Model } from '../model.ts';
import { cut, pad } from '../width.ts';
import { type FirstRunPage, folderOf, type Row, rowAt, rowsOf } from './first-run.ts';

export function firstRunTitle(page: FirstRunPage, columns: number): Line {
  const last = rowsOf(page).length;
  return apart([say('  A NEW BOAT', 'title')], [say(`${Math.min(page.at + 1, last)} of ${last}  `)], columns);
}

/** The row that is typed in with as many of its neighbours as the window holds. */
export function firstRunLines(model: Model, page: FirstRunPage, rowsShown: number): Line[] {
  const { columns } = model.size;
  const rows = rowsOf(page);
  const here = [...hereLines(model, page, columns)];
  const intro = page.at === 0 ? introLines(columns) : [];
  const room = Math.max(0, rowsShown - here.length - intro.length);
  const before = Math.min(page.at, Math.max(Math.floor(room / 3), room - (rows.length - 1 - page.at)));
  const after = room - before;
  const told = (row: Row) => rowLine(page, row, columns);
  return [
    ...intro,
    ...rows.slice(page.at - before, page.at).map(told),
    ...here,
    ...rows.slice(page.at + 1, page.at + 1 + after).map(told),
  ];
}

function introLines(columns: number): Line[] {
  const short =
    'No boat is known here yet. Enter takes what stands there; type what is otherwise. All of it can be changed later.';
  return [...paragraph(short, columns - 2, { indent: 2 }), BLANK];
}

/** The question, what is typed or stands, and what it is taken for or what is wrong with it. */
function hereLines(model: Model, page: FirstRunPage, columns: number): Line[] {
  const row = rowAt(page);
  const ask = askOf(row);
  const usual = usualOf(page, row);
  const { field } = page;
  const questions = paragraph(ask, columns - 4, { indent: 4, tone: 'chosen' });
  const heard = `Question ${page.at + 1} of ${rowsOf(page).length}: ${sentence(ask)} ${field.text === '' ? `Enter takes: ${usual || 'an answer is wanted'}.` : `Typed: ${field.text}.`}`;
  const typed =
    row.is === 'make'
      ? []
      : [
          line(
            say('    '),
            ...fieldSpans(field, Math.max(8, columns - 8)),
            say(field.text === '' ? ` ${cut(usual, Math.max(0, columns - 8))}` : ''),
          ),
        ];
  const [first, ...others] = [...questions, ...typed];
  return [
    {
      ...line(
        say('  > ', 'chosen'),
        say(
          first!.spans
            .map(({ text }) => text)
            .join('')
            .slice(4),
          'chosen',
        ),
      ),
      heard,
    },
    ...others.map((one): Line => ({ ...one, heard: '' })),
    ...outcomeLines(model, page, row, columns),
    BLANK,
  ];
}

function outcomeLines(model: Model, page: FirstRunPage, row: Row, columns: number): Line[] {
  if (page.making) return [line(say(`    ${page.making === 'sample' ? 'opening' : 'making her folder'}`))];
  const wrong = page.told.length > 0 ? page.told : troublesTyped(model, page, row);
  if (wrong.length > 0)
    return wrong.flatMap((trouble) =>
      paragraph(sayBeside(trouble), columns - 4, { indent: 4, tone: 'watch' }),
    );
  const taken = takenAs(model, page, row);
  return taken === null ? [] : paragraph(`taken as: ${taken}`, columns - 4, { indent: 4 });
}

/** What is wrong with what stands in the field, as it is typed. */
function troublesTyped(model: Model, page: FirstRunPage, row: Row) {
  if (row.is !== 'question' || page.field.text.trim() === '') return [];
  const read = row.question.read(page.field.text, model);
  return read.ok ? [] : read.troubles;
}

function takenAs(model: Model, page: FirstRunPage, row: Row): string | null {
  if (row.is !== 'question' || page.field.text.trim() === '') return null;
  const read = row.question.read(page.field.text, model);
  return read.ok ? understoodAs(read.value, row.field, model) : null;
}

function rowLine(page: FirstRunPage, row: Row, columns: number): Line {
  const wide = Math.max(18, Math.floor((columns - 6) * 0.56));
  const wrong = Object.hasOwn(page.so.troubles, row.field) && Object.hasOwn(page.answers, row.field);
  const ask = pad(cut(shortAsk(row), wide), wide);
  const stands = page.answers[row.field] ?? usualOf(page, row);
  return {
    ...line(
      say(`  ${wrong ? '!' : ' '} ${ask}  `, wrong ? 'watch' : 'plain'),
      say(
        cut(stands, Math.max(0, columns - wide - 6)),
        Object.hasOwn(page.answers, row.field) ? 'title' : 'plain',
      ),
    ),
    heard: '',
  };
}

function askOf(row: Row): string {
  if (row.is === 'question') return row.question.ask;
  if (row.is === 'folder') return 'Where her folder is made: boat.json, her log, forecasts';
  return 'Enter makes her folder and opens the board';
}

/** The same without what may be typed. */
function shortAsk(row: Row): string {
  if (row.is === 'make') return 'Make her';
  return askOf(row)
    .replace(/(?:: |\()(?:full|single|yes|off|56|2026).*$/u, '')
    .replace(/, all well.*$/u, ', all well');
}

function usualOf(page: FirstRunPage, row: Row): string {
  if (row.is === 'folder') return folderOf(page);
  if (row.is === 'make') return '';
  const { usual } = row.question;
  if (usual === null) return 'wanted';
  return usual.from === undefined ? usual.text : `${usual.text}, ${usual.from}`;
}
