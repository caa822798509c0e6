import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openTerminal } from '../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const parent = mkdtempSync(path.join(tmpdir(), 'hoveshort-copy-'));
const [boat, stick, config] = ['whimbrel', 'stick', 'config'].map((name) => path.join(parent, name)) as [
  string,
  string,
  string,
];
const env = { XDG_CONFIG_HOME: config, XDG_STATE_HOME: path.join(parent, 'state') };

afterAll(() => rmSync(parent, { recursive: true, force: true }));

async function lookAndLeave(): Promise<{ screen: string; said: string; exitCode: number }> {
  const terminal = openTerminal(process.execPath, [PROGRAM, '--boat', boat, '--simulations', '256'], {
    columns: 120,
    rows: 120,
    env,
  });
  try {
    const screen = await terminal.until(
      (text) => /\s(HOLD|NOT READY|GO)\s/u.test(text) && !text.includes('working'),
    );
    terminal.type('q');
    const { exitCode } = await terminal.ended;
    return { screen, said: terminal.screen().join('\n'), exitCode };
  } finally {
    terminal.close();
  }
}

describe.skipIf(!existsSync(PROGRAM))('leaving the built board (skipped until built)', () => {
  it('copies the boat to the second place, and the next board says how old the copy is', async () => {
    cpSync('sample-boat', boat, { recursive: true });
    mkdirSync(stick);
    mkdirSync(path.join(config, 'hoveshort'), { recursive: true });
    writeFileSync(path.join(config, 'hoveshort', 'preferences.json'), JSON.stringify({ backup: stick }));
    const first = await lookAndLeave();
    expect(first.screen).toContain('~ last checked copy: none yet');
    expect(first.said).toMatch(/copied and checked: \d+ entries in /);
    expect(first.exitCode).toBe(0);
    expect(readFileSync(path.join(stick, 'whimbrel', 'boat.json'))).toEqual(
      readFileSync(path.join(boat, 'boat.json')),
    );
    expect((await lookAndLeave()).screen).toMatch(/· last checked copy: \d+ min/);
    rmSync(stick, { recursive: true });
    const last = await lookAndLeave();
    expect(last.said).toContain('was not made: it is not there (ENOENT)');
    expect(last.exitCode).toBe(74);
  });
});
