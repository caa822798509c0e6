import { sayBeside } from '../../words/answered.ts';
import { preferenceFields } from '../../words/preference-fields.ts';
import { amountWords, momentWords } from '../../words/say.ts';
import { fieldSpans } from '../field.ts';
import { BLANK, type Line, line, paragraph, say } from '../lines.ts';
import type { Model } from '../model.ts';
import { pad } from '../width.ts';
import type { PreferencesPage } from './preferences.ts';

const LABEL = 38;
/** The row itself, two lines of what belongs to it, and the line that says there is more. */
const LEAST_BELOW = 4;

export function preferencesTitle(): Line {
  return line(say('  PREFERENCES', 'title'), say('  yours on this laptop, whichever boat'));
}

/** In a low window from such a row on that the one that is changed can be seen. */
export function preferencesLines(model: Model, page: PreferencesPage, rows: number): Line[] {
  const { columns } = model.size;
  const lines = [
    ...preferenceFields.flatMap((_, index) => rowLines(model, page, index, columns)),
    BLANK,
    ...paragraph(exampleWords(model), columns - 2, { indent: 2 }),
    ...paragraph(
      'A number typed without a unit is in these, and what is saved says which. Files, and --json, stay in litres, metres, knots and UTC.',
      columns - 2,
      { indent: 2 },
    ),
  ];
  return lines.slice(Math.max(0, page.at + LEAST_BELOW - rows));
}

function rowLines(model: Model, page: PreferencesPage, index: number, columns: number): Line[] {
  const { field, says, choices, none = '', example } = preferenceFields[index]!;
  const here = index === page.at;
  const value = field === 'palette' ? model.palette : (model.kept[field] ?? none);
  const wide = columns >= 2 * LABEL ? LABEL : 0;
  const label = say(
    `  ${here ? '>' : ' '} ${wide === 0 ? says : pad(says, wide)}`,
    here ? 'chosen' : 'plain',
  );
  const room = Math.max(8, columns - (wide || says.length) - 8);
  const shown = here && !choices ? fieldSpans(page.field, room) : [say(value, here ? 'chosen' : 'plain')];
  const others = choices && here ? [say(`   ${choices.filter((one) => one !== value).join('   ')}`)] : [];
  const heard = `${says}: ${here && !choices ? page.field.text || none : value}.`;
  const row = { ...line(label, say(wide === 0 ? ': ' : ''), ...shown, ...others), heard: here ? heard : '' };
  const wrong = here
    ? page.told.flatMap((told) => paragraph(sayBeside(told), columns - 4, { indent: 4, tone: 'watch' }))
    : [];
  const hint =
    here && example && wrong.length === 0 ? paragraph(`such as ${example}`, columns - 4, { indent: 4 }) : [];
  return [row, ...wrong, ...hint];
}

function exampleWords({ now, zone }: Model): string {
  const said = [amountWords(1.2, 'L'), amountWords(150, 'L'), amountWords(2, 'm'), amountWords(22, 'kn')];
  return `So it reads: ${said.join(', ')}, ${momentWords(now, zone)}.`;
}
