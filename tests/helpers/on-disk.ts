import { run } from '../../source/commands/run.ts';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import type { BoatOnDisk } from './a-boat-folder.ts';
import { hasty } from './a-boat-folder.ts';
import { anOutside, NOW } from './an-outside.ts';

/** Runs a command on the disk, as the laptop whose marks are kept beside `boat`. */
export async function runOn(boat: BoatOnDisk, args: readonly string[]) {
  const outside = {
    ...anOutside({}),
    boat: (path: string) => boatFolder({ ...keepingOn(path, boat.state, () => NOW), ...hasty }),
  };
  const status = await run([...args, '--boat', boat.folder], outside, {
    board: () => Promise.reject(new Error('the board was opened')),
  });
  return { status, ...outside.written() };
}
