import { conditionAt } from '../condition/condition-at.ts';
import { type Draft, type Entry, entryKinds } from '../logbook/entries.ts';
import type { LoadedBoat, Outside } from '../outside.ts';
import type { Trouble } from '../trouble.ts';
import { cleanLine } from '../words/clean.ts';
import { type Asked, doubtsAbout } from '../words/doubts.ts';
import { entryWords } from '../words/entry-words.ts';
import { counted, momentWords } from '../words/say.ts';
import { typedDraft } from '../words/typed-draft.ts';
import type { Command, Request } from './command.ts';
import { withDecisions, withVerdict } from './decided.ts';
import { draftsFromLines } from './draft-lines.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';
import { whichBoat } from './which-boat.ts';

/** A decade of a busy log is a tenth of it. */
const MOST_INPUT_BYTES = 64 * 1024 * 1024;
const MOST_TROUBLES = 100;
const MOST_LETTERS = 400;
/** More than so many are confirmed by their number alone. */
const MOST_CONFIRMED = 20;

export const record: Command = {
  word: 'record',
  takes: '<kind> field=value ... | -',
  says: 'saves an entry in the log; with - bare entries from standard input',
  more: [
    'Values as people type them: amount=300ml level=1/2 share=full reading=3412.6 at="yesterday 18:00".',
    `Kinds: ${Object.keys(entryKinds).join(', ')}.`,
    'left logs the decision to go beside the verdict; record decision choice=stay text="why" logs another.',
    'record strike entry=<id> withdraws an entry; striking the strike restores it.',
    'record - reads JSON lines ("kind", "at", fields in file units, "by" and "key" if wanted):',
    'all are saved or none, and a "key" already in the log is skipped.',
  ],
  example: 'hoveshort record topup fluid=gear-oil amount=300ml share=full',
  options: ['yes'],
  async run(request, outside) {
    const opened = await whichBoat(request.options, outside);
    if (!opened.ok) return complainOf(opened.troubles, outside);
    const { folder, loaded } = opened.value;
    if (loaded.readOnly) return complainOf([loaded.readOnly], outside);
    const now = request.options.at ?? outside.now();
    const { asked, troubles } = await entriesAsked(request, loaded, outside);
    const fresh = withoutKnownKeys(asked, loaded);
    const doubts = doubtsAbout(fresh, loaded, outside.now(), request.options.yes);
    if (troubles.length + doubts.length > 0) return complainOf(firstOf([...troubles, ...doubts]), outside);
    const drafts = fresh.map(({ draft }) => draft);
    const typed = request.words[0] !== '-';
    const saved = await folder.append(typed ? withDecisions(drafts, loaded, request.options) : drafts);
    if (!saved.ok) return complainOf(saved.troubles, outside);
    if (typed && drafts.some(({ kind }) => kind === 'left')) outside.complain(looksNotMade(loaded, now));
    const skipped = asked.length - fresh.length;
    outside.print(
      request.options.json
        ? jsonText({ format: 1, saved: saved.value, skipped })
        : confirmation(saved.value, skipped, loaded, outside.zone),
    );
    return STATUS.done;
  },
};

async function entriesAsked(
  { words, options }: Request,
  loaded: LoadedBoat,
  outside: Outside,
): Promise<{ readonly asked: readonly Asked[]; readonly troubles: readonly Trouble[] }> {
  const now = options.at ?? outside.now();
  if (words[0] !== '-') {
    const { name: by } = await outside.settings();
    const typing = { loaded, now, zone: outside.zone };
    return typedDraft(withVerdict(words, typing, options), { ...typing, by });
  }
  const input = await outside.input(MOST_INPUT_BYTES);
  return input.ok
    ? draftsFromLines(new TextDecoder().decode(input.value))
    : { asked: [], troubles: input.troubles };
}

/** A file of nonsense has a trouble a line; the first ones tell as much as all of them. */
function firstOf(troubles: readonly Trouble[]): readonly Trouble[] {
  const more = troubles.length - MOST_TROUBLES;
  if (more <= 0) return troubles;
  return [
    ...troubles.slice(0, MOST_TROUBLES),
    { kind: 'more troubles', file: 'standard input', count: more },
  ];
}

/** Entries with one `key` count once: those already in the log, struck or not, and repetitions within the request are left out. */
function withoutKnownKeys(asked: readonly Asked[], { entries, struck }: LoadedBoat): readonly Asked[] {
  const known = new Set([...entries, ...struck].flatMap(({ key }) => (key === undefined ? [] : [key])));
  return asked.filter(({ draft: { key } }: { draft: Draft }) => {
    if (key === undefined) return true;
    if (known.has(key)) return false;
    known.add(key);
    return true;
  });
}

/** The looks to be made before every departure that were not, as a warning; empty where all were. */
function looksNotMade({ boat, entries }: LoadedBoat, now: number): string {
  const { checks, underWay } = conditionAt(boat, entries, now);
  if (underWay !== null) return '';
  const missed = boat.checks.filter(
    ({ id, when }) =>
      when === 'leaving' && !(checks.get(id)?.madeSinceArrival && checks.get(id)?.unsettledBy === null),
  );
  if (missed.length === 0) return '';
  return `Looks before leaving that were not made: ${missed.map(({ name }) => cleanLine(name)).join(', ')}.\n`;
}

function confirmation(saved: readonly Entry[], skipped: number, loaded: LoadedBoat, zone: string): string {
  const { boat } = loaded;
  const lines =
    saved.length > MOST_CONFIRMED
      ? []
      : saved.map((entry) => {
          const what = cleanLine(entryWords(entry, boat) + struckWords(entry, loaded), MOST_LETTERS);
          return `saved: ${momentWords(Date.parse(entry.at), zone)}  ${what}  [${entry.id}]`;
        });
  if (saved.length > MOST_CONFIRMED || saved.length === 0)
    lines.push(`saved: ${counted(saved.length, 'entry', 'entries')}`);
  if (skipped > 0) lines.push(`skipped: ${counted(skipped, 'entry', 'entries')} already in the log by key`);
  return `${lines.join('\n')}\n`;
}

/** What a strike withdraws, in words: an id alone tells nobody that it was the right one. */
function struckWords(entry: Entry, { boat, entries, struck }: LoadedBoat): string {
  if (entry.kind !== 'strike') return '';
  const target = [...entries, ...struck].find(({ id }) => id === entry.entry);
  return target ? ` (${entryWords(target, boat)})` : '';
}
