import { conditionAt } from '../condition/condition-at.ts';
import type { Trouble } from '../trouble.ts';
import { sayTrouble } from '../words/troubles.ts';
import type { Command } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

/** Worth saying, but nothing that was saved is damaged, missing or beyond belief. */
const HARMLESS: ReadonlySet<Trouble['kind']> = new Set([
  'line cut off',
  'newer entries',
  'clock',
  'read only',
  'little room',
  'stray file',
]);

export const inspect: Command = {
  word: 'inspect',
  takes: '',
  says: 'every trouble of the boat file and the log, in full',
  more: ['Exit status: 65 where what was saved is damaged, missing or cannot be true; 0 where it is sound.'],
  example: 'hoveshort inspect --boat ~/whimbrel',
  options: [],
  async run({ options }, outside) {
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { boat, entries, struck, troubles, readOnly } = opened.value.loaded;
    const known = conditionAt(boat, entries, options.at ?? outside.now());
    const all = [...troubles, ...known.troubles, ...(readOnly ? [readOnly] : [])];
    const sound = all.every(({ kind }) => HARMLESS.has(kind));
    const counts = { entries: entries.length, struck: struck.length };
    if (options.json) {
      outside.print(jsonText({ format: 1, boat: boat.name, sound, ...counts, trouble: all }));
    } else {
      const said = all.map((trouble) => sayTrouble(trouble));
      const total = `${entries.length} entries, and ${struck.length} struck. ${sound ? 'What was saved is sound.' : 'Something is damaged: see above.'}`;
      outside.print(`${[...said, total].join('\n\n')}\n`);
    }
    return sound ? STATUS.done : STATUS.data;
  },
};
