import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import path from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { crc32 } from 'node:zlib';
import { type BoardStart, run } from './commands/run.ts';
import type { OpenBoat } from './commands/which-boat.ts';
import { conditionAt } from './condition/condition-at.ts';
import { askingOn } from './files/asking.ts';
import { boatFolder } from './files/boat-folder.ts';
import { realDisk } from './files/disk.ts';
import { jpeg2000In } from './files/jpeg-2000.ts';
import { keepingOn } from './files/keeping.ts';
import { newFolder } from './files/new-boat.ts';
import { readSmallFile } from './files/read-text.ts';
import { copySample } from './files/sample.ts';
import { settingsIn } from './files/settings.ts';
import type { Turns } from './maths/turns.ts';
import type { Outside, Terminal } from './outside.ts';
import { bad, good, type Result } from './trouble.ts';
import { tracing } from './words/traced.ts';

// What is read of a log is kept, so room for what is soon forgotten does not help: it would grow by a hundred megabytes while one is read.
setFlagsFromString('--semi-space-growth-factor=1');

const { env, stdin, stdout, stderr } = process;
const samples: string[] = [];
/** As long at a time as nobody feels a key wait, ms: a frame may be drawn every 33. */
const TURN_MS = 8;
/** On standard error, so that what is printed stays the answer. */
const asking = askingOn(stdin, stderr);

const outside: Outside = {
  now: () => Date.now(),
  get zone() {
    return Intl.DateTimeFormat().resolvedOptions().timeZone;
  },
  print: (text) => void stdout.write(text),
  complain: (text) => void stderr.write(text),
  input,
  file: async (file, mostBytes) => readSmallFile(realDisk, file, mostBytes),
  ask: async (question) => (stdin.isTTY === true && stderr.isTTY === true ? await asking(question) : null),
  decodeJpeg2000: jpeg2000In(path.join(import.meta.dirname, 'openjpeg', 'openjpegwasm_decode.cjs')),
  sha256: (bytes) => createHash('sha256').update(bytes).digest('hex'),
  boat: (folder) => boatFolder(keepingOn(folder, stateOf(folder), Date.now)),
  newBoat: async (folder) =>
    newFolder((place) => keepingOn(place, stateOf(place), Date.now), fromHome(folder)),
  async sample() {
    const parent = mkdtempSync(path.join(tmpdir(), 'hoveshort-sample-'));
    samples.push(parent);
    return copySample(
      { disk: realDisk, crc32: (bytes) => crc32(bytes) },
      {
        from: path.join(import.meta.dirname, '..', 'sample-boat'),
        to: path.join(parent, 'boat'),
        nowMs: Date.now(),
      },
    );
  },
  settings: settingsIn(homeFor('XDG_CONFIG_HOME', '.config')),
  terminal: terminal(),
};

// A reader that has seen enough (`log | head`) is no fault.
stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});
process.on('exit', () => {
  for (const sample of samples) rmSync(sample, { recursive: true, force: true });
});
process.exitCode = await run(process.argv.slice(2), outside, { board });
stdin.unref?.();

