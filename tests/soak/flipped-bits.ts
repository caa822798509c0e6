import type { Disk } from '../../source/files/disk.ts';
import { stream } from '../../source/maths/stream.ts';
import { allTold, aSimulatedBoat, read, writeRemarks } from '../helpers/a-simulated-boat.ts';
import { anOutcome, type Campaign, found } from './campaign.ts';

const lines = 6;

/** One bit turned, by chance which, at every byte of a log in turn: told each time, and at most two lines lost by it. */
export const flippedBits: Campaign = {
  name: 'one bit turned at every byte of a log',
  count: 80,
  run: (count, seed) => turnBits(count, seed),
};

export async function turnBits(count: number, seed: number, spoil?: (disk: Disk) => Disk) {
  const outcome = anOutcome();
  for (let n = 0; n < count; n += 1) {
    const chance = stream(seed, `flipped ${n}`).uniform;
    const boat = aSimulatedBoat('gate0000', spoil ? { spoil } : {});
    const texts = Array.from({ length: lines }, (_, i) => `${i} ${'é'.repeat(Math.floor(chance() * 9))}`);
    await writeRemarks(boat.open(), texts);
    const bytes = boat.disk.see(boat.file)!;
    for (let at = 0; at < bytes.length; at += 1) {
      const bit = Math.floor(chance() * 8);
      outcome.count += 1;
      const turned = Buffer.from(bytes);
      turned[at]! ^= 1 << bit;
      boat.disk.put(boat.file, turned);
      const seen = await read(boat.open());
      const name = `log ${n}, bit ${bit} of byte ${at}`;
      if (allTold(seen).length === 0) found(outcome, 'undetected', name);
      const kept = seen.entries.filter((entry) => entry.kind === 'remark' && texts.includes(entry.text));
      if (kept.length < lines - 2 || kept.length < seen.entries.length)
        found(outcome, 'lost', `${name}: ${kept.length} of ${lines} left`);
    }
  }
  return outcome;
}
