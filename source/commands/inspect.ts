import { conditionAt } from '../condition/condition-at.ts';
import type { Accepted, BoatFolder, LoadedBoat } from '../outside.ts';
import { good, type Result, type Trouble } from '../trouble.ts';
import { cleanLine } from '../words/clean.ts';
import { entryWords } from '../words/entry-words.ts';
import { quietLines } from '../words/quiet-lines.ts';
import { sayTrouble } from '../words/troubles.ts';
import type { Command } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

const MOST_LETTERS = 400;

/** Worth saying, but nothing that was saved is damaged, missing or beyond belief. */
const HARMLESS: ReadonlySet<Trouble['kind']> = new Set([
  'line cut off',
  'newer entries',
  'clock',
  'read only',
  'little room',
  'stray file',
]);

const NONE: Accepted = { taken: [], refused: [] };

export const inspect: Command = {
  word: 'inspect',
  takes: '',
  says: 'every trouble of the boat file and the log, in full',
  more: [
    'With --accept, lines changed by hand are taken in as new entries, each said; what cannot be says why.',
    'Exit status: 65 where what was saved is damaged, missing or cannot be true; 0 where it is sound.',
  ],
  example: 'hoveshort inspect --boat ~/whimbrel',
  options: ['accept'],
  async run({ options }, outside) {
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { folder, loaded } = opened.value;
    const looked = options.accept ? await accepted(folder, loaded) : good({ loaded, accepted: NONE });
    if (!looked.ok) return complainOf(looked.troubles, outside);
    const { boat, entries, struck, troubles, quiet, readOnly } = looked.value.loaded;
    const { taken, refused } = looked.value.accepted;
    const known = conditionAt(boat, entries, options.at ?? outside.now());
    const all = [...troubles, ...known.troubles, ...(readOnly ? [readOnly] : [])];
    const sound = all.every(({ kind }) => HARMLESS.has(kind));
    const counts = { entries: entries.length, struck: struck.length };
    if (options.json) {
      const lines = { quiet, ...(options.accept ? { accepted: taken, refused } : {}) };
      outside.print(jsonText({ format: 1, boat: boat.name, sound, ...counts, trouble: all, ...lines }));
    } else {
      const total = `${entries.length} entries, and ${struck.length} struck. ${sound ? 'What was saved is sound.' : 'Something is damaged: see above.'}`;
      const said = [
        ...acceptedLines(looked.value.accepted, looked.value.loaded, options.accept),
        ...all.map((trouble) => sayTrouble(trouble)),
        quietLines(quiet),
        total,
      ];
      outside.print(`${said.filter((text) => text !== '').join('\n\n')}\n`);
    }
    return sound ? STATUS.done : STATUS.data;
  },
};

/** Takes in what was changed by hand, and looks again. */
async function accepted(
  folder: BoatFolder,
  { readOnly }: LoadedBoat,
): Promise<Result<{ readonly loaded: LoadedBoat; readonly accepted: Accepted }>> {
  if (readOnly) return { ok: false, troubles: [readOnly] };
  const done = await folder.accept();
  if (!done.ok) return done;
  const loaded = await folder.read();
  return loaded.ok ? good({ loaded: loaded.value, accepted: done.value }) : loaded;
}

function acceptedLines({ taken, refused }: Accepted, { boat }: LoadedBoat, asked: boolean): string[] {
  if (!asked) return [];
  if (taken.length + refused.length === 0) return ['no line waits to be accepted'];
  const place = ({ file, line }: { file: string; line?: number }) => `${cleanLine(file)}, line ${line}`;
  const lines = taken.map(
    (one) =>
      `accepted: ${place(one.place)}  ${cleanLine(entryWords(one.entry, boat), MOST_LETTERS)}  [${one.entry.id}]`,
  );
  const not = refused.map((one) =>
    [`not accepted: ${place(one.place)}`, ...one.troubles.map((trouble) => sayTrouble(trouble))].join('\n'),
  );
  return [...(lines.length > 0 ? [lines.join('\n')] : []), ...not];
}
