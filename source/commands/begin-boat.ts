import type { BoatFile } from '../boat/boat.ts';
import { readBoat } from '../boat/read.ts';
import { templateBoat } from '../boat/template.ts';
import type { Entry } from '../logbook/entries.ts';
import { firstEntries } from '../logbook/first-entries.ts';
import type { NewFolder, Outside } from '../outside.ts';
import { bad, good, type Result } from '../trouble.ts';
import { doubtsAbout } from '../words/doubts.ts';
import { instant } from '../words/figures.ts';
import type { NewBoat } from '../words/new-boat.ts';

export interface Begun {
  readonly file: BoatFile;
  readonly saved: readonly Entry[];
}

/** Writes the folder of a new boat and remembers it as the last one. What would be in trouble once it is there is not written at all. `now` is when the readings were taken, ms. */
export async function beginBoat(
  { answers, readings }: NewBoat,
  { place, now }: { readonly place: NewFolder; readonly now: number },
  outside: Pick<Outside, 'settings'>,
): Promise<Result<Begun>> {
  const file = templateBoat(answers);
  const text = `${JSON.stringify(file, null, 2)}\n`;
  const boat = readBoat(text, 'boat.json');
  if (!boat.ok) return boat;
  const settings = await outside.settings();
  const at = instant(Math.floor(now / 1000) * 1000);
  const drafts = firstEntries(file, readings, { at, by: settings.name });
  const empty = { boat: boat.value, entries: [], struck: [], troubles: [], forecasts: [], readOnly: null };
  const doubts = doubtsAbout(
    drafts.map((draft) => ({ draft })),
    { ...empty, quiet: [] },
    now,
    false,
  );
  if (doubts.length > 0) return bad(...doubts);
  const saved = await place.fill(text, drafts);
  if (!saved.ok) return saved;
  await settings.set({ lastBoat: place.path });
  return good({ file, saved: saved.value });
}
