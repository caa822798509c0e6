import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, watch } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { rolldown } from 'rolldown';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { VerdictDocument } from '../../source/words/document.ts';
import { amountWords, hundred } from '../../source/words/say.ts';
import { openShell, openTerminal, type TestTerminal } from '../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const NOT_READY = ['--boat', path.resolve('sample-boat'), '--at', '2026-06-14T07:30:00Z'];
const FIT = ['--boat', path.resolve('sample-boat'), '--at', '2026-06-10T07:30:00Z'];
const SWITCHED_OFF = { alternate: false, paste: false, cursor: true };

const folder = mkdtempSync(path.join(tmpdir(), 'hoveshort-terminal-'));
const env = { XDG_CONFIG_HOME: path.join(folder, 'config'), XDG_STATE_HOME: path.join(folder, 'state') };
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const answered = (screen: string) => /\s(HOLD|NOT READY|GO)\s/u.test(screen) && !screen.includes('working');

async function board(
  args: readonly string[],
  size = { columns: 120, rows: 36 },
  more = {},
): Promise<TestTerminal> {
  const terminal = openTerminal(process.execPath, [PROGRAM, ...args], { ...size, env: { ...env, ...more } });
  open.push(terminal);
  await terminal.until(answered, 'the board');
  return terminal;
}

/** A shell at its prompt, with the terminal's own settings kept in a file to compare with later. */
async function shell(size = { columns: 120, rows: 36 }): Promise<TestTerminal> {
  const terminal = openShell({ ...size, env });
  open.push(terminal);
  await terminal.until((screen) => screen.trim() === '$', 'the prompt');
  terminal.type(`stty -g > ${folder}/before; clear; echo rea''dy\r`);
  await terminal.until((screen) => screen.startsWith('ready'), 'the prompt again');
  return terminal;
}

/** Runs a command as its own process, its id in a file; its exit status is printed when it ends. */
const run = (command: string) => `sh -c 'echo $$ > ${folder}/pid; exec ${command}'; echo status: $?\r`;
const pid = () => Number(readFileSync(`${folder}/pid`, 'utf8'));

async function expectRestored(terminal: TestTerminal): Promise<void> {
  expect(terminal.modes()).toEqual(SWITCHED_OFF);
  terminal.type(`stty -g | cmp - ${folder}/before && echo the sa''me\r`);
  await terminal.until((screen) => screen.includes('the same'), 'the terminal as it was');
}

/** Opens the top-up of the gear oil, so many places down the board, and types half an amount and a q. */
async function typeHalf(terminal: TestTerminal, down: number): Promise<void> {
  terminal.type('j'.repeat(down));
  await terminal.until((screen) => screen.includes('> '), 'the choice');
  terminal.type('\r');
  await terminal.until((screen) => screen.includes('GEAR OIL'), 'the gear oil');
  terminal.type('t30q');
  await terminal.until((screen) => /poured in +30q/u.test(screen), 'what was typed');
}

