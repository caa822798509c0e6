import type { Disk } from '../../source/files/disk.ts';
import { stream } from '../../source/maths/stream.ts';
import { aSimulatedBoat, textsOf } from './a-simulated-boat.ts';

/**
 * One program saves, and at any of its calls to the disk another saves an entry in between, as where locks do not work. Some are refused then, and ids may be given
 * twice, which is told; but nothing that was said to be saved is lost. Gives what was.
 */
export async function lostBetweenTwoWriters(
  seed: number,
  spoil: (disk: Disk) => Disk = (disk) => disk,
): Promise<readonly string[]> {
  const chance = stream(seed, 'interleaved').uniform;
  const boat = aSimulatedBoat('mast0000');
  const saved: string[] = [];
  const other = boat.open();
  let between = true;
  const interrupt = () => {
    if (between || chance() > 0.1) return;
    between = true;
    saveIn(other, 'other');
    between = false;
  };
  const disk = new Proxy(boat.disk, {
    get: (target, name) => {
      const method = Reflect.get(target, name);
      if (typeof method !== 'function') return method;
      return (...given: unknown[]) => {
        interrupt();
        return method.apply(target, given);
      };
    },
  });
  const open = boat.open({ disk: spoil(disk) });
  let count = 0;
  const saveIn = (folder: typeof open, who: string) => {
    count += 1;
    const text = `${who} ${count}`;
    /** All of it happens before the promise is handed out; only the news of it comes later. */
    return folder
      .append([{ kind: 'remark', at: '2026-02-03T07:42:00Z', text }])
      .then((result) => void (result.ok && saved.push(text)));
  };
  await saveIn(open, 'first');
  between = false;
  for (let i = 0; i < 8; i += 1) await saveIn(open, 'one');
  between = true;
  const there = new Set(await textsOf(boat.open()));
  return saved.filter((text) => !there.has(text));
}
