import type { BoatFolder, Outside } from '../outside.ts';
import { cleanLine } from '../words/clean.ts';
import { counted } from '../words/say.ts';
import { complainOf } from './show.ts';
import { STATUS } from './status.ts';

const MOST_LETTERS = 300;
/** So many boats a person may have copied from time to time. */
const MOST_KEPT = 50;

/**
 * Copies the boat folder to the second place named in the preferences, if one is, and remembers when. Said on standard error, for it is no answer. Nothing
 * that goes wrong here touches the boat folder.
 */
export async function copyOnLeaving(folder: BoatFolder, outside: Outside): Promise<number> {
  const settings = await outside.settings();
  if (settings.backup === null) return STATUS.done;
  outside.complain(`copying to ${cleanLine(settings.backup, MOST_LETTERS)} ...\n`);
  const copied = await folder.copyTo(settings.backup);
  if (!copied.ok) return complainOf(copied.troubles, outside);
  const { from, to, entries, more } = copied.value;
  const copy = { boat: from, place: settings.backup, at: new Date(outside.now()).toISOString() };
  const others = settings.checkedCopies.filter(({ boat }) => boat !== from);
  await settings.set({ checkedCopies: [copy, ...others].slice(0, MOST_KEPT) });
  const where = cleanLine(to, MOST_LETTERS);
  outside.complain(`copied and checked: ${counted(entries, 'entry', 'entries')} in ${where}\n`);
  if (more > 0) {
    const what = counted(more, 'entry that is', 'entries that are');
    outside.complain(
      `the copy has ${what} not here. To take in what it has: hoveshort merge ${where} --boat ${cleanLine(from, MOST_LETTERS)}\n`,
    );
  }
  return STATUS.done;
}
