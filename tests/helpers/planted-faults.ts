import type { Disk } from '../../source/files/disk.ts';
import { readLine } from '../../source/logbook/line.ts';
import { crcOf } from './a-laptop.ts';
import { changed } from './changed-disk.ts';

const lf = 0x0a;

/** Programs that are wrong in one way each, made of the right one by what comes between it and the disk. */
export const PLANTED = {
  'no seal': (disk: Disk) =>
    changed(disk, {
      write: (file, bytes, position) => {
        const seal = bytes[0] === lf ? 1 : 0;
        return seal + (bytes.length > seal ? disk.write(file, bytes.subarray(seal), position) : 0);
      },
    }),
  'stop at the first bad line': (disk: Disk) =>
    changed(disk, {
      read: (file, into, position) => {
        const whole = new Uint8Array(disk.openFacts(file).bytes);
        disk.read(file, whole, 0);
        const got = whole.subarray(position, Math.min(soundEnd(whole), position + into.length));
        into.set(got);
        return got.length;
      },
    }),
  'a write in two parts': (disk: Disk) =>
    changed(disk, {
      write: (file, bytes, position) => {
        const half = bytes.length >> 1;
        const first = disk.write(file, bytes.subarray(0, half), position);
        const rest = disk.write(file, bytes.subarray(half), position === null ? null : position + half);
        return first + rest;
      },
    }),
  'no append mode': (disk: Disk) => {
    const ends = new Map<number, number>();
    return changed(disk, {
      open: (path, opening) => {
        const file = disk.open(path, opening === 'append' ? 'change' : opening);
        ends.set(file, disk.openFacts(file).bytes);
        return file;
      },
      write: (file, bytes, position) => disk.write(file, bytes, position ?? ends.get(file) ?? 0),
    });
  },
  'no sync': (disk: Disk) => changed(disk, { syncData: () => {} }),
  'a rename without a sync of the folder': (disk: Disk) => changed(disk, { syncFolder: () => {} }),
  'what was written in part not taken back': (disk: Disk) => changed(disk, { cut: () => {} }),
} as const satisfies { readonly [fault: string]: (disk: Disk) => Disk };

/** Where the first line ends that is no entry. A file that is not of lines, as boat.json, is left whole. */
function soundEnd(bytes: Uint8Array): number {
  if (bytes.indexOf(lf) < 0) return bytes.length;
  for (let start = 0; start < bytes.length; ) {
    const stop = bytes.indexOf(lf, start);
    if (stop < 0) return bytes.length;
    if (readLine(bytes.subarray(start, stop), crcOf).how !== 'entry')
      return start === 0 ? bytes.length : stop + 1;
    start = stop + 1;
  }
  return bytes.length;
}
