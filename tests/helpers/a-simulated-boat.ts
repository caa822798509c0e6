import { boatFolder } from '../../source/files/boat-folder.ts';
import type { Disk } from '../../source/files/disk.ts';
import type { Keeping } from '../../source/files/shelf.ts';
import { stream } from '../../source/maths/stream.ts';
import type { BoatFolder, LoadedBoat } from '../../source/outside.ts';
import type { Trouble } from '../../source/trouble.ts';
import { aBoatText } from './a-boat-text.ts';
import { crcOf } from './a-laptop.ts';
import { SimulatedDisk } from './simulated-disk.ts';

/** A boat folder on a disk in memory, and the laptop that keeps it. */
export interface SimulatedBoat {
  readonly disk: SimulatedDisk;
  readonly keeping: Keeping;
  /** Where this laptop's first log file is. */
  readonly file: string;
  readonly mark: string;
  /** Opens it as a program just started would. */
  open(change?: Partial<Keeping>): BoatFolder;
}

const noon = Date.parse('2026-02-03T12:00:00Z');

/** `spoil` may put a fault of its own between the program and the disk. Several boats may share a disk. */
export function aSimulatedBoat(
  writer: string,
  {
    disk = new SimulatedDisk(stream(1, 'sound disk').uniform, ['/'], {}),
    spoil = (sound) => sound,
  }: { readonly disk?: SimulatedDisk; readonly spoil?: (disk: Disk) => Disk } = {},
): SimulatedBoat {
  const [boat, state] = [`/boat-${writer}`, `/state-${writer}`];
  disk.makeFolder(boat);
  disk.makeFolder(state);
  disk.put(`${boat}/boat.json`, Buffer.from(aBoatText));
  let writers = 0;
  const keeping: Keeping = {
    disk: spoil(disk),
    lock: (_, work) => work(),
    crc32: crcOf,
    boat,
    state,
    machine: Buffer.from(writer).toString('hex'),
    now: () => noon,
    newWriter: () => {
      writers += 1;
      return writers === 1 ? writer : `${writer.slice(0, 5)}${String(writers).padStart(3, '0')}`;
    },
  };
  return {
    disk,
    keeping,
    file: `${boat}/log/${writer}.ndjson`,
    mark: `${state}/${writer}.mark`,
    open: (change) => boatFolder({ ...keeping, ...change }),
  };
}

/** What a boat folder holds now; thrown where it cannot be opened. */
export async function read(open: BoatFolder): Promise<LoadedBoat> {
  const result = await open.read();
  if (!result.ok) throw new Error(`not opened: ${JSON.stringify(result.troubles)}`);
  return result.value;
}

/** The texts of its remarks. */
export async function textsOf(open: BoatFolder): Promise<readonly string[]> {
  const { entries } = await read(open);
  return entries.flatMap((entry) => (entry.kind === 'remark' ? [entry.text] : []));
}

/** Saves remarks one by one; thrown where one is not saved. */
export async function writeRemarks(open: BoatFolder, texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    const saved = await open.append([{ kind: 'remark', at: '2026-02-03T07:42:00Z', text }]);
    if (!saved.ok) throw new Error(`not saved: ${JSON.stringify(saved.troubles)}`);
  }
}

/** All that is told to anyone, `inspect` included. */
export function allTold({ troubles, quiet }: LoadedBoat): readonly Trouble[] {
  return [...troubles, ...quiet].filter(({ kind }) => kind !== 'little room');
}
