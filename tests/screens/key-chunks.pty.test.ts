import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { openTerminal, type TestTerminal } from '../helpers/terminal.ts';
import { keyChunks } from '../soak/keys.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const folder = mkdtempSync(path.join(tmpdir(), 'hoveshort-chunks-'));
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function board(): Promise<TestTerminal> {
  const env = { XDG_CONFIG_HOME: path.join(folder, 'config'), XDG_STATE_HOME: path.join(folder, 'state') };
  const args = [PROGRAM, '--boat', path.resolve('sample-boat'), '--at', '2026-06-14T07:30:00Z'];
  const terminal = openTerminal(process.execPath, args, { columns: 80, rows: 24, env });
  open.push(terminal);
  await terminal.until((screen) => screen.includes('NOT READY') && !screen.includes('working'), 'the board');
  return terminal;
}

describe.skipIf(!existsSync(PROGRAM))('keys into the built program (skipped until built)', () => {
  it.skipIf(process.platform !== 'linux')(
    'one by one or in any chunks give the same screens and entries: a short share of `npm run soak -- keys` (skipped off Linux)',
    async () => {
      const { count, lost, notes } = await keyChunks.run(3, 1);
      expect({ count, lost, told: lost > 0 ? notes : [] }).toEqual({ count: 3, lost: 0, told: [] });
    },
    120_000,
  );

  it('Ctrl+L draws over whatever another program left, and loses nothing typed after it', async () => {
    const terminal = await board();
    const before = terminal.screen().join('\n');
    terminal.garble('\u001b[5;10Hrubbish\u001b[20;1Hmore of it');
    await terminal.until((screen) => screen.includes('rubbish'), 'the rubbish');
    terminal.type('\u000c');
    await terminal.until((screen) => screen === before, 'the board as it was');
    terminal.type('\u000csimp\u001b[B');
    await terminal.until((screen) => screen.startsWith('  STORES  find imp'), 'what was typed after it');
  });

  it('Escape and a paste in one chunk are both', async () => {
    const terminal = await board();
    terminal.type('?\u001b\u001b\u001b[200~s\r\u001b[201~');
    await terminal.until(
      (screen) => screen.startsWith('  PENNYWHIN') && screen.includes('nothing here to paste into'),
      'the board',
    );
  });
});
