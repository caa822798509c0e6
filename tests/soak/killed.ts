import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import { stream } from '../../source/maths/stream.ts';
import { aBoatText } from '../helpers/a-boat-text.ts';
import { read } from '../helpers/a-simulated-boat.ts';
import { anOutcome, type Campaign, found, type Outcome } from './campaign.ts';

const script = fileURLToPath(new URL('../helpers/live-and-merge.ts', import.meta.url));
/** The logs are begun anew after so many kills, so that reading them stays cheap. */
const killsALog = 25;
/** Most of a life is the starting of Node. */
const lanes = 2;
const mostMs = 100;
/** A write that a kill cut short leaves these. */
const MAY_BE_TOLD = new Set(['line cut off', 'little room']);

/** A program that opens, saves and merges is killed at any instant; both laptops' copies must then hold all it had said was saved. */
export const killed: Campaign = {
  name: 'kill -9 at random instants, opening and merging included',
  count: 1000,
  async run(count, seed) {
    const outcome = anOutcome();
    const lane = async (first: number) => {
      for (let n = first; n < count; n += killsALog * lanes)
        await oneLog(stream(seed, `killed ${n}`).uniform, Math.min(killsALog, count - n), outcome);
    };
    await Promise.all(Array.from({ length: lanes }, (_, i) => lane(i * killsALog)));
    return outcome;
  },
};

async function oneLog(chance: () => number, kills: number, outcome: Outcome): Promise<void> {
  const parent = mkdtempSync(path.join(tmpdir(), 'hoveshort-soak-'));
  const tried = new Set<string>();
  const saved = new Set<string>();
  try {
    for (const side of ['a', 'b']) {
      mkdirSync(path.join(parent, side));
      mkdirSync(path.join(parent, `state-${side}`));
      writeFileSync(path.join(parent, side, 'boat.json'), aBoatText);
    }
    for (let kill = 0; kill < kills; kill += 1) {
      outcome.count += 1;
      const { stdout, stderr } = await killedLife(parent, kill * 1000, chance() * mostMs);
      for (const line of stdout.split('\n').slice(0, -1)) {
        if (line.startsWith('try ')) tried.add(line.slice(4));
        if (line.startsWith('ok ')) saved.add(line.slice(3));
      }
      if (stderr !== '') found(outcome, 'lost', `kill ${kill}: ${stderr}`);
      await look(parent, { tried, saved }, outcome);
    }
  } finally {
    rmSync(parent, { recursive: true, force: true });
  }
}

async function killedLife(parent: string, from: number, ms: number) {
  const child = spawn(process.execPath, [script, parent, String(from)]);
  let [stdout, stderr] = ['', ''];
  const ready = Promise.withResolvers<void>();
  child.stdout.on('data', (text) => {
    stdout += text;
    ready.resolve();
  });
  child.stderr.on('data', (text) => {
    stderr += text;
  });
  const ended = new Promise((settle) => child.on('close', settle));
  await Promise.race([ready.promise, ended]);
  await after(ms);
  child.kill('SIGKILL');
  await ended;
  return { stdout, stderr };
}

/** Looks as another laptop would, so that what was torn is left for the next life to seal. */
async function look(
  parent: string,
  { tried, saved }: { readonly tried: ReadonlySet<string>; readonly saved: ReadonlySet<string> },
  outcome: Outcome,
): Promise<void> {
  const there = new Set<string>();
  for (const side of ['a', 'b'] as const) {
    const keeping = keepingOn(path.join(parent, side), path.join(parent, 'state-none'), Date.now);
    try {
      const { entries, troubles } = await read(boatFolder(keeping));
      for (const entry of entries) if (entry.kind === 'remark') there.add(entry.text);
      const told = troubles.filter(({ kind }) => !MAY_BE_TOLD.has(kind));
      if (told.length > 0)
        found(outcome, 'undetected', `damage where there is none: ${JSON.stringify(told[0])}`);
      const texts = entries.map((entry) => (entry.kind === 'remark' ? entry.text : ''));
      if (new Set(texts).size < texts.length) found(outcome, 'lost', 'an entry twice');
      for (const text of saved)
        if (text.startsWith(side) && !texts.includes(text)) found(outcome, 'lost', `${text} in ${side}`);
    } catch (error) {
      found(outcome, 'lost', String(error));
    }
  }
  for (const text of there) if (!tried.has(text)) found(outcome, 'lost', `invented: ${text}`);
}
