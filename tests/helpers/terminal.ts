import { type IPty, spawn } from '@lydell/node-pty';
import headless from '@xterm/headless';
import { UnicodeGraphemesAddon } from './graphemes-addon.ts';

/** How long a screen may take to show what is waited for, ms. Only a test that fails waits this long. */
const PATIENCE_MS = 60_000;

/** A terminal as a person has it: a program runs in it, keys go in, and what can be seen comes out. */
export interface TestTerminal {
  /** The lines now on the screen, without trailing spaces. */
  screen(): string[];
  /** Waits until the screen is as asked, and gives it; rejects with the screen as it stands when it never is. */
  until(holds: (screen: string) => boolean, what?: string): Promise<string>;
  /** Types, as one chunk. */
  type(keys: string): void;
  resize(columns: number, rows: number): void;
  /** Writes on the screen over the program's head, as another program may. */
  garble(text: string): void;
  signal(name: string): void;
  readonly pid: number;
  /** Settles when the program ends. */
  readonly ended: Promise<{ exitCode: number; signal: number | undefined }>;
  /** Everything written to the terminal so far. */
  written(): string;
  /** What the program has switched on. */
  modes(): { alternate: boolean; paste: boolean; cursor: boolean };
  /** The colours used on the screen as `#rrggbb`, palette numbers as `p<n>`; the terminal's own are left out. */
  colours(): ReadonlySet<string>;
  /** Closes the window under the program, as when a person does or a line drops. */
  hangUp(): void;
  close(): void;
}

export interface TestTerminalOptions {
  readonly columns: number;
  readonly rows: number;
  readonly env?: Readonly<Record<string, string>>;
  readonly cwd?: string;
}

/** Runs a command in a terminal of its own. CI, NO_COLOR and the test runner's own marks are kept from it. */
export function openTerminal(
  command: string,
  args: readonly string[],
  { columns, rows, env = {}, cwd = process.cwd() }: TestTerminalOptions,
): TestTerminal {
  const pty = spawn(command, [...args], {
    name: 'xterm-256color',
    cols: columns,
    rows,
    cwd,
    env: cleanEnvironment(env),
  });
  const screen = new headless.Terminal({ cols: columns, rows, allowProposedApi: true, scrollback: 1000 });
  screen.loadAddon(new UnicodeGraphemesAddon());
  screen.onData((answer) => pty.write(answer));
  let written = '';
  /** As much of it as the screen shows: it takes what is written in its own time. */
  let shown = '';
  const waiting = new Set<() => void>();
  const look = () => {
    for (const one of waiting) one();
  };
  pty.onData((data) => {
    written += data;
    screen.write(data, () => {
      shown += data;
      look();
    });
  });
  const ended = new Promise<{ exitCode: number; signal: number | undefined }>((settle) => {
    pty.onExit(({ exitCode, signal }) => screen.write('', () => settle({ exitCode, signal })));
  });
  return {
    screen: () => linesOf(screen),
    until: (holds, what = 'the screen asked for') =>
      new Promise((settle, reject) => {
        const late = setTimeout(() => {
          waiting.delete(check);
          reject(new Error(`${what} never came; the screen:\n${linesOf(screen).join('\n')}`));
        }, PATIENCE_MS);
        const check = () => {
          if (isMidFrame(shown)) return;
          const text = linesOf(screen).join('\n');
          if (!holds(text)) return;
          clearTimeout(late);
          waiting.delete(check);
          settle(text);
        };
        waiting.add(check);
        check();
      }),
    type: (keys) => pty.write(keys),
    garble: (text) => screen.write(text, look),
    resize: (wide, high) => {
      screen.resize(wide, high);
      pty.resize(wide, high);
    },
    signal: (name) => pty.kill(name),
    pid: pty.pid,
    ended,
    written: () => written,
    modes: () => ({
      alternate: screen.buffer.active.type === 'alternate',
      paste: screen.modes.bracketedPasteMode,
      cursor: written.lastIndexOf('\u001b[?25h') >= written.lastIndexOf('\u001b[?25l'),
    }),
    colours: () => coloursOf(screen),
    // In every build of node-pty, though its types leave it out.
    hangUp: () => (pty as IPty & { destroy(): void }).destroy(),
    close: () => close(pty, screen),
  };
}

/** A shell with jobs in a terminal: what is typed runs as from a person's own prompt, which is `$ `. It sets the terminal right after a job was stopped from outside, as sh need not. */
export function openShell(options: TestTerminalOptions): TestTerminal {
  return openTerminal('bash', ['--norc', '--noprofile', '--noediting', '-i'], {
    ...options,
    env: { PS1: '$ ', ...options.env },
  });
}

/** Within a synchronized update (DEC private mode 2026) a terminal shows nothing yet. */
function isMidFrame(shown: string): boolean {
  return shown.lastIndexOf('\u001b[?2026h') > shown.lastIndexOf('\u001b[?2026l');
}

export function cleanEnvironment(env: Readonly<Record<string, string>>): Record<string, string> {
  const kept = Object.entries(process.env).filter(
    ([name, value]) =>
      value !== undefined &&
      !/^(CI|NO_COLOR|FORCE_COLOR|VITEST.*|NODE_ENV|NODE_OPTIONS|DEV|INK_SCREEN_READER|LC_.*|LANG)$/.test(
        name,
      ),
  );
  return {
    ...(Object.fromEntries(kept) as Record<string, string>),
    LANG: 'C.UTF-8',
    COLORTERM: 'truecolor',
    TZ: 'UTC',
    ...env,
  };
}

function linesOf(screen: headless.Terminal): string[] {
  const { active } = screen.buffer;
  return Array.from({ length: screen.rows }, (_, row) =>
    (active.getLine(active.viewportY + row)?.translateToString(true) ?? '').trimEnd(),
  );
}

function coloursOf(screen: headless.Terminal): ReadonlySet<string> {
  const { active } = screen.buffer;
  const colours = new Set<string>();
  for (let row = 0; row < screen.rows; row += 1) {
    const line = active.getLine(active.viewportY + row);
    for (let column = 0; column < screen.cols; column += 1) {
      const cell = line?.getCell(column);
      if (!cell || cell.getChars().trim() === '') continue;
      if (cell.isFgRGB()) colours.add(`#${cell.getFgColor().toString(16).padStart(6, '0')}`);
      else if (cell.isFgPalette()) colours.add(`p${cell.getFgColor()}`);
    }
  }
  return colours;
}

function close(pty: IPty, screen: headless.Terminal): void {
  try {
    pty.kill('SIGKILL');
  } catch {
    // It has ended by itself.
  }
  screen.dispose();
}
