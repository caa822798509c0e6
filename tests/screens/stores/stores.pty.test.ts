import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { openTerminal } from '../../helpers/terminal.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'hoveshort-stores-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('a spare used on the board is in the log, and the stores say one less', async () => {
  const boat = path.join(folder, 'boat');
  cpSync('sample-boat', boat, { recursive: true });
  const env = { XDG_CONFIG_HOME: path.join(folder, 'config'), XDG_STATE_HOME: path.join(folder, 'state') };
  const args = [path.resolve('built/hoveshort.js'), '--boat', boat, '--at', '2026-06-14T07:30:00Z'];
  const terminal = openTerminal(process.execPath, args, { columns: 80, rows: 24, env });
  try {
    await terminal.until(
      (screen) => screen.includes('NOT READY') && !screen.includes('working'),
      'the answer',
    );
    // All in one piece, as it comes down a slow line.
    terminal.type('simp\r');
    await terminal.until((screen) => screen.includes('Enter logs: Impeller: 1 used.'), 'the form');
    terminal.type('\r');
    await terminal.until((screen) => screen.includes('saved: Impeller: 1 used'), 'what was saved');
    await terminal.until((screen) => /Impeller\s+0\s+buy 2/u.test(screen), 'one less');
    expect(terminal.screen().join('\n')).not.toContain('NOT SAVED');
  } finally {
    terminal.close();
  }
}, 60_000);
