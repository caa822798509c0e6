import type { Entry } from '../logbook/entries.ts';
import type { LoadedBoat, Merged, Outside } from '../outside.ts';
import { cleanLine } from '../words/clean.ts';
import { entryWords } from '../words/entry-words.ts';
import { counted, momentWords } from '../words/say.ts';
import { sayTrouble } from '../words/troubles.ts';
import type { Command } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

const MOST_LETTERS = 400;
/** More than so many are told by their number alone. */
const MOST_LISTED = 20;

export const merge: Command = {
  word: 'merge',
  takes: '<folder>',
  says: 'takes in what another copy of the boat folder has: entries and forecasts',
  more: [
    'Two laptops each keep a log of their own. With the folder of one copied to a stick, the other takes in',
    'what it lacks:  hoveshort merge /media/stick/whimbrel --boat ~/whimbrel',
    'and for the way back, on the first, the same with a copy of the second. Any order, any number of times:',
    'both end with the same log. Nothing is changed in <folder>, nothing here is lost, boat.json stays ours.',
    'A boat of another name is refused without --yes.',
  ],
  example: 'hoveshort merge /media/stick/whimbrel --boat ~/whimbrel',
  options: ['yes'],
  async run({ words, options }, outside) {
    const [from, ...others] = words;
    if (from === undefined || others.length > 0) {
      const what = from === undefined ? '<folder> to merge' : 'one <folder> and no more';
      return complainOf([{ kind: 'wanting', what, example: merge.example }], outside);
    }
    const opened = await whichBoat(options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { folder, loaded: before } = opened.value;
    if (before.readOnly) return complainOf([before.readOnly], outside);
    const merged = await folder.merge(from, options.yes);
    if (!merged.ok) return complainOf(merged.troubles, outside);
    const after = await folder.read();
    if (!after.ok) return complainOf(after.troubles, outside);
    const news = whatIsNew(before, after.value);
    outside.print(
      options.json
        ? jsonText({ format: 1, boat: after.value.boat.name, from, ...merged.value, ...news })
        : page({ from, here: folder.path, merged: merged.value, after: after.value, news }, outside),
    );
    const { troubles } = merged.value;
    return troubles.length > 0 ? complainOf(troubles, outside) : STATUS.done;
  },
};

interface News {
  readonly entries: readonly Entry[];
  /** Entries of ours that are withdrawn now, by a strike that came with the other copy. */
  readonly struck: readonly Entry[];
  readonly trouble: LoadedBoat['troubles'];
}

function whatIsNew(before: LoadedBoat, after: LoadedBoat): News {
  const known = new Set([...before.entries, ...before.struck].map(factsOf));
  const stood = new Set(before.entries.map(factsOf));
  const told = new Set(before.troubles.map((trouble) => JSON.stringify(trouble)));
  return {
    entries: [...after.entries, ...after.struck].filter((entry) => !known.has(factsOf(entry))),
    struck: after.struck.filter((entry) => stood.has(factsOf(entry))),
    trouble: after.troubles.filter((trouble) => !told.has(JSON.stringify(trouble))),
  };
}

/** All that an entry says, its id without the checksum it is given once another has the same. */
function factsOf(entry: Entry): string {
  return JSON.stringify({ ...entry, id: entry.id.replace(/:.*/, '') });
}

interface Told {
  readonly from: string;
  readonly here: string;
  readonly merged: Merged;
  readonly after: LoadedBoat;
  readonly news: News;
}

function page({ from, here, merged, after, news }: Told, { zone }: Outside): string {
  const { boat } = after;
  const line = (entry: Entry) =>
    `   ${momentWords(Date.parse(entry.at), zone)}  ${cleanLine(entryWords(entry, boat), MOST_LETTERS)}  [${cleanLine(entry.id)}]`;
  const listed = (title: string, entries: readonly Entry[]) =>
    entries.length === 0
      ? []
      : [[title, ...(entries.length > MOST_LISTED ? [] : entries.map(line))].join('\n')];
  const taken = [
    ...listed(`taken in: ${counted(news.entries.length, 'entry', 'entries')} new here`, news.entries),
    ...listed(
      `struck over there, and so here: ${counted(news.struck.length, 'entry', 'entries')}`,
      news.struck,
    ),
    ...(merged.forecasts.length > 0
      ? [`taken in: ${counted(merged.forecasts.length, 'forecast', 'forecasts')}`]
      : []),
  ];
  const united = merged.files.filter(({ how }) => how === 'united');
  return `${[
    ...(taken.length > 0 ? taken : ['nothing new: all that is there is here already']),
    ...united.map(
      ({ name }) =>
        `log/${cleanLine(name)}: the two copies had gone different ways, as when a laptop is cloned; every line of both is kept`,
    ),
    ...news.trouble.map((trouble) => sayTrouble(trouble)),
    ...(merged.boatDiffers
      ? ['boat.json differs over there. Ours is left as it is: carry over by hand what should be in both.']
      : []),
    wayBack(merged, from, here),
  ].join('\n\n')}\n`;
}

function wayBack({ theyLack }: Merged, from: string, here: string): string {
  const [there, ours] = [from, here].map((folder) => cleanLine(folder, MOST_LETTERS));
  return theyLack
    ? `Some of what is here is not over there, where nothing was changed. For the way back: hoveshort merge ${ours} --boat ${there}`
    : 'Nothing that is here is wanting over there.';
}
