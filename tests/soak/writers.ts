import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import { aBoatText } from '../helpers/a-boat-text.ts';
import { read } from '../helpers/a-simulated-boat.ts';
import { anOutcome, type Campaign, found } from './campaign.ts';

const script = path.join(import.meta.dirname, '../helpers/append-many.ts');
const run = promisify(execFile);

/** Four processes save at the same time from the first entry on. */
export const writersWithTheLock = campaignOf(4, 20_000);

/** Two, as two windows on one boat: fewer in each other's way, so more entries of one in a row. */
export const twoWriters = campaignOf(2, 10_000);

/** The same without the lock, and with a lock that is dropped: the campaign above would find out either. */
export const writersWithoutTheLock: Campaign = {
  name: '4 processes without the lock, or with it dropped: caught',
  count: 2000,
  async run(count) {
    const outcome = anOutcome();
    for (const fault of ['no lock', 'lock dropped']) {
      const { entries, ids, troubles } = await together(4, Math.ceil(count / 4), fault);
      outcome.count += ids.length;
      const wrong = new Set(ids).size < ids.length || new Set(entries).size !== ids.length;
      if (!wrong && troubles.length === 0) found(outcome, 'undetected', `${fault}: nothing was wrong`);
    }
    return outcome;
  },
};

function campaignOf(writers: number, entriesInAll: number): Campaign {
  return {
    name: `${writers} processes saving at once, with the lock`,
    count: entriesInAll,
    async run(count) {
      const outcome = anOutcome();
      const { entries, ids, troubles } = await together(writers, Math.ceil(count / writers), '');
      outcome.count = writers * Math.ceil(count / writers);
      const there = new Set(entries);
      const lost = ids.filter((id) => !there.has(id)).length + (ids.length - new Set(ids).size);
      for (let i = 0; i < lost + outcome.count - ids.length; i += 1) found(outcome, 'lost', 'an entry lost');
      if (there.size !== ids.length) found(outcome, 'lost', `${there.size} entries of ${ids.length} saved`);
      if (troubles.length > 0) found(outcome, 'undetected', JSON.stringify(troubles.slice(0, 3)));
      return outcome;
    },
  };
}

async function together(writers: number, each: number, fault: string) {
  const parent = mkdtempSync(path.join(tmpdir(), 'hoveshort-soak-'));
  const [boat, state] = [path.join(parent, 'boat'), path.join(parent, 'state')];
  try {
    mkdirSync(boat);
    writeFileSync(path.join(boat, 'boat.json'), aBoatText);
    const outputs = await Promise.all(
      Array.from({ length: writers }, (_, i) =>
        run(process.execPath, [script, boat, state, `writer ${i}`, String(each), fault], {
          maxBuffer: 64 * 1024 * 1024,
        }),
      ),
    );
    const ids = outputs.flatMap(({ stdout }) => stdout.split('\n').filter((id) => id !== ''));
    const { entries, troubles } = await read(boatFolder(keepingOn(boat, state, Date.now)));
    return {
      ids,
      entries: entries.map(({ id }) => id),
      troubles: troubles.filter(({ kind }) => kind !== 'little room'),
    };
  } finally {
    rmSync(parent, { recursive: true, force: true });
  }
}
