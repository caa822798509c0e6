import { boatFolder } from '../../source/files/boat-folder.ts';
import type { Disk } from '../../source/files/disk.ts';
import type { Keeping } from '../../source/files/shelf.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { stream } from '../../source/maths/stream.ts';
import type { BoatFolder } from '../../source/outside.ts';
import type { Trouble } from '../../source/trouble.ts';
import { aBoatText } from './a-boat-text.ts';
import { crcOf } from './a-laptop.ts';
import { type Fault, PowerCut, SimulatedDisk } from './simulated-disk.ts';

/** What a life showed that must not be. Empty: all is well. */
export interface Findings {
  /** Confirmed, and then not there, with nothing said. */
  readonly lost: string[];
  /** There, though nobody had written it, or though the skipper had been told it was not saved. */
  readonly invented: string[];
  /** Damage told where there was none. */
  readonly falseAlarms: string[];
  /** What the program did that no one could put right. */
  readonly broken: string[];
  readonly confirmed: number;
}

const boat = '/boat';
const state = '/state';
const sessions = 6;

/**
 * Lives through some sessions aboard on a disk that fails and loses power, all by one seed: entries are saved one and several at a time, and after each
 * restart everything confirmed has to be there. `spoil` may put a fault of its own between the program and the disk.
 */
export async function liveOnAFailingDisk(
  seed: number,
  spoil: (disk: Disk) => Disk = (disk) => disk,
): Promise<Findings> {
  const chance = stream(seed, 'failing disk').uniform;
  const upTo = (most: number) => Math.floor(chance() * most);
  const disk = new SimulatedDisk(chance, ['/', boat, state], { [`${boat}/boat.json`]: aBoatText });
  const found: Findings = { lost: [], invented: [], falseAlarms: [], broken: [], confirmed: 0 };
  const confirmed = new Set<string>();
  const written = new Set<string>();
  let writers = 0;
  const keeping: Keeping = {
    disk: spoil(disk),
    lock: (_, work) => work(),
    crc32: crcOf,
    boat,
    state,
    machine: '0123456789abcdef',
    now: () => Date.parse('2026-02-03T08:00:00Z'),
    newWriter: () => {
      writers += 1;
      return `wave${String(writers).padStart(4, '0')}`;
    },
  };

  for (let session = 0; session < sessions; session += 1) {
    const open = boatFolder(keeping);
    disk.arm(null);
    await look(open, { found, confirmed, written, sure: true });
    disk.arm(session === sessions - 1 ? null : aFault(chance));
    const refused = new Set<string>();
    try {
      for (let deed = 0; deed < 4; deed += 1) {
        const drafts = Array.from({ length: 1 + upTo(3) }, (_, i) => remark(`${session}.${deed}.${i}`));
        for (const { text } of drafts) written.add(text);
        const saved = await open.append(drafts);
        for (const { text } of drafts) (saved.ok ? confirmed : refused).add(text);
        if (chance() < 0.3) await look(open, { found, confirmed, written, sure: false });
      }
      disk.arm(null);
      await look(boatFolder(keeping), { found, confirmed, written, refused, sure: disk.met.length < 2 });
    } catch (error) {
      if (!(error instanceof PowerCut)) found.broken.push(String(error));
    }
    disk.met.length = 0;
    if (chance() < 0.8) disk.restart();
  }
  return { ...found, confirmed: confirmed.size };
}

function remark(text: string): Draft & { text: string } {
  return { kind: 'remark', at: '2026-02-03T07:42:00Z', text };
}

function aFault(chance: () => number): Fault {
  const how =
    (['power cut', 'power cut', 'EIO', 'ENOSPC', 'short write'] as const)[Math.floor(chance() * 5)] ?? 'EIO';
  return {
    at: 1 + Math.floor(chance() * 120),
    how,
    lasts: chance() < 0.7 ? 1 : 1 + Math.floor(chance() * 30),
  };
}

interface Known {
  readonly found: Findings;
  readonly confirmed: ReadonlySet<string>;
  readonly written: ReadonlySet<string>;
  readonly refused?: ReadonlySet<string>;
  /** The disk is not failing now: nothing may be missing for want of reading. */
  readonly sure: boolean;
}

async function look(open: BoatFolder, { found, confirmed, written, refused, sure }: Known): Promise<void> {
  const read = await open.read();
  if (!read.ok) {
    if (sure) found.broken.push(JSON.stringify(read.troubles));
    return;
  }
  const { entries, troubles } = read.value;
  const texts = new Set(entries.flatMap((entry) => (entry.kind === 'remark' ? [entry.text] : [])));
  const unread = troubles.some(({ kind }) => kind === 'cannot read');
  for (const text of confirmed) if (!texts.has(text) && !(unread && !sure)) found.lost.push(text);
  for (const text of texts) if (!written.has(text) || (sure && refused?.has(text))) found.invented.push(text);
  if (texts.size !== entries.length) found.invented.push('an entry twice');
  for (const trouble of troubles) {
    if (sure && !mayBeTold(trouble)) found.falseAlarms.push(JSON.stringify(trouble));
  }
}

/**
 * After a power cut: a line torn or overwritten, and the gap before a line of which only the last of a batch survived (what was lost had not been confirmed,
 * but the log alone cannot know that). Never that an older copy was put back, or a chain broken.
 */
function mayBeTold(trouble: Trouble): boolean {
  if (trouble.kind === 'lines missing') return trouble.why === 'gap';
  return trouble.kind === 'line cut off' || trouble.kind === 'line damaged' || trouble.kind === 'disk error';
}
