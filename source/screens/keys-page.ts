import { bindingsOn } from './bindings.ts';
import { keyWords } from './key-words.ts';
import { BLANK, type Line, line, paragraph, say } from './lines.ts';
import type { Model, PageName } from './model.ts';
import { pad, widthOf } from './width.ts';

export function keysTitle(of: PageName): Line {
  return line(say('  KEYS', 'title'), say(of === 'board' ? '  of the board' : '  of this page'));
}

/** The keys of a page, made from the key table, and what the marks mean. */
export function keysLines(of: PageName, model: Model): Line[] {
  const { columns } = model.size;
  const table = bindingsOn(of).map(({ shown, does }) => ({ shown: keyWords(shown, model), does }));
  const wide = Math.max(...table.map(({ shown }) => widthOf(shown))) + 2;
  const keys = table.flatMap(({ shown, does }) => {
    const [first, ...rest] = paragraph(does, columns - wide - 4);
    return [
      line(say(`  ${pad(shown, wide)}`, 'title'), ...first!.spans),
      ...rest.map((more) => line(say(' '.repeat(wide + 2)), ...more.spans)),
    ];
  });
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  const drawn = told(BARS).map((one) => ({ ...one, heard: '' }));
  return [...keys, BLANK, ...told(MARKS), ...drawn];
}

const MARKS =
  'Marks: · fit, ~ watch, ! unfit, ? not looked at. NEW: worse since the board was opened, until you turn to it.';
const BARS =
  'A level lies between the low mark and the full mark: ▪ where it is, ▫ the way it will have gone by the end of the stretch; < or > where that lies beyond a mark.';
