import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { openTerminal, type TestTerminal } from '../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const home = mkdtempSync(path.join(tmpdir(), 'hoveshort-two-'));
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

function run(args: readonly string[], name: string): TestTerminal {
  const env = {
    HOME: home,
    XDG_CONFIG_HOME: path.join(home, name),
    XDG_STATE_HOME: path.join(home, 'state'),
  };
  const size = { columns: 100, rows: 30, env, cwd: home };
  const terminal = openTerminal(process.execPath, [PROGRAM, ...args], size);
  open.push(terminal);
  return terminal;
}

const shows = (text: string) => (screen: string) => screen.includes(text);

describe.skipIf(!existsSync(PROGRAM))('two boards on one boat (skipped until built)', () => {
  it('see what is logged on the other within seconds, both ways', async () => {
    const boat = path.join(home, 'boat');
    cpSync('sample-boat', boat, { recursive: true });
    const [one, other] = [run(['--boat', boat], 'one'), run(['--boat', boat], 'other')];
    await one.until(shows('at Dovetail Bight'));
    await other.until(shows('at Dovetail Bight'));
    one.type('D');
    await one.until(shows('Enter logs'));
    one.type('\r');
    await other.until(shows('under way for'), 'the departure');
    other.type('A');
    await other.until(shows('Enter logs'));
    other.type('\r');
    await one.until(
      (screen) => !screen.includes('under way for') && screen.includes('PENNYWHIN'),
      'the arrival',
    );
  }, 60_000);
});

describe.skipIf(!existsSync(PROGRAM))(
  'the terminal, left while something is being typed (skipped until built)',
  () => {
    it.each([
      ['Ctrl+C', 0, (terminal: TestTerminal) => terminal.type('\u0003')],
      ['SIGINT', 0, (terminal: TestTerminal) => terminal.signal('SIGINT')],
      ['SIGTERM', 143, (terminal: TestTerminal) => terminal.signal('SIGTERM')],
      ['SIGHUP', 129, (terminal: TestTerminal) => terminal.signal('SIGHUP')],
    ])('is given back after %s', async (_, exitCode, leave) => {
      const terminal = run([], 'empty');
      await terminal.until(shows('> What drives her'));
      terminal.type('\rTern');
      await terminal.until(shows('Tern'));
      leave(terminal);
      expect((await terminal.ended).exitCode).toBe(exitCode);
      expect(terminal.modes()).toEqual({ alternate: false, cursor: true, paste: false });
    });
  },
);