describe.skipIf(!existsSync(PROGRAM))('the built board in a terminal (skipped until built)', () => {
  const boardCommand = [process.execPath, PROGRAM, ...NOT_READY].join(' ');

  it.each([
    { columns: 120, rows: 36 },
    { columns: 80, rows: 24 },
    { columns: 40, rows: 12 },
  ])('shows the sample boat at $columns x $rows', async (size) => {
    const terminal = await board(['--sample'], size);
    const lines = terminal.screen();
    expect(lines[0]).toMatch(/^ {2}PENNYWHIN/u);
    expect(lines[2]).toContain('NOT READY');
    expect(lines.at(-1)).toContain('q leave');
    expect(terminal.modes()).toMatchObject({ alternate: true, cursor: false });
    expect(terminal.written(), 'the whole page comes before the answer').toContain('WORKING');
  });

  const ways: [string, number, (terminal: TestTerminal) => void][] = [
    ['Ctrl+C', 0, (terminal) => terminal.type('\u0003')],
    ['SIGINT', 0, () => process.kill(pid(), 'SIGINT')],
    ['SIGTERM', 143, () => process.kill(pid(), 'SIGTERM')],
    ['SIGHUP', 129, () => process.kill(pid(), 'SIGHUP')],
  ];

  it.each(ways)(
    'with a form half typed %s gives the terminal back, the status %i; q is a letter there',
    async (_, status, leave) => {
      const terminal = await shell();
      terminal.type(run(boardCommand));
      await terminal.until(answered, 'the board');
      await typeHalf(terminal, 4);
      leave(terminal);
      await terminal.until((screen) => screen.includes(`status: ${status}`), 'the status');
      await expectRestored(terminal);
    },
  );

  it.each<(typeof ways)[number]>([['q', 0, (terminal) => terminal.type('q')], ...ways])(
    'after %s the terminal is as it was, the status %i',
    async (_, status, leave) => {
      const terminal = await shell();
      terminal.type(run(boardCommand));
      await terminal.until(answered, 'the board');
      leave(terminal);
      await terminal.until((screen) => screen.includes(`status: ${status}`), 'the status');
      await expectRestored(terminal);
    },
  );

  it('Ctrl+Z gives the terminal back, fg brings the board back as it was, and so after a stop from outside', async () => {
    const terminal = await shell();
    terminal.type(run(boardCommand));
    await terminal.until(answered, 'the board');
    terminal.type('jj');
    const before = await terminal.until((screen) => screen.includes('> LEAVING'), 'the choice');
    for (const stop of [() => terminal.type('\u001a'), () => process.kill(pid(), 'SIGSTOP')]) {
      stop();
      await terminal.until((screen) => screen.includes('Stopped'), 'the shell');
      terminal.type('clear; fg\r');
      expect(await terminal.until((screen) => screen === before, 'the board as it was')).toBe(before);
    }
    terminal.type('q');
    await terminal.until((screen) => screen.trimEnd().endsWith('$'), 'the prompt');
    terminal.type("echo sta''tus: $?\r");
    await terminal.until((screen) => screen.includes('status: 0'), 'the status');
    await expectRestored(terminal);
  });

  it('put aside with Ctrl+Z and told to end, it leaves the terminal to the shell', async () => {
    const terminal = await shell();
    terminal.type(run(boardCommand));
    await terminal.until(answered, 'the board');
    await typeHalf(terminal, 4);
    terminal.type('\u001a');
    await terminal.until((screen) => screen.includes('Stopped'), 'the shell');
    process.kill(pid(), 'SIGTERM');
    terminal.type("clear; fg; echo sta''tus: $?\r");
    const ended = await terminal.until((screen) => screen.includes('status: 143'), 'the status');
    expect(ended).not.toContain('GEAR OIL');
    await expectRestored(terminal);
  });

  it.each(ways)(
    'from the first questions of a new boat %s gives the terminal back, the status %i',
    async (_, status, leave) => {
      const terminal = await shell();
      const nowhere = `XDG_CONFIG_HOME=${folder}/none HOME=${folder}`;
      terminal.type(run(`env ${nowhere} ${process.execPath} ${PROGRAM}`));
      await terminal.until((screen) => /> What drives her[^▏]*▏/u.test(screen), 'the first question');
      leave(terminal);
      await terminal.until((screen) => screen.includes(`status: ${status}`), 'the status');
      await expectRestored(terminal);
    },
  );

  it('ends when its window is closed, even where nobody passes the hang-up on', async () => {
    const ended = path.join(folder, 'ended');
    const terminal = openTerminal('sh', ['-c', `trap "" HUP; ${boardCommand}; echo $? > ${ended}`], {
      columns: 80,
      rows: 24,
      env,
    });
    open.push(terminal);
    await terminal.until(answered, 'the board');
    const told = appears(ended);
    terminal.hangUp();
    await told;
    expect(readFileSync(ended, 'utf8').trim()).toBe('129');
  });

  it('shows what another program records while it is open', async () => {
    const copy = path.join(folder, 'boat');
    cpSync('sample-boat', copy, { recursive: true });
    const terminal = await board(['--boat', copy], { columns: 120, rows: 60 });
    const meter = (screen: string) => /Main engine +[\d .]+ h/u.exec(screen)?.[0];
    const before = meter(terminal.screen().join('\n'));
    expect(before).toBeDefined();
    const entry = ['record', 'hours', 'engine=main', 'reading=3520', '--yes', '--boat', copy];
    execFileSync(process.execPath, [PROGRAM, ...entry], { env: { ...process.env, ...env } });
    await terminal.until((screen) => answered(screen) && meter(screen) !== before, 'the new meter reading');
  });

  it('follows the window from size to size and back', async () => {
    const terminal = await board(NOT_READY);
    const first = terminal.screen().join('\n');
    for (const [columns, rows] of [
      [40, 12],
      [30, 8],
      [80, 24],
      [200, 60],
      [120, 36],
    ] as const) {
      terminal.resize(columns, rows);
      const small = columns < 40;
      await terminal.until(
        (screen) =>
          small
            ? screen.includes('here are 30 and 8')
            : screen.split('\n')[1] === '─'.repeat(columns) && screen.trimEnd().endsWith('q leave'),
        `the board at ${columns} x ${rows}`,
      );
    }
    expect(await terminal.until((screen) => screen === first, 'the first page again')).toBe(first);
  });

  it('every figure on the board is that of verdict --json', async () => {
    const json = run0([...FIT, '--json']);
    const terminal = await board(FIT, { columns: 200, rows: 120 });
    const lines = terminal.screen();
    const page = lines.join('\n');
    expect(page).toContain(`boat ${hundred(json.score.boat)}`);
    for (const item of json.items) {
      if (item.kind !== 'fluid' && item.kind !== 'anode') continue;
      const row = lines.find((line) =>
        ['·', '~', '!', '?'].some((mark) => line.includes(`${mark} ${item.name}  `)),
      );
      expect(row, item.name).toBeDefined();
      if (item.now) {
        const [figure = '', unit = ''] = amountWords(item.now.value, item.now.unit).split(' ');
        expect(row!.slice(row!.indexOf(item.name)).replace(/\s+/gu, ' ')).toContain(` ${figure} ${unit}`);
      }
    }
    for (const { do: verb, item } of json.toGetReady) {
      const name = json.items.find(({ id }) => id === item)!.name;
      expect(page).toContain(`${verb === 'look' ? 'look at' : verb} ${name}`);
    }
  });

  it('by night all is red, and in plain nothing is coloured', async () => {
    const terminal = await board(NOT_READY, undefined, { XDG_CONFIG_HOME: path.join(folder, 'night') });
    expect(terminal.colours().size).toBeGreaterThan(1);
    terminal.type('p');
    await terminal.until((screen) => screen.trimEnd().endsWith('night'), 'night');
    expect([...terminal.colours()]).toEqual(['#ff0000']);
    terminal.type('p');
    await terminal.until((screen) => screen.trimEnd().endsWith('plain'), 'plain');
    expect([...terminal.colours()]).toEqual([]);
  });

  it('with NO_COLOR and without UTF-8 it is the same page in bare letters', async () => {
    const terminal = await board(NOT_READY, undefined, { NO_COLOR: '1', LANG: 'C' });
    const page = terminal.screen().join('\n');
    expect(page).toMatch(/^[\n -~]*$/u);
    expect(page).toContain('NOT READY');
    expect(page).toMatch(/[.~!?] Gear oil/u);
    expect([...terminal.colours()]).toEqual([]);
  });

  it('for a screen reader it is sentences, on the terminal as it is', async () => {
    const terminal = openTerminal(process.execPath, [PROGRAM, ...NOT_READY], {
      columns: 120,
      rows: 36,
      env: { ...env, INK_SCREEN_READER: 'true' },
    });
    open.push(terminal);
    await terminal.until((screen) => screen.includes('Verdict: not ready.'), 'the sentences');
    expect(terminal.modes().alternate).toBe(false);
    terminal.type('j');
    await terminal.until((screen) => /1 of \d+: NOT READY/u.test(screen), 'the first place');
    terminal.type('q');
    expect((await terminal.ended).exitCode).toBe(0);
  });

  it('on a terminal that can do nothing (TERM=dumb) it is the plain verdict, with not one control sequence', async () => {
    const dumb = ['TERM=dumb', process.execPath, PROGRAM, ...NOT_READY];
    const terminal = openTerminal('env', dumb, { columns: 120, rows: 36, env });
    open.push(terminal);
    expect((await terminal.ended).exitCode).toBe(0);
    expect(terminal.written()).toContain('NOT READY');
    expect(terminal.written()).not.toContain('\u001b');
  });

  it('a key writes less than a kilobyte', async () => {
    const terminal = await board(NOT_READY, { columns: 120, rows: 40 });
    terminal.type('jjjjj');
    const before = await terminal.until((screen) => screen.includes('> '), 'a choice');
    const written = terminal.written().length;
    terminal.type('j');
    await terminal.until((screen) => screen !== before && screen.includes('> '), 'the next choice');
    expect(terminal.written().length - written).toBeLessThan(1024);
  });
});

