import { cautionOf } from '../../words/cautions.ts';
import { entryWords } from '../../words/entry-words.ts';
import { STATE_WORDS } from '../../words/reasons.ts';
import { sayShortly } from '../../words/troubles.ts';
import { fieldSpans } from '../field.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import { entryOf } from '../log/rows.ts';
import { MARKS } from '../panel.ts';
import { nameOf, type Sight } from '../sight.ts';
import { pad, widthOf } from '../width.ts';
import { filled, type OpenForm, openForm, wanting } from './filled.ts';
import type { FormKind, FormPage } from './form.ts';
import { forms } from './table.ts';

export function formTitle(sight: Sight, { form, about }: FormPage, columns: number): Line {
  const state = sight.items.find(({ id }) => id === about)?.state;
  const left = [
    say(`  ${forms[form].title}`, 'title'),
    say(about === '' ? '' : `  ${subjectOf(sight, about)}`),
  ];
  return apart(left, state ? [say(`${MARKS[state]} ${STATE_WORDS[state]}  `, state)] : [], columns);
}

function subjectOf(sight: Sight, about: string): string {
  const listed = entryOf(sight.boat.loaded, about);
  return listed ? entryWords(listed.entry, sight.boat.loaded.boat) : nameOf(sight, about);
}

/** The rows to fill in, what the log will say, what is wrong with it, what it takes, and the cautions. */
export function formLines(sight: Sight, page: FormPage, columns: number): Line[] {
  const open = openForm(sight, page);
  if (!open) return [line(say('  The boat file no longer has this item.'))];
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  const kind: FormKind = forms[page.form];
  const notes = kind.notes(sight, page.about);
  const act = typeof kind.act === 'function' ? kind.act(sight, page.about) : (kind.act ?? null);
  const cautions = act === null ? [] : [cautionOf(act)];
  return [
    ...open.rows.flatMap((_, index) => rowLines(open, index, columns)),
    BLANK,
    ...outcomeLines(sight, open, columns),
    ...(notes.length === 0 ? [] : [BLANK, ...notes.flatMap(told)]),
    ...(cautions.length === 0 ? [] : [BLANK, line(say('  CAUTIONS', 'title')), ...cautions.flatMap(told)]),
  ];
}

function rowLines({ rows, page }: OpenForm, index: number, columns: number): Line[] {
  const { label, usual, example } = rows[index]!;
  const wide = Math.max(...rows.map((row) => widthOf(row.label))) + 2;
  const here = index === page.at;
  const field = page.fields[index]!;
  const room = Math.max(8, columns - wide - 6);
  const usually = usual === null ? '' : usual;
  const written = here
    ? [...fieldSpans(field, room), ...(field.text === '' && usually !== '' ? [say(` ${usually}`)] : [])]
    : [say(field.text === '' ? usually : field.text)];
  const row: Line = {
    ...line(say(`  ${here ? '>' : ' '} ${pad(label, wide)}`, here ? 'chosen' : 'plain'), ...written),
    heard: here ? `Now typing ${label}: ${field.text === '' ? usually || 'nothing yet' : field.text}.` : '',
  };
  const examples = paragraph(`such as ${example}`, columns - 2, { indent: wide + 4 });
  return here ? [row, ...examples] : [row];
}

/** What Enter would save, or what was wrong with it. */
function outcomeLines(sight: Sight, open: OpenForm, columns: number): Line[] {
  const { page } = open;
  if (page.saving) return [line(say('  saving'))];
  const wrong = page.told.flatMap((trouble) =>
    paragraph(sayShortly(trouble), columns - 2, { indent: 2, tone: 'watch' }),
  );
  if (wrong.length > 0)
    return page.insisted ? [...wrong, line(say('  Enter again saves it as it stands.', 'title'))] : wrong;
  const { worksOut }: FormKind = forms[page.form];
  if (worksOut) return [line(say('  Enter works it out; nothing of it is logged.'))];
  if (wanting(open).length > 0) return [line(say('  Nothing to save yet.'))];
  const read = filled(sight, open);
  if (!read.ok)
    return read.troubles.flatMap((trouble) => paragraph(sayShortly(trouble), columns - 2, { indent: 2 }));
  return read.value.flatMap((draft) =>
    paragraph(`Enter logs: ${entryWords(draft, sight.boat.loaded.boat)}.`, columns - 2, { indent: 2 }),
  );
}
