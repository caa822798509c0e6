import { execFileSync } from 'node:child_process';
import {
  cpSync,
  fdatasyncSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { build } from 'rolldown';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import { writeLine } from '../../source/logbook/line.ts';
import { openTerminal } from '../helpers/terminal.ts';
import { gribTimes } from './grib.ts';

/** One figure against its floor, both measured in this run. */
interface Row {
  readonly what: string;
  readonly ours: number;
  readonly floor: number;
  readonly unit: string;
  /** What the ratio of ours to the floor should be; `least` where more is better. */
  readonly goal: { readonly most?: number; readonly least?: number };
}

const root = join(import.meta.dirname, '..', '..');
const program = join(root, 'built', 'hoveshort.js');
const sample = join(root, 'sample-boat');
const work = mkdtempSync(join(tmpdir(), 'hoveshort-bench-'));
const RUNS = 11;

try {
  await main();
} finally {
  rmSync(work, { recursive: true, force: true });
}

async function main(): Promise<void> {
  print(verdictAgainstNode());
  const hello = await inkHello();
  for (const [entries, most] of [
    [40_000, 2],
    [100_000, 3],
  ] as const)
    print(await boardAgainstInk(hello, entries, most));
  print(await bytesAKey());
  print(await savingAgainstSync());
  print(packageSize());
  for (const { what, againMs, besideMs } of await gribTimes()) {
    if (besideMs === null)
      process.stdout.write(`GRIB, ${what}: ${againMs.toFixed(1)} ms; grib_get_data is not installed\n`);
    else
      print({
        what: `GRIB, ${what}, against grib_get_data`,
        ours: againMs,
        floor: besideMs,
        unit: 'ms',
        goal: { most: 1 },
      });
  }
}

function print({ what, ours, floor, unit, goal }: Row): void {
  const ratio = ours / floor;
  const met = ratio <= (goal.most ?? Infinity) && ratio >= (goal.least ?? 0);
  const wanted = goal.most === undefined ? `at least ${goal.least}` : `at most ${goal.most}`;
  process.stdout.write(
    `${what}: ${ours.toFixed(1)} ${unit} against ${floor.toFixed(1)}: ${ratio.toFixed(2)} x, goal ${wanted}: ${met ? 'met' : 'NOT MET'}\n`,
  );
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

function timed(run: () => void): number {
  const from = performance.now();
  run();
  return performance.now() - from;
}

/** Whole processes, one after the other with their floor. */
function verdictAgainstNode(): Row {
  const ours: number[] = [];
  const floor: number[] = [];
  const args = ['verdict', '--json', '--boat', sample, '--at', '2026-06-14T07:30:00Z'];
  for (let i = 0; i < RUNS; i += 1) {
    floor.push(timed(() => execFileSync(process.execPath, ['-e', '0'])));
    ours.push(timed(() => runToEnd([program, ...args])));
  }
  return {
    what: 'verdict --json, sample boat, against node -e 0',
    ours: median(ours),
    floor: median(floor),
    unit: 'ms',
    goal: { most: 5 },
  };
}

function runToEnd(args: string[]): void {
  try {
    execFileSync(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  } catch (ended) {
    if (typeof (ended as { status?: number }).status !== 'number') throw ended;
  }
}

/** The least Ink program, bundled and minified as ours is. */
async function inkHello(): Promise<string> {
  const source = join(root, 'built', 'bench-hello.tsx');
  writeFileSync(
    source,
    `import { render, Text } from 'ink';\nrender(<Text>hello there</Text>);\nsetInterval(() => {}, 1000);\n`,
  );
  const nothing = join(root, '.ci', 'nothing.js');
  await build({
    input: { hello: source },
    platform: 'node',
    resolve: { alias: { 'react-devtools-core': nothing } },
    transform: { define: { 'process.env.DEV': '"false"', 'process.env.NODE_ENV': '"production"' } },
    output: { dir: join(work, 'hello'), format: 'esm', minify: true, entryFileNames: '[name].mjs' },
    logLevel: 'silent',
  });
  rmSync(source);
  return join(work, 'hello', 'hello.mjs');
}

async function boardAgainstInk(hello: string, entries: number, most: number): Promise<Row> {
  const folder = aLongLog(entries);
  const ours: number[] = [];
  const floor: number[] = [];
  for (let i = 0; i < 7; i += 1) {
    floor.push(await untilSeen([hello], 'hello there'));
    ours.push(
      await untilSeen([program, '--boat', folder, '--at', '2026-06-14T07:30:00Z'], 'CHECKS AND DATES'),
    );
  }
  return {
    what: `board, first whole frame, ${entries} entries, against Ink hello`,
    ours: median(ours),
    floor: median(floor),
    unit: 'ms',
    goal: { most },
  };
}

async function untilSeen(args: string[], words: string): Promise<number> {
  const from = performance.now();
  const terminal = openTerminal(process.execPath, args, { columns: 120, rows: 60 });
  await terminal.until((screen) => screen.includes(words));
  const taken = performance.now() - from;
  terminal.close();
  return taken;
}

/** The sample boat with so many readings of her fluids before her own log's end. */
function aLongLog(entries: number): string {
  const folder = join(work, `boat-${entries}`);
  mkdirSync(join(folder, 'log'), { recursive: true });
  cpSync(join(sample, 'boat.json'), join(folder, 'boat.json'));
  const fluids = ['engine-oil', 'gear-oil', 'coolant', 'fuel', 'water'];
  const end = Date.parse('2026-06-14T06:00:00Z');
  const lines: Uint8Array[] = [];
  let p = '00000000';
  for (let n = 1; n <= entries; n += 1) {
    const at = new Date(end - (entries - n) * 7_884_000).toISOString();
    const head = { v: 1, id: `abcdefgh-${n}`, p, lc: n, at, rec: at, by: 'Nell' };
    const { bytes, crc } = writeLine(
      { ...head, kind: 'dip', fluid: fluids[n % fluids.length]!, share: 1 - (n % 7) / 20 },
      crc32,
    );
    lines.push(bytes);
    p = crc;
  }
  writeFileSync(join(folder, 'log', 'abcdefgh.ndjson'), Buffer.concat(lines));
  return folder;
}

async function bytesAKey(): Promise<Row> {
  const args = [program, '--boat', sample, '--at', '2026-06-14T07:30:00Z'];
  const terminal = openTerminal(process.execPath, args, { columns: 120, rows: 40 });
  await terminal.until((screen) => screen.includes('NOT READY'));
  const written: number[] = [];
  for (let i = 0; i < 20; i += 1) {
    const before = terminal.written().length;
    const screen = terminal.screen().join('\n');
    terminal.type('\u001b[B');
    await terminal.until((now) => now !== screen);
    written.push(terminal.written().length - before);
  }
  terminal.close();
  return {
    what: 'a key at 120x40, written, against 1 kB',
    ours: Math.max(...written),
    floor: 1000,
    unit: 'bytes',
    goal: { most: 1 },
  };
}

async function savingAgainstSync(): Promise<Row> {
  const folder = join(work, 'saving');
  cpSync(sample, folder, { recursive: true });
  const boat = boatFolder(keepingOn(folder, join(work, 'state'), Date.now));
  await boat.read();
  const count = 300;
  const save = async () => {
    const saved = await boat.append([{ kind: 'remark', at: new Date().toISOString(), text: 'all well' }]);
    if (!saved.ok) throw new Error('not saved');
  };
  await save();
  const ours = performance.now();
  for (let i = 0; i < count; i += 1) await save();
  const oursMs = performance.now() - ours;
  const file = openSync(join(work, 'bare'), 'a');
  const bare = timed(() => {
    for (let i = 0; i < count; i += 1) {
      writeSync(file, 'x'.repeat(200));
      fdatasyncSync(file);
    }
  });
  return {
    what: 'entries saved a second, against a bare write and sync',
    ours: (1000 * count) / oursMs,
    floor: (1000 * count) / bare,
    unit: 'a second',
    goal: { least: 0.8 },
  };
}

function packageSize(): Row {
  const packed = execFileSync('npm', ['pack', '--dry-run', '--json'], {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [{ size }] = JSON.parse(packed) as [{ size: number }];
  return {
    what: 'the package, gzipped, against 600 kB',
    ours: size / 1000,
    floor: 600,
    unit: 'kB',
    goal: { most: 1 },
  };
}