/** Settles once the file is there and written. */
function appears(file: string): Promise<void> {
  return new Promise((settle) => {
    const watcher = watch(path.dirname(file), () => {
      if (!existsSync(file) || readFileSync(file, 'utf8') === '') return;
      watcher.close();
      settle();
    });
  });
}

function run0(args: readonly string[]): VerdictDocument {
  try {
    return JSON.parse(execFileSync(process.execPath, [PROGRAM, 'verdict', ...args], { encoding: 'utf8' }));
  } catch (ended) {
    // Hold and not ready are told by the exit status as well.
    return JSON.parse((ended as { stdout: string }).stdout);
  }
}

describe('a fault in the board', () => {
  const faulty = path.join(folder, 'faulty-board.mjs');

  beforeAll(async () => {
    const bundle = await rolldown({
      input: 'tests/helpers/faulty-board.tsx',
      platform: 'node',
      // As the build has it: the `main` of jsonc-parser cannot be bundled.
      resolve: {
        mainFields: ['module', 'main'],
        alias: { 'react-devtools-core': path.resolve('.ci/nothing.js') },
      },
      logLevel: 'silent',
    });
    await bundle.write({ file: faulty, format: 'esm', codeSplitting: false });
  });

  it.each(['render', 'reckoning', 'timer', 'rejection', 'save'])(
    'in a %s while a form is half typed gives the terminal back and is told on it',
    async (where) => {
      const terminal = await shell();
      terminal.type(run(`${process.execPath} ${faulty} ${where}`));
      await terminal.until(answered, 'the board');
      await typeHalf(terminal, 9);
      terminal.type(where === 'save' ? '\u007f0 ml\r' : '\u000c');
      await terminal.until((screen) => screen.includes('status: 70'), 'the status');
      expect(terminal.screen().join('\n')).toMatch(/told: (Error: planted|TypeError)/u);
      await expectRestored(terminal);
    },
  );

  it.each([
    ['render', '\u000c'],
    ['reckoning', '\u000c'],
    ['timer', '\u000c'],
    ['rejection', '\u000c'],
    ['key', 'p'],
  ])('in a %s gives the terminal back and is told on it', async (where, key) => {
    const terminal = await shell();
    terminal.type(run(`${process.execPath} ${faulty} ${where}`));
    await terminal.until(answered, 'the board');
    terminal.type(key);
    await terminal.until((screen) => screen.includes('status: 70'), 'the status');
    expect(terminal.screen().join('\n')).toMatch(/told: (Error: planted|TypeError)/u);
    await expectRestored(terminal);
  });
});
