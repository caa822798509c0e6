import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { asleep } from '../helpers/asleep.ts';
import { forbiddenIn } from '../helpers/hostile-texts.ts';
import { DRAWN_MS } from '../helpers/player.ts';
import { openShell, openTerminal, type TestTerminal, type TestTerminalOptions } from '../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const DOWN_TO_GEAR_OIL = 'jjjj';

/** Every page there is: the keys that lead to it from the board, and its heading. */
const PAGES: readonly (readonly [heading: string, keys: string])[] = [
  ['PENNYWHIN', ''],
  ['WHY', '\r'],
  ['GEAR OIL  ', `${DOWN_TO_GEAR_OIL}\r`],
  ['TOP UP  Gear oil', `${DOWN_TO_GEAR_OIL}\rt`],
  ['WORK DONE  Gear oil', `${DOWN_TO_GEAR_OIL}\ro`],
  ['GEAR OIL  gear oil going', `${DOWN_TO_GEAR_OIL}\rf`],
  ['WEATHER  for', 'w'],
  ['FORECASTS ABOARD', 'wf'],
  ['A FORECAST AS IT IS HEARD', 'wt'],
  ['STORES', 's'],
  ['USED', 's\r'],
  ['TO BUY', 's\t'],
  ['LOG', 'L'],
  ['STRIKE', 'Lx'],
  ['ROUND', 'r'],
  ['BOAT', 'b'],
  ['THE BOAT', 'b\r'],
  ['PASSAGE  ', 'bG\r'],
  ['PREFERENCES', ','],
  ['WRONG WITH THE FILES', '!'],
  ['KEYS', '?'],
  ['WEATHER NOW', 'i'],
  ['PASSAGE PLANNED', 'P'],
  ['LEFT', 'D'],
];
/** Enough to leave a round over what was pasted in it. */
const BACK = '\u001b'.repeat(6);
const PASTE = '\u001b[200~two\r\nlines\u001b]0;title\u0007\u202e\u001b[2J\u0085\u001b[201~';
const SIZE = { columns: 100, rows: 30 };
const SMALL = { columns: 40, rows: 12 };

const parent = mkdtempSync(path.join(tmpdir(), 'hoveshort-every-page-'));
cpSync('sample-boat', path.join(parent, 'boat'), { recursive: true });
const args = [PROGRAM, '--boat', path.join(parent, 'boat'), '--at', '2026-06-14T07:30:00Z'];
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(parent, { recursive: true, force: true }));

function options(more: Readonly<Record<string, string>> = {}): TestTerminalOptions {
  const env = { XDG_CONFIG_HOME: path.join(parent, 'config'), XDG_STATE_HOME: path.join(parent, 'state') };
  return { ...SIZE, cwd: parent, env: { ...env, ...more } };
}

async function board(more: Readonly<Record<string, string>> = {}): Promise<TestTerminal> {
  const terminal = openTerminal(process.execPath, args, options(more));
  open.push(terminal);
  await terminal.until((screen) => screen.includes('NOT READY') && !screen.includes('working'), 'the board');
  return terminal;
}

type Look = (terminal: TestTerminal, screen: string, heading: string) => Promise<void> | void;

/** Turns to every page and back to the board, with a look at each. */
async function walk(terminal: TestTerminal, look: Look, pid = terminal.pid): Promise<void> {
  for (const [heading, keys] of PAGES) {
    terminal.type(keys);
    await terminal.until((one) => one.startsWith(`  ${heading}`), heading);
    // What is reckoned once a page is drawn is on it as well.
    await asleep(pid, DRAWN_MS);
    const screen = terminal.screen().join('\n');
    await look(terminal, screen, heading);
    terminal.type(BACK);
    await terminal.until((one) => one.startsWith('  PENNYWHIN') && !one.includes('> '), 'the board again');
  }
}

/** Ruled off above and below at the whole width, each line in its place, and nothing in it that a terminal would obey. */
function expectWhole(screen: string, rule: string, { columns, rows } = SIZE): void {
  const lines = screen.split('\n');
  expect(lines).toHaveLength(rows);
  const rules = lines.flatMap((line, row) => (line === rule.repeat(columns) ? [row] : []));
  expect(rules).toEqual([1, rows - 2]);
  expect(lines.at(-1)!.trim()).not.toBe('');
  expect(forbiddenIn(screen)).toBeNull();
}

