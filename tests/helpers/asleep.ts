import { readdirSync, readFileSync } from 'node:fs';
import { setTimeout as after } from 'node:timers/promises';

const LOOK_MS = 6;
const MOST_MS = 60_000;

/**
 * Settles once the program has slept for a while without a moment's work, no thread of it at work or waiting for a disk: it has read
 * all that was typed and drawn all there is to draw. However loaded the machine, one that waits for its turn does not sleep. Linux only: it reads `/proc`.
 */
export async function asleep(pid: number, quietMs: number): Promise<void> {
  const most = performance.now() + MOST_MS;
  let before = '';
  let since = performance.now();
  while (performance.now() < most) {
    const now = read(`/proc/${pid}/schedstat`);
    if (now === '') return;
    const awake = now !== before || isAwake(pid, String(pid));
    if (awake) since = performance.now();
    else if (performance.now() - since >= quietMs) {
      if (!readdirSync(`/proc/${pid}/task`).some((thread) => isAwake(pid, thread))) return;
      since = performance.now();
    }
    before = now;
    await after(LOOK_MS);
  }
  throw new Error('the program never came to rest');
}

function isAwake(pid: number, thread: string): boolean {
  const state = read(`/proc/${pid}/task/${thread}/stat`);
  return state !== '' && !/\) S /u.test(state);
}

/** Empty once it is gone. */
function read(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}
