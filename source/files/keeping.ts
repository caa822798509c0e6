import { crc32 } from 'node:zlib';
import { realDisk } from './disk.ts';
import { locksIn } from './lock.ts';
import { machineId } from './machine.ts';
import type { Keeping } from './shelf.ts';
import { newWriterId } from './writer-id.ts';

/** Keeps the log of a boat folder on this computer's disk. `state` is this laptop's folder for marks and locks; it need not be there yet. */
export function keepingOn(boat: string, state: string, now: () => number): Keeping {
  return {
    disk: realDisk,
    lock: locksIn(state),
    crc32: (bytes) => crc32(bytes),
    boat,
    state,
    machine: machineId(),
    now,
    newWriter: newWriterId,
  };
}
