import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { asleep } from './asleep.ts';
import { openTerminal, type TestTerminal } from './terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const SAMPLE = path.resolve('sample-boat');
const AT = '2026-06-14T07:30:00Z';
/** The answer's figures do not matter here, only that there is one soon. */
const SIMULATIONS = '256';
const ESCAPE = '\u001b';
/** Pages lie deeper on one another only where a script is very long. */
const mostBacks = 12;
const mostLooks = 300;
/** The last frame may be kept back, and what was saved is read again by then. */
const SETTLED_MS = 150;
/** Longer than Ink keeps back a frame (33 ms) or a lone Escape (20 ms). */
export const DRAWN_MS = 45;

/** A chunk of keys, and what comes after it: a pause, or a wait until the program has slept for so long. */
export interface Chunk {
  readonly keys: string;
  readonly rest: { readonly pauseMs: number } | { readonly asleepMs: number };
}

interface Played {
  /** The screen at last, and all that a person would find again on the disk. */
  readonly end: string;
  /** The chunks after which more was on the disk. */
  readonly wrote: readonly number[];
}

/** Plays scripts of keys into the built program, each from the first screen of the sample boat. */
export interface Player {
  play(chunks: readonly Chunk[]): Promise<Played>;
  leave(): void;
}

interface Aboard {
  readonly parent: string;
  readonly terminal: TestTerminal;
  readonly first: string;
  readonly kept: string;
}

/** The program stays open from script to script, as long as nothing was written and Escape leads back to the first screen. */
export function aPlayer(): Player {
  let aboard: Aboard | null = null;
  const leave = () => {
    if (!aboard) return;
    aboard.terminal.close();
    rmSync(aboard.parent, { recursive: true, force: true });
    aboard = null;
  };
  return {
    leave,
    async play(chunks) {
      aboard ??= await opened();
      const { terminal, parent } = aboard;
      const wrote: number[] = [];
      let bytes = bytesIn(parent);
      for (const [index, { keys, rest }] of chunks.entries()) {
        terminal.type(keys);
        if ('pauseMs' in rest) await after(rest.pauseMs);
        else await asleep(terminal.pid, rest.asleepMs);
        const now = bytesIn(parent);
        if (now !== bytes) wrote.push(index);
        bytes = now;
      }
      await asleep(terminal.pid, SETTLED_MS);
      const end = `${shownIn(aboard)}\n${keptIn(parent)}`;
      if (!(await backAtFirst(aboard))) leave();
      return { end, wrote };
    },
  };
}

async function opened(): Promise<Aboard> {
  const parent = mkdtempSync(path.join(tmpdir(), 'hoveshort-keys-'));
  const boat = path.join(parent, 'boat');
  cpSync(SAMPLE, boat, { recursive: true });
  const home = {
    HOME: parent,
    XDG_CONFIG_HOME: path.join(parent, 'config'),
    XDG_STATE_HOME: path.join(parent, 'state'),
  };
  const args = [PROGRAM, '--boat', boat, '--at', AT, '--simulations', SIMULATIONS];
  const terminal = openTerminal(process.execPath, args, { columns: 100, rows: 30, cwd: parent, env: home });
  await answered(terminal);
  return { parent, terminal, first: terminal.screen().join('\n'), kept: keptIn(parent) };
}

/** However long it takes: a soak may share the machine. */
async function answered({ pid, screen }: TestTerminal): Promise<void> {
  for (let looks = 0; looks < mostLooks; looks += 1) {
    await asleep(pid, SETTLED_MS);
    const text = screen().join('\n');
    if (text.includes('NOT READY') && !text.includes('working')) return;
  }
  throw new Error(`the board never came; the screen:\n${screen().join('\n')}`);
}

async function backAtFirst({ terminal, first, kept, parent }: Aboard): Promise<boolean> {
  if (keptIn(parent) !== kept) return false;
  for (let backs = 0; backs < mostBacks; backs += 1) {
    terminal.type(ESCAPE);
    await asleep(terminal.pid, DRAWN_MS);
    if (terminal.screen().join('\n') === first) return true;
  }
  return false;
}

/** Without what differs from run to run: the name of the writer, and when it was typed. */
function shownIn({ terminal, parent }: Aboard): string {
  const writers = logsMade(path.join(parent, 'boat', 'log')).map((name) => path.parse(name).name);
  const screen = terminal
    .screen()
    .join('\n')
    .replaceAll(/Typed \w+ \d+ \w+ \d\d:\d\d/gu, 'Typed then');
  return writers.reduce((text, writer) => text.replaceAll(writer, 'a writer'), screen);
}

function bytesIn(parent: string): number {
  const log = path.join(parent, 'boat', 'log');
  const files = [
    path.join(parent, 'boat', 'boat.json'),
    ...readdirSync(log).map((name) => path.join(log, name)),
  ];
  return files.reduce((sum, file) => sum + (statSync(file, { throwIfNoEntry: false })?.size ?? 0), 0);
}

/** The boat file, the entries made, the forecasts, the preferences. */
function keptIn(parent: string): string {
  const boat = path.join(parent, 'boat');
  const preferences = path.join(parent, 'config', 'hoveshort', 'config.json');
  return [
    readFileSync(path.join(boat, 'boat.json'), 'utf8'),
    ...entriesMade(path.join(boat, 'log')),
    ...readdirSync(path.join(boat, 'forecasts')).sort(),
    existsSync(preferences) ? readFileSync(preferences, 'utf8').replaceAll(parent, '~') : '',
  ].join('\n');
}

/** Those that are not in the sample, without what differs from run to run: ids, places in the chain, when it was typed. */
function entriesMade(log: string): string[] {
  const lines = logsMade(log).flatMap((name) => readFileSync(path.join(log, name), 'utf8').split('\n'));
  const entries = lines.filter((line) => line.startsWith('{')).map((line) => JSON.parse(line));
  const places = new Map(entries.map(({ id }, index) => [id, `number ${index + 1}`]));
  return entries.map(({ id: _id, p: _p, lc: _lc, crc: _crc, rec: _rec, ...said }) =>
    JSON.stringify('entry' in said ? { ...said, entry: places.get(said.entry) ?? said.entry } : said),
  );
}

function logsMade(log: string): string[] {
  return readdirSync(log).filter((name) => !existsSync(path.join(SAMPLE, 'log', name)));
}
