import { readFileSync } from 'node:fs';
import { spawn } from '@lydell/node-pty';
import { cleanEnvironment } from '../helpers/terminal.ts';

/** Only what will never come takes so long, ms. */
const PATIENCE_MS = 60_000;

export interface Program {
  /** Files and arguments for this Node. */
  readonly args: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
}

/** A program in a terminal of 120 x 40, as bytes: nothing but the program takes time. */
export interface Running {
  /** Everything written so far. */
  written(): string;
  /** Waits until what was written is as asked; gives the time it came, ms from the start. */
  until(holds: (written: string) => boolean): Promise<number>;
  type(keys: string): void;
  /** The most memory it has held, MB; null where this system does not say. */
  peakMB(): number | null;
  /** Leaves it as a person does, with Ctrl+C. */
  leave(): Promise<void>;
  kill(): Promise<void>;
}

export function runInTerminal({ args, env = {} }: Program): Running {
  const began = performance.now();
  const pty = spawn(process.execPath, [...args], {
    name: 'xterm-256color',
    cols: 120,
    rows: 40,
    env: cleanEnvironment(env),
  });
  let written = '';
  let came = (_at: number) => {};
  pty.onData((data) => {
    written += data;
    came(performance.now() - began);
  });
  const ended = new Promise<void>((settle) => pty.onExit(() => settle()));
  return {
    written: () => written,
    until: (holds) =>
      new Promise((settle, reject) => {
        const check = (at: number) => {
          if (!holds(written)) return;
          came = () => {};
          clearTimeout(late);
          settle(at);
        };
        const late = setTimeout(
          () => reject(new Error(`what was waited for never came:\n${written}`)),
          PATIENCE_MS,
        );
        came = check;
        check(performance.now() - began);
      }),
    type: (keys) => pty.write(keys),
    peakMB: () => peakOf(pty.pid),
    leave: () => {
      pty.write('\u0003');
      return ended;
    },
    kill: () => {
      pty.kill('SIGKILL');
      return ended;
    },
  };
}

function peakOf(pid: number): number | null {
  try {
    const found = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
    return found ? Number(found[1]) / 1024 : null;
  } catch {
    return null;
  }
}
