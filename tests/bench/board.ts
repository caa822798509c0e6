import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'rolldown';
import { LAST_MORNING } from './long-log.ts';
import { type Program, runInTerminal } from './pty.ts';
import { medians, type Row, type Skipped, share } from './row.ts';

const RUNS = 21;
/** Stands in the last panel of the board, so that a frame with it is whole. */
const LAST_PANEL = 'CHECKS AND DATES';
const FRAME_ENDS = '\u001b[?2026l';
const KEYS = 200;
/** Between two keys, ms: more than the least time between two frames. */
const PAUSE_MS = 60;

/** The board until its first whole frame, and the memory it takes, beside the least an Ink program can do. */
export async function boardRows(folder: string, boats: { readonly [entries: string]: string }) {
  const hello = await bundledHello(folder);
  const [tenYears, more] = Object.entries(boats).map(([entries, boat]) => ({
    entries,
    program: board(folder, boat),
  }));
  // Once to the end, so that each has its compile cache, as on every morning but the first.
  await usedOnce(hello, 'hello');
  await usedOnce(tenYears!.program, LAST_PANEL);
  const first = await medians(RUNS, {
    hello: () => firstFrame(hello, 'hello'),
    tenYears: () => firstFrame(tenYears!.program, LAST_PANEL),
    more: () => firstFrame(more!.program, LAST_PANEL),
  });
  const floor = { what: 'Ink hello', value: first.hello };
  const what = (entries: string) => `board, first whole frame, ${entries} entries`;
  const rows: (Row | Skipped)[] = [
    { what: what(tenYears!.entries), unit: 'ms', ours: first.tenYears, floor, goal: { atMost: 2 } },
    { what: what(more!.entries), unit: 'ms', ours: first.more, floor, goal: { atMost: 3 } },
    await memoryRow(hello, tenYears!),
  ];
  return rows;
}

/** Arrow keys on the board of the sample boat: how long until the frame is drawn, and how much is written for it. */
export async function keyRows(folder: string): Promise<readonly Row[]> {
  const running = runInTerminal(board(folder, 'sample-boat'));
  await running.until(isAnswered);
  const times: number[] = [];
  let bytes = 0;
  // Away from the top, where a key changes nothing.
  running.type('\u001b[B'.repeat(5));
  for (let key = 0; key < KEYS; key += 1) {
    await new Promise((settle) => setTimeout(settle, PAUSE_MS));
    const before = running.written().length;
    const began = performance.now();
    running.type(key % 20 < 10 ? '\u001b[B' : '\u001b[A');
    await running.until((written) => written.indexOf(FRAME_ENDS, before) >= 0);
    times.push(performance.now() - began);
    bytes += Buffer.byteLength(running.written().slice(before));
  }
  await running.kill();
  return [
    {
      what: 'key to frame, 120x40, p95',
      unit: 'ms',
      ours: share(times, 0.95),
      floor: null,
      goal: { atMost: 16 },
    },
    {
      what: 'written for a key, mean',
      unit: 'bytes',
      ours: bytes / KEYS,
      floor: null,
      goal: { atMost: 1000 },
    },
  ];
}

function board(folder: string, boat: string): Program {
  return {
    args: ['built/hoveshort.js', '--boat', boat, '--at', LAST_MORNING],
    env: { XDG_CONFIG_HOME: join(folder, 'config'), XDG_STATE_HOME: join(folder, 'state') },
  };
}

/** Bundled as anyone would, in one file, started with the compile cache as the program itself is. */
async function bundledHello(folder: string): Promise<Program> {
  await build({
    input: 'tests/bench/hello.tsx',
    platform: 'node',
    resolve: { alias: { 'react-devtools-core': join(process.cwd(), '.ci', 'nothing.js') } },
    transform: {
      define: { 'process.env.DEV': '"false"', 'process.env.NODE_ENV': '"production"' },
      target: 'node22',
    },
    output: { file: join(folder, 'hello.mjs'), format: 'esm', minify: true, codeSplitting: false },
    logLevel: 'warn',
  });
  const launch = join(folder, 'launch-hello.mjs');
  writeFileSync(
    launch,
    "import module from 'node:module';\nmodule.enableCompileCache();\nawait import('./hello.mjs');\n",
  );
  return { args: [launch] };
}

async function usedOnce(program: Program, word: string): Promise<void> {
  const running = runInTerminal(program);
  await running.until((written) => written.includes(word));
  await running.leave();
}

async function firstFrame(program: Program, word: string): Promise<number> {
  const running = runInTerminal(program);
  const came = await running.until((written) => written.includes(word));
  await running.kill();
  return came;
}

async function memoryRow(hello: Program, { entries, program }: { entries: string; program: Program }) {
  const what = `board, peak memory, ${entries} entries`;
  const peak = async (of: Program, holds: (written: string) => boolean) => {
    const running = runInTerminal(of);
    await running.until(holds);
    const most = running.peakMB();
    await running.kill();
    return most ?? Number.NaN;
  };
  const { ours, floor } = await medians(5, {
    floor: () => peak(hello, (written) => written.includes('hello')),
    ours: () => peak(program, isAnswered),
  });
  if (Number.isNaN(ours)) return { what, skipped: 'this system does not say' };
  return {
    what,
    unit: 'MB',
    ours,
    floor: { what: 'Ink hello', value: floor },
    goal: { atMost: 1.6 },
  } as const;
}

/** The frame with the answer in it has been drawn whole. */
function isAnswered(written: string): boolean {
  const answered = written.search(/boat \d+ in 100/u);
  return answered >= 0 && written.indexOf(FRAME_ENDS, answered) >= 0;
}
