import type { Trouble } from '../../trouble.ts';
import { cleanLine } from '../../words/clean.ts';
import { sayCode } from '../../words/folder-troubles.ts';
import { counted } from '../../words/say.ts';
import { sayTrouble } from '../../words/troubles.ts';
import { exactly, type Line, line, type Stop, say } from '../lines.ts';
import type { Sight } from '../sight.ts';

const STOP: Stop = { key: 'trouble', part: 'trouble', opens: { open: 'trouble' } };

/** What stands in the way of saving, so that nobody types for nothing, and how much else is wrong with a file or a line of the log; Enter opens all of it. */
export function troubleLines({ boat, model }: Sight, columns: number): Line[] {
  const { readOnly, troubles } = boat.loaded;
  const said = [
    ...(readOnly ? [`nothing can be saved: ${hindrance(readOnly)}`] : []),
    ...(troubles.length > 0
      ? [`${counted(troubles.length, 'thing', 'things')} wrong with the files, by line; ! shows them`]
      : []),
  ];
  return said.map((text, index) => {
    const opens = index === said.length - 1;
    const pointer = say(opens && model.chosen === STOP.key ? '> ' : '  ', 'chosen');
    const whole = exactly(line(pointer, say('! ', 'unfit'), say(text)), columns);
    return opens ? { ...whole, stop: STOP } : whole;
  });
}

function hindrance(trouble: Trouble): string {
  return trouble.kind === 'read only'
    ? sayCode(trouble.code)
    : cleanLine(sayTrouble(trouble).split('\n')[0]!);
}
