import type { Disk } from '../../source/files/disk.ts';
import { replaceFile } from '../../source/files/replace.ts';
import { stream } from '../../source/maths/stream.ts';
import { PowerCut, SimulatedDisk } from './simulated-disk.ts';

/** Replaces a file again and again while the power goes; null when it was always there whole, and the newest once it was said to be. */
export function wrongAfterReplacing(
  seed: number,
  spoil: (disk: Disk) => Disk = (disk) => disk,
): string | null {
  const chance = stream(seed, 'replaced').uniform;
  const simulated = new SimulatedDisk(chance, ['/', '/boat'], { '/boat/boat.json': 'version 0' });
  const disk = spoil(simulated);
  let may = new Set(['version 0']);
  for (let n = 1; n <= 6; n += 1) {
    const text = `version ${n}`;
    const how = (['power cut', 'EIO', 'ENOSPC', 'short write'] as const)[Math.floor(chance() * 4)]!;
    simulated.arm({ at: 1 + Math.floor(chance() * 14), how, lasts: 1 });
    try {
      const failed = replaceFile(disk, '/boat/boat.json', Buffer.from(text), { backup: chance() < 0.5 });
      may = failed ? may.add(text) : new Set([text]);
    } catch (error) {
      if (!(error instanceof PowerCut)) throw error;
      may.add(text);
    }
    simulated.arm(null);
    const restarted = chance() < 0.7;
    if (restarted) simulated.restart();
    const found = simulated.see('/boat/boat.json')?.toString() ?? 'nothing';
    if (!may.has(found)) return `${found} instead of ${[...may].join(' or ')}`;
    /** What is seen without a restart may still be lost at the next. */
    if (restarted) may = new Set([found]);
  }
  return null;
}
