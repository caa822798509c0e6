import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { stream } from '../../../source/maths/stream.ts';
import { openTerminal, type TestTerminal } from '../../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const AT = '2026-06-14T07:30:00Z';

const folder = mkdtempSync(path.join(tmpdir(), 'hoveshort-round-'));
const env = { XDG_CONFIG_HOME: path.join(folder, 'config'), XDG_STATE_HOME: path.join(folder, 'state') };
const open: TestTerminal[] = [];
let boats = 0;

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const settled = (screen: string) => !screen.includes('working') && !screen.includes('saving');

/** The round open on a copy of the sample boat of its own. */
async function round(size = { columns: 120, rows: 40 }, more = {}): Promise<[TestTerminal, string]> {
  boats += 1;
  const boat = path.join(folder, `boat-${boats}`);
  cpSync('sample-boat', boat, { recursive: true });
  const args = [PROGRAM, '--boat', boat, '--at', AT];
  const terminal = openTerminal(process.execPath, args, { ...size, env: { ...env, ...more } });
  open.push(terminal);
  await terminal.until((screen) => screen.includes('NOT READY') && settled(screen), 'the board');
  terminal.type('r');
  await terminal.until((screen) => screen.includes('0 of 12 entered'), 'the round');
  return [terminal, boat];
}

/** The newest lines of the log, as the program itself tells them. */
function logOf(boat: string): string {
  return execFileSync(process.execPath, [PROGRAM, 'log', '--boat', boat, '--at', AT], {
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
}

describe.skipIf(!existsSync(PROGRAM))('the round in a terminal (skipped until built)', () => {
  it('is played on the sample boat: saved as typed, struck, done, and what it changed is said', async () => {
    const [terminal, boat] = await round();
    terminal.type('+1,5\r-.02 +100ml wet\r');
    await terminal.until((screen) => screen.includes('2 of 12 entered') && settled(screen), 'two rows');
    expect(logOf(boat)).toContain('0.1 L poured in');
    terminal.type('u');
    await terminal.until((screen) => screen.includes('1 of 12 entered') && settled(screen), 'one struck');
    terminal.type('full\raa');
    const done = await terminal.until(
      (screen) => screen.includes('ROUND DONE') && settled(screen),
      'the end',
    );
    expect(done).toMatch(/boat \d+ -> \d+ in 100/u);
    expect(done).toMatch(/states changed: .*Gear oil: unfit -> \w+/su);
    terminal.type('\u001b');
    await terminal.until((screen) => screen.includes('PENNYWHIN') && settled(screen), 'the board again');
  });

  it.each([
    { columns: 80, rows: 24 },
    { columns: 40, rows: 12 },
  ])(
    'has the row in hand and what to type in sight at $columns x $rows, in plain letters and no colour',
    async (size) => {
      const [terminal] = await round(size, { NO_COLOR: '1', LANG: 'C' });
      terminal.type('\t');
      const whole = /> Gear oil.*low 1 L, full 1\.2 L/su;
      const screen = await terminal.until((text) => whole.test(text), 'the second row and what to type');
      expect([...screen].every((letter) => letter === '\n' || (letter >= ' ' && letter <= '~'))).toBe(true);
    },
  );

  it('the same keys at once or one by one give the same screen', async () => {
    const alphabet = ['1', '.', '+', '/', '2', ' ', 'a', 'u', 'f', 'y', '\r', '\r', '\t', '\u007f'];
    for (let script = 0; script < 2; script += 1) {
      const random = stream(script, 'round in a terminal');
      const one = () => alphabet[Math.floor(random.uniform() * alphabet.length)]!;
      const typed = `+1\r${Array.from({ length: 25 }, one).join('')}`;
      const ways = [[typed], [...typed]];
      const screens: string[] = [];
      for (const chunks of ways) {
        const [terminal] = await round();
        for (const chunk of chunks) terminal.type(chunk);
        terminal.type(`\u0015${'\u001b[Z'.repeat(14)}\u0015x~`);
        const screen = await terminal.until(
          (text) => text.includes('x~') && settled(text),
          JSON.stringify(typed),
        );
        screens.push(withoutWhose(screen));
      }
      expect(screens[1]).toBe(screens[0]);
    }
  });
});

/** Which of the rows entered together a change of the score is written beside hangs on how quickly they were typed; the sum of it does not. */
function withoutWhose(screen: string): string {
  return screen.replace(/(saved \d\d:\d\d), [^:]+:/gu, '$1:');
}
