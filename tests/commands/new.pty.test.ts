import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { openTerminal, type TestTerminal } from '../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const home = mkdtempSync(path.join(tmpdir(), 'hoveshort-new-'));
const env = { XDG_CONFIG_HOME: path.join(home, 'config'), XDG_STATE_HOME: path.join(home, 'state') };
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

function interviewOf(folder: string): TestTerminal {
  const size = { columns: 100, rows: 60, env };
  const terminal = openTerminal(process.execPath, [PROGRAM, 'new', path.join(home, folder)], size);
  open.push(terminal);
  return terminal;
}

const shows = (text: string) => (screen: string) => screen.includes(text);

describe('the interview on a terminal', () => {
  it('goes from nothing to a verdict, answered as fast as a paste', async () => {
    const terminal = interviewOf('godwit');
    await terminal.until(shows('What drives her'));
    const entered = ['', 'Godwit', ...Array(40).fill('')].join('\r');
    terminal.type(`${entered}\r`);
    expect(await terminal.ended).toMatchObject({ exitCode: 0 });
    expect(terminal.written()).toContain('NOT READY');
    expect(readdirSync(path.join(home, 'godwit'))).toEqual(['boat.json', 'log']);
  });

  it.each([
    ['Ctrl+D', '\u0004'],
    ['Ctrl+C', '\u0003'],
    ['q', 'q\r'],
  ])('is left by %s, and nothing was written', async (_, keys) => {
    const terminal = interviewOf('left');
    await terminal.until(shows('What drives her'));
    terminal.type('\r');
    await terminal.until(shows('Her name'));
    terminal.type(keys);
    expect(await terminal.ended).toMatchObject({ exitCode: 73 });
    expect(terminal.screen().join('\n')).toContain('left; nothing was written');
    expect(existsSync(path.join(home, 'left'))).toBe(false);
  });
});
