import type { ReadStream, WriteStream } from 'node:tty';

/** What the board needs of the process it runs in, handed in so that a test can stand in for it. */
export interface Host {
  readonly stdin: ReadStream;
  readonly stdout: WriteStream;
  readonly stderr: WriteStream;
  /** Rows at the bottom to leave alone: a Windows console scrolls when its last cell is written. */
  readonly rowsKept: number;
  /** Calls back at a signal, instead of what it does by itself; returns how to stop. */
  onSignal(signal: NodeJS.Signals, run: () => void): () => void;
  /** Calls back when the terminal can no longer be read: its window is closed; returns how to stop. */
  onGone(run: () => void): () => void;
  /** Calls back at an exception or a rejection nobody caught; returns how to stop. */
  onFault(run: (fault: unknown) => void): () => void;
  /** Stops the whole foreground job, as Ctrl+Z does in a program that does not read keys itself. */
  stopJob(): void;
}

export function hostOf(process: NodeJS.Process): Host {
  return {
    stdin: process.stdin,
    stdout: process.stdout,
    stderr: process.stderr,
    rowsKept: process.platform === 'win32' ? 1 : 0,
    onSignal: (signal, run) => {
      process.on(signal, run);
      return () => process.off(signal, run);
    },
    onGone: (run) => {
      process.stdin.on('end', run);
      process.stdin.on('error', run);
      return () => {
        process.stdin.off('end', run);
        process.stdin.off('error', run);
      };
    },
    onFault: (run) => {
      process.on('uncaughtException', run);
      process.on('unhandledRejection', run);
      return () => {
        process.off('uncaughtException', run);
        process.off('unhandledRejection', run);
      };
    },
    stopJob: () => process.kill(0, 'SIGSTOP'),
  };
}
