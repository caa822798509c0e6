import type { Trouble } from '../trouble.ts';
import { sayTrouble } from '../words/troubles.ts';
import { BLANK, type Line, line, paragraph, say } from './lines.ts';
import type { Model } from './model.ts';
import { widthOf } from './width.ts';

export function troubleTitle(): Line {
  return line(say('  WRONG WITH THE FILES', 'title'));
}

/** All that is wrong with the boat file and the log, one after the other, each with what to try. */
export function troublePageLines({ boat, size }: Model): Line[] {
  if (boat.is === 'loading') return [line(say('  The boat folder is being read.'))];
  const troubles =
    boat.is === 'shut'
      ? boat.troubles
      : [...(boat.loaded.readOnly ? [boat.loaded.readOnly] : []), ...boat.loaded.troubles];
  if (troubles.length === 0) return [line(say('  Nothing is wrong with the boat file or the log.'))];
  return troubleBlock(troubles, size.columns, 2);
}

/** All that is to be said of troubles: where and what, why, what to try. */
export function troubleBlock(troubles: readonly Trouble[], columns: number, indent: number): Line[] {
  return troubles.flatMap((trouble, index) => [
    ...(index === 0 ? [] : [BLANK]),
    ...sayTrouble(trouble)
      .split('\n')
      .flatMap((text) => keptOrWrapped(text, columns, indent)),
  ]);
}

/** A line that fits stays as it is, so that a mark under a value stays under it. */
function keptOrWrapped(text: string, columns: number, indent: number): Line[] {
  if (widthOf(text) + indent + 2 <= columns) return [line(say(' '.repeat(indent) + text))];
  return paragraph(text, columns - 2, { indent: indent + text.length - text.trimStart().length });
}
