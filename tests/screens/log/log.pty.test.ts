import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import type { Entry } from '../../../source/logbook/entries.ts';
import { openTerminal, type TestTerminal } from '../../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const folder = mkdtempSync(path.join(tmpdir(), 'hoveshort-log-'));
const boat = path.join(folder, 'boat');
const env = { XDG_CONFIG_HOME: path.join(folder, 'config'), XDG_STATE_HOME: path.join(folder, 'state') };
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function board(): Promise<TestTerminal> {
  rmSync(boat, { recursive: true, force: true });
  cpSync('sample-boat', boat, { recursive: true });
  const args = [PROGRAM, '--boat', boat];
  const terminal = openTerminal(process.execPath, args, { columns: 120, rows: 36, env });
  open.push(terminal);
  await terminal.until((screen) => screen.includes('q leave'), 'the board');
  return terminal;
}

interface Kept {
  readonly entries: readonly (Entry & { readonly struck: boolean })[];
}

/** What the log on the disk says, by a process of its own. */
function kept(...args: readonly string[]): Kept['entries'] {
  const words = [PROGRAM, 'log', '--json', '--boat', boat, ...args];
  const text = execFileSync(process.execPath, words, { encoding: 'utf8', env: { ...process.env, ...env } });
  return (JSON.parse(text) as Kept).entries;
}

describe.skipIf(!existsSync(PROGRAM))('the log in a terminal (skipped until built)', () => {
  it('an entry is struck with a reason and restored, and both are on the disk', async () => {
    const terminal = await board();
    terminal.type('L/stern gland');
    await terminal.until((screen) => screen.includes('search stern gland'), 'what was searched for');
    terminal.type('\rx');
    await terminal.until((screen) => screen.includes('STRIKE'), 'the form');
    terminal.type('misread\r');
    await terminal.until((screen) => screen.includes('STRUCK: Stern gland'), 'the struck entry');
    const struck = kept().filter((entry) => entry.struck);
    const mine = kept('--kind', 'strike')[0];
    expect(mine).toMatchObject({ why: 'misread', struck: false });
    expect(struck.map(({ id }) => id)).toContain((mine as { entry?: string }).entry);
    terminal.type('r\r');
    await terminal.until((screen) => !screen.includes('STRUCK: '), 'the entry restored');
    expect(kept().filter((entry) => entry.struck && entry.kind !== 'strike')).toHaveLength(struck.length - 1);
  });
});
