import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { openTerminal, type TestTerminal } from '../../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const home = mkdtempSync(path.join(tmpdir(), 'hoveshort-boat-'));
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** The board on a copy of the sample boat; `editor` is a line of shell with the file as $1. */
function board(name: string, editor: string): { terminal: TestTerminal; file: string } {
  const folder = path.join(home, name);
  cpSync('sample-boat', folder, { recursive: true });
  const script = path.join(home, `${name}.sh`);
  writeFileSync(script, `${editor}\n`);
  const env = {
    EDITOR: `sh ${script}`,
    VISUAL: '',
    XDG_CONFIG_HOME: path.join(home, 'c'),
    XDG_STATE_HOME: path.join(home, 's'),
  };
  const terminal = openTerminal(process.execPath, [PROGRAM, '--boat', folder], {
    columns: 100,
    rows: 30,
    env,
  });
  open.push(terminal);
  return { terminal, file: path.join(folder, 'boat.json') };
}

const shows = (text: string) => (screen: string) => screen.includes(text);

describe.skipIf(!existsSync(PROGRAM))('the boat page of the built program (skipped until built)', () => {
  it('hands the terminal to the editor and takes it back, and reads the file again', async () => {
    const { terminal } = board(
      'edited',
      'printf "in the editor: "; read line; sed "s/\\"Gear oil\\"/\\"$line\\"/" "$1" > "$1.tmp" && mv "$1.tmp" "$1"',
    );
    await terminal.until(shows('PENNYWHIN'));
    terminal.type('bE');
    await terminal.until(shows('in the editor:'));
    expect(terminal.modes()).toMatchObject({ alternate: false, cursor: true, paste: false });
    terminal.type('Sump oil\r');
    await terminal.until(shows('    Sump oil'), 'the page with the new name');
    expect(terminal.modes()).toMatchObject({ alternate: true, cursor: false });
  });

  it('says the line where the editor left the file in trouble', async () => {
    const { terminal } = board(
      'broken',
      'sed "s/\\"low\\": 1.0,/\\"low\\": true,/" "$1" > "$1.tmp" && mv "$1.tmp" "$1"',
    );
    await terminal.until(shows('PENNYWHIN'));
    terminal.type('bE');
    const screen = await terminal.until(shows('boat.json, line '), 'the trouble with its line');
    expect(screen).toMatch(/fluids\[1\]\.low is true/iu);
  });

  it('changes an item in the file as it was written', async () => {
    const { terminal, file } = board('changed', 'true');
    const before = readFileSync(file, 'utf8');
    await terminal.until(shows('PENNYWHIN'));
    terminal.type('b');
    await terminal.until(shows('> Main engine'));
    terminal.type('\r\u0015Old faithful\r');
    await terminal.until(shows('saved in boat.json: Old faithful'));
    expect(readFileSync(file, 'utf8')).toBe(before.replace('"Main engine"', '"Old faithful"'));
  });
});
