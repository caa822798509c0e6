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

export function hostOf(program: NodeJS.Process): Host {
  return {
    stdin: program.stdin,
    stdout: program.stdout,
    stderr: program.stderr,
    rowsKept: program.platform === 'win32' ? 1 : 0,
    onSignal: (signal, run) => {
      program.on(signal, run);
      return () => program.off(signal, run);
    },
    onGone: (run) => {
      program.stdin.on('end', run);
      program.stdin.on('error', run);
      return () => {
        program.stdin.off('end', run);
        program.stdin.off('error', run);
      };
    },
    onFault: (run) => {
      program.on('uncaughtException', run);
      program.on('unhandledRejection', run);
      return () => {
        program.off('uncaughtException', run);
        program.off('unhandledRejection', run);
      };
    },
    stopJob: () => program.kill(0, 'SIGSTOP'),
  };
}
