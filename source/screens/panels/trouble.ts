import { counted } from '../../words/say.ts';
import { exactly, type Line, line, type Stop, say } from '../lines.ts';
import type { Sight } from '../sight.ts';

const STOP: Stop = { key: 'trouble', part: 'trouble', opens: { open: 'trouble' } };

/** One line where something is wrong with a file or a line of the log, and how to read of it. */
export function troubleLines({ boat, model }: Sight, columns: number): Line[] {
  const count = boat.loaded.troubles.length + (boat.loaded.readOnly ? 1 : 0);
  if (count === 0) return [];
  const pointer = say(model.chosen === STOP.key ? '> ' : '  ', 'chosen');
  const text = `${counted(count, 'thing', 'things')} wrong with the files, by line; ! shows them`;
  return [{ ...exactly(line(pointer, say('! ', 'unfit'), say(text)), columns), stop: STOP }];
}
