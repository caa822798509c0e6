import type { BoatFolder, LoadedBoat, Outside } from '../outside.ts';
import { bad, good, type Result } from '../trouble.ts';
import type { Options } from './options.ts';

export interface OpenBoat {
  readonly folder: BoatFolder;
  readonly loaded: LoadedBoat;
}

/** The boat meant: `--sample`, else `--boat`, else the current folder where it holds a boat, else the last one opened. */
export async function whichBoat(options: Options, outside: Outside): Promise<Result<OpenBoat>> {
  if (options.sample) {
    const copy = await outside.sample();
    return copy.ok ? openFolder(copy.value, outside) : copy;
  }
  if (options.boat !== null) return openFolder(options.boat, outside);
  const here = await openFolder('.', outside);
  if (here.ok || !here.troubles.every(({ kind }) => kind === 'no boat folder')) return here;
  const { lastBoat } = await outside.settings();
  return lastBoat === null ? here : openFolder(lastBoat, outside);
}

export async function openFolder(path: string, outside: Outside): Promise<Result<OpenBoat>> {
  const folder = outside.boat(path);
  const read = await folder.read();
  return read.ok ? good({ folder, loaded: read.value }) : bad(...read.troubles);
}
