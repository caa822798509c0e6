import { closeSync, fdatasyncSync, mkdirSync, openSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import { believe } from '../../source/inference/believe.ts';
import { LAST_MORNING } from './long-log.ts';
import { medians, type Row, timeOf } from './row.ts';

const ROUNDS = 21;
const ENTRIES = 40;

/** Entries saved one by one, each on the disk before the next, beside a bare loop that writes as many bytes and syncs them. */
export async function savingRow(folder: string, boatFile: string): Promise<Row> {
  const boat = join(folder, 'saving');
  mkdirSync(join(boat, 'log'), { recursive: true });
  writeFileSync(join(boat, 'boat.json'), boatFile);
  const log = boatFolder(keepingOn(boat, join(folder, 'saving-state'), Date.now));
  const save = async () => {
    const saved = await log.append([{ kind: 'check', check: 'house-bank', at: LAST_MORNING, value: 12.6 }]);
    if (!saved.ok) throw new Error(JSON.stringify(saved.troubles));
  };
  await save();
  const bare = openSync(join(folder, 'bare'), 'a');
  const line = Buffer.alloc(190, 'x');
  const a = await medians(ROUNDS, {
    bare: () =>
      timeOf(() => {
        for (let i = 0; i < ENTRIES; i += 1) {
          writeSync(bare, line);
          fdatasyncSync(bare);
        }
      }),
    ours: () =>
      timeOf(async () => {
        for (let i = 0; i < ENTRIES; i += 1) await save();
      }),
  });
  closeSync(bare);
  const rate = (ms: number) => (1000 * ENTRIES) / ms;
  return {
    what: 'entries saved, each on the disk',
    unit: 'a second',
    ours: rate(a.ours),
    floor: { what: 'write + fdatasync', value: rate(a.bare) },
    goal: { atLeast: 0.8 },
  };
}

/** All that is known and believed from a log of ten years, beside reading it from the disk. Both in one process, so both warm. */
export async function inferenceRow(folder: string, boat: string, entries: string): Promise<Row> {
  const read = async () => {
    const loaded = await boatFolder(keepingOn(boat, join(folder, 'state'), Date.now)).read();
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.troubles));
    return loaded.value;
  };
  const loaded = await read();
  const { ours, reading } = await medians(9, {
    reading: () => timeOf(read),
    ours: () =>
      timeOf(() => believe(loaded.boat, conditionAt(loaded.boat, loaded.entries, Date.parse(LAST_MORNING)))),
  });
  return {
    what: `inference, ${entries} entries`,
    unit: 'ms',
    ours,
    floor: { what: 'reading them', value: reading },
    goal: { atMost: 1.5 },
  };
}
