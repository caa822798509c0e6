import { cleanLine } from '../../words/clean.ts';
import { sayCode } from '../../words/folder-troubles.ts';
import { counted } from '../../words/say.ts';
import { sayTrouble } from '../../words/troubles.ts';
import { exactly, type Line, line, type Stop, say } from '../lines.ts';
import type { Sight } from '../sight.ts';

const STOP: Stop = { key: 'trouble', part: 'trouble', opens: { open: 'trouble' } };

/** What stands in the way of saving, so that nobody types for nothing; one line where something is wrong with a file or a line of the log, and how to read of it. */
export function troubleLines(sight: Sight, columns: number): Line[] {
  const { readOnly } = sight.boat.loaded;
  if (!readOnly) return countLines(sight, columns);
  const why =
    readOnly.kind === 'read only' ? sayCode(readOnly.code) : cleanLine(sayTrouble(readOnly).split('\n')[0]!);
  const text = say(`nothing can be saved: ${why}`);
  return [exactly(line(say('  '), say('! ', 'unfit'), text), columns), ...countLines(sight, columns)];
}

function countLines({ boat, model }: Sight, columns: number): Line[] {
  const count = boat.loaded.troubles.length + (boat.loaded.readOnly ? 1 : 0);
  if (count === 0) return [];
  const pointer = say(model.chosen === STOP.key ? '> ' : '  ', 'chosen');
  const text = `${counted(count, 'thing', 'things')} wrong with the files, by line; ! shows them`;
  return [{ ...exactly(line(pointer, say('! ', 'unfit'), say(text)), columns), stop: STOP }];
}