const ready = existsSync(PROGRAM) && process.platform === 'linux';

describe.skipIf(!ready)('every page of the built board (skipped until built, and off Linux)', () => {
  it('is drawn whole, follows the window to 40 x 12 and back, and takes a paste of anything', async () => {
    await walk(await board(), async (terminal, screen, heading) => {
      expectWhole(screen, '─');
      terminal.resize(SMALL.columns, SMALL.rows);
      const fits = (one: string) => one.split('\n')[1] === '─'.repeat(SMALL.columns);
      const small = await terminal.until((one) => fits(one) && one.startsWith('  '), 'the small page');
      expectWhole(small, '─', SMALL);
      expect(small.startsWith(`  ${heading.slice(0, 30).trimEnd()}`)).toBe(true);
      terminal.resize(SIZE.columns, SIZE.rows);
      await terminal.until((one) => one === screen, `${heading} as it was`);
      terminal.type(PASTE);
      const pasted = await terminal.until(
        (one) => /two lines|nothing here to paste into/u.test(one),
        'what was pasted',
      );
      expectWhole(pasted, '─');
    });
  }, 90_000);

  it('is in bare letters under LANG=C and NO_COLOR, arrows in words', async () => {
    const terminal = await board({ LANG: 'C', NO_COLOR: '1' });
    await walk(terminal, (_, screen) => {
      expectWhole(screen, '-');
      expect(screen).toMatch(/^[\n -~]*$/u);
      if (screen.startsWith('  KEYS')) expect(screen).toContain('Down j ');
    });
    expect(terminal.written()).not.toMatch(/\u001b\[[0-9;]*m/u);
  }, 90_000);

  it('is told in sentences to a screen reader, on the terminal as it is', async () => {
    const terminal = openTerminal(process.execPath, args, options({ INK_SCREEN_READER: 'true' }));
    open.push(terminal);
    await terminal.until((screen) => screen.includes('Verdict: not ready.'), 'the sentences');
    for (const [heading, keys] of PAGES.slice(1)) {
      const spoken = heading.trim().replace('  ', ' ');
      const before = terminal.written().length;
      terminal.type(keys);
      await terminal.until(() => {
        const told = terminal.written().slice(before);
        return told.includes('Keys: ', told.indexOf(spoken) + 1) && told.includes(spoken);
      }, spoken);
      const told = terminal.written().slice(before);
      expect(told.slice(told.indexOf(spoken))).not.toMatch(/[\u2800-\u28ff─▏▪▫↑↓←→]| {2}/u);
      const back = terminal.written().length;
      terminal.type(BACK);
      await terminal.until(
        () => terminal.written().slice(back).includes('Verdict: not ready.'),
        'the board again',
      );
    }
    expect(terminal.written()).not.toContain('\u001b[?1049h');
  }, 90_000);

  it('comes back as it was after Ctrl+Z, and after a stop from outside', async () => {
    const terminal = openShell(options());
    open.push(terminal);
    await terminal.until((screen) => screen.trim() === '$', 'the prompt');
    terminal.type(`sh -c 'echo $$ > ${parent}/pid; exec ${[process.execPath, ...args].join(' ')}'\r`);
    await terminal.until(
      (screen) => screen.includes('NOT READY') && !screen.includes('working'),
      'the board',
    );
    const pid = Number(readFileSync(path.join(parent, 'pid'), 'utf8'));
    let stops = 0;
    const stopped: Look = async (_, screen, heading) => {
      stops += 1;
      if (stops % 2 === 0) terminal.type('\u001a');
      else process.kill(pid, 'SIGSTOP');
      await terminal.until((one) => one.includes('Stopped'), 'the shell');
      terminal.type('clear; fg\r');
      await terminal.until((one) => one === screen, `${heading} as it was`);
    };
    await walk(terminal, stopped, pid);
  }, 90_000);
});
