import type { Host } from './host.ts';

/** Keeps the program from ending while it waits to go on; the length does not matter. */
const HELD_MS = 60_000;

/** What can hand the terminal back and take it again: Ink, once the first frame is drawn. */
interface Screen {
  suspendTerminal(): Promise<{ resume(): Promise<void> }>;
}

/** The terminal handed back and taken again. */
export interface Suspension {
  hold(screen: Screen): void;
  /** Hands the terminal back, stops the whole job as a shell expects, and takes the terminal again when it goes on. */
  suspend(): Promise<void>;
  /** Takes the terminal again and draws every cell anew, whatever another program or a stop from outside left of it. */
  redraw(): Promise<void>;
  /** Hands the terminal to what runs in its place, and takes it again when that ends. */
  lend(act: () => Promise<void>): Promise<void>;
  /** Whether the terminal is somebody else's now. */
  isHandedBack(): boolean;
}

export function suspensionOf(host: Host): Suspension {
  let screen: Screen | null = null;
  let handedBack = false;

  async function whileHandedBack(act: () => Promise<void>): Promise<void> {
    if (!screen || handedBack) return;
    handedBack = true;
    try {
      const { resume } = await screen.suspendTerminal();
      await act();
      await resume();
    } finally {
      handedBack = false;
    }
  }

  return {
    hold: (held) => {
      screen = held;
    },
    suspend: () => whileHandedBack(() => stopped(host)),
    redraw: () => whileHandedBack(async () => {}),
    lend: whileHandedBack,
    isHandedBack: () => handedBack,
  };
}

async function stopped(host: Host): Promise<void> {
  const held = setInterval(() => {}, HELD_MS);
  await new Promise<void>((goOn) => {
    const off = host.onSignal('SIGCONT', () => {
      off();
      goOn();
    });
    host.stopJob();
  });
  clearInterval(held);
  // A signal to end that came while it stood still has its turn first.
  await new Promise((next) => setImmediate(next));
}