async function board(start: BoardStart): Promise<number> {
  const { at, zone, machineZone, seed, simulations } = start;
  // Read by the colour library when Ink is loaded, so before that.
  if (!outside.terminal.colour) env.FORCE_COLOR = '0';
  const [{ openBoard }, { hostOf }] = await Promise.all([
    import('./screens/open.tsx'),
    import('./screens/host.ts'),
  ]);
  const moment = () => at ?? Date.now();
  let folder = start.boat?.folder ?? null;
  let first = start.boat && good(start.boat.loaded);
  let latest = start.boat?.loaded ?? null;
  let watchAnew = () => {};
  const opening = async (opened: Promise<Result<OpenBoat>>) => {
    const boat = await opened;
    if (!boat.ok) return boat;
    folder = boat.value.folder;
    first = good(boat.value.loaded);
    watchAnew();
    return good(null);
  };
  return openBoard({
    outside: { ...outside, zone, now: moment },
    boat: folder?.path ?? null,
    host: hostOf(process),
    stands: at !== null,
    machineZone,
    edit: () => edited(path.join(folder?.path ?? '.', 'boat.json')),
    none: start.boat ? null : start.told,
    work: {
      async load() {
        const read = first ?? (await folder?.read()) ?? bad();
        first = null;
        if (!read.ok) return read;
        latest = read.value;
        const { boat, entries } = read.value;
        const own = (await folder?.tables()) ?? { tables: [], troubles: [] };
        return good({ ...read.value, own, condition: conditionAt(boat, entries, moment()), seenUntil: at });
      },
      async judge(of, wanted) {
        const answered = await inTurns(start.answering(of, { seed, simulations }), wanted);
        return answered?.document ?? null;
      },
      trace: (of, asked, wanted) => inTurns(tracing(of, asked), wanted),
      save: async (drafts) =>
        folder && latest
          ? await folder.append(start.withDecisions(drafts, latest, { seed, simulations }))
          : bad(),
      takeIn: async (content, text, now) =>
        folder ? await start.takeIn(content, { text, now }, { folder, outside }) : bad(),
      changeBoat: async (change) => (await folder?.changeBoat(change)) ?? bad(),
      begin: (boat, place) => opening(start.begin(boat, place)),
      sample: () => opening(start.sample()),
      watch(changed) {
        let stop = folder?.watch(changed);
        watchAnew = () => {
          stop?.();
          stop = folder?.watch(changed);
        };
        return () => stop?.();
      },
    },
  });
}

/** Lets keys and frames have their turn between those of the work. Null once it is no longer wanted. */
async function inTurns<T>(work: Turns<T>, wanted: () => boolean): Promise<T | null> {
  for (;;) {
    const until = performance.now() + TURN_MS;
    do {
      const turn = work.next();
      if (turn.done) return turn.value;
    } while (performance.now() < until);
    await new Promise((next) => setImmediate(next));
    if (!wanted()) return null;
  }
}

/** The person's editor on a file, until it is closed. */
async function edited(file: string): Promise<void> {
  const editor = env.VISUAL || env.EDITOR || (process.platform === 'win32' ? 'notepad' : 'vi');
  const words = editor.split(' ').filter((word) => word !== '');
  const child = spawn(words[0] ?? 'vi', [...words.slice(1), file], { stdio: 'inherit' });
  await new Promise<void>((done) => {
    child.once('close', () => done());
    child.once('error', () => done());
  });
}

/** `~/whimbrel` as a shell would have it. */
function fromHome(folder: string): string {
  return folder.replace(/^~(?=[/\\]|$)/u, () => homedir());
}

/** Marks and locks of this laptop, outside the boat folder; those of a sample copy go with it. */
function stateOf(folder: string): string {
  const sample = samples.find((parent) => folder.startsWith(parent));
  return sample ? path.join(sample, 'state') : homeFor('XDG_STATE_HOME', '.local/state');
}

function homeFor(variable: string, usual: string): string {
  if (process.platform === 'win32')
    return path.join(env.LOCALAPPDATA ?? homedir(), 'hoveshort', variable.slice(4, -5));
  return path.join(env[variable] || path.join(homedir(), usual), 'hoveshort');
}

function terminal(): Terminal {
  const dumb = env.TERM === 'dumb';
  return {
    interactive: stdin.isTTY === true && stdout.isTTY === true && !dumb,
    columns: stdout.columns || 80,
    colour: !env.NO_COLOR && !dumb,
    utf8: process.platform === 'win32' || /utf-?8/i.test(env.LC_ALL || env.LC_CTYPE || env.LANG || ''),
    screenReader: env.INK_SCREEN_READER === 'true',
  };
}

async function input(mostBytes: number): Promise<Result<Uint8Array>> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of stdin as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > mostBytes)
      return {
        ok: false,
        troubles: [{ kind: 'file too large', file: 'standard input', bytes, most: mostBytes }],
      };
    chunks.push(chunk);
  }
  return good(Buffer.concat(chunks));
}
