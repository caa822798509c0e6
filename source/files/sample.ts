import path from 'node:path';
import { type Crc32, readLine, writeLine } from '../logbook/line.ts';
import { splitLines } from '../logbook/split-lines.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { codeOf, type Disk } from './disk.ts';
import { splitFileName } from './log-file.ts';
import { namesIn } from './names-in.ts';
import { readSmallFile } from './read-text.ts';
import { replaceFile } from './replace.ts';

const dayMs = 86_400_000;
const mostBytes = 32 * 1024 * 1024;
const lf = 0x0a;
const instants = /\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d{1,3})?)?Z/g;
const dates = /(?<="expires"\s*:\s*")\d{4}-\d\d-\d\d(?=")/g;
const runs = /^\d{8}T\d{4}Z(?=-)/;

/**
 * Makes a copy of a boat folder with every date moved by the same whole number of days, so that its last entry falls within the day before `nowMs`.
 * Lines are framed anew; a damaged line keeps its damage. The copy has all a boat folder has: boat.json, log, forecasts.
 * `to` is made, or must be empty. Answers with `to`.
 */
export function copySample(
  { disk, crc32 }: { readonly disk: Disk; readonly crc32: Crc32 },
  { from, to, nowMs }: { readonly from: string; readonly to: string; readonly nowMs: number },
): Result<string> {
  const source = readSample(disk, from);
  if (!source.ok) return source;
  const last = lastInstant(source.value.log, crc32);
  const days = last === null ? 0 : Math.floor((nowMs - last) / dayMs);
  const moved = source.value.all.map(({ name, bytes }) => movedFile({ name, bytes }, days, crc32));
  try {
    if (namesIn(disk, to).length > 0) return bad({ kind: 'folder not empty', folder: to });
    for (const folder of new Set(moved.map(({ name }) => path.dirname(name))))
      disk.makeFolder(path.join(to, folder));
  } catch (error) {
    return bad({ kind: 'cannot write', file: to, code: codeOf(error) });
  }
  for (const { name, bytes } of moved) {
    const failed = replaceFile(disk, path.join(to, name), bytes);
    if (failed) return bad({ kind: 'cannot write', ...failed });
  }
  return good(to);
}

interface SampleFile {
  /** From the boat folder: `log/k7m2q9xd.ndjson`. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

function readSample(
  disk: Disk,
  from: string,
): Result<{ all: readonly SampleFile[]; log: readonly SampleFile[] }> {
  const log = namesIn(disk, path.join(from, 'log')).filter(splitFileName);
  const forecasts = namesIn(disk, path.join(from, 'forecasts')).filter((name) => name.endsWith('.json'));
  const names = [
    'boat.json',
    ...log.map((name) => `log/${name}`),
    ...forecasts.map((name) => `forecasts/${name}`),
  ];
  const all: SampleFile[] = [];
  const troubles: Trouble[] = [];
  for (const name of names) {
    const bytes = readSmallFile(disk, path.join(from, name), mostBytes);
    if (bytes.ok) all.push({ name, bytes: bytes.value });
    else troubles.push(...bytes.troubles);
  }
  if (troubles.length > 0) return bad(...troubles);
  return good({ all, log: all.filter(({ name }) => isLog(name)) });
}

function isLog(name: string): boolean {
  return name.startsWith('log/');
}

/** The latest instant at which anything happened or was typed. */
function lastInstant(log: readonly SampleFile[], crc32: Crc32): number | null {
  const times = log.flatMap(({ bytes }) =>
    splitLines(bytes).flatMap((line) => {
      const read = readLine(line, crc32);
      return read.how === 'entry' ? [Date.parse(read.frame.at), Date.parse(read.frame.rec)] : [];
    }),
  );
  return times.length > 0 ? times.reduce((a, b) => Math.max(a, b)) : null;
}

function movedFile({ name, bytes }: SampleFile, days: number, crc32: Crc32): SampleFile {
  if (isLog(name)) return { name, bytes: movedLog(bytes, days, crc32) };
  const folder = path.dirname(name);
  const file = path.basename(name).replace(runs, (run) => movedRun(run, days));
  const text = movedText(new TextDecoder().decode(bytes), days);
  return { name: path.join(folder, file), bytes: new TextEncoder().encode(text) };
}

function movedLog(bytes: Uint8Array, days: number, crc32: Crc32): Uint8Array {
  const crcs = new Map<string, string>();
  const lines = splitLines(bytes).map((line) => movedLine(line, days, crcs, crc32));
  const unended = bytes.length > 0 && bytes.at(-1) !== lf;
  return Buffer.concat(
    unended ? [...lines.slice(0, -1), lines.at(-1)?.subarray(0, -1) ?? Buffer.of()] : lines,
  );
}

/** With its LF. `crcs` tells the new checksum of each line before by its old one. */
function movedLine(line: Uint8Array, days: number, crcs: Map<string, string>, crc32: Crc32): Uint8Array {
  const text = movedText(new TextDecoder().decode(line), days);
  const read = readLine(line, crc32);
  if (!read.frame) return Buffer.from(`${text}\n`);
  const { crc: _, ...record } = JSON.parse(text);
  const written = writeLine({ ...record, p: crcs.get(record.p) ?? record.p }, crc32);
  crcs.set(read.frame.crc, written.crc);
  return written.bytes;
}

function movedText(text: string, days: number): string {
  return text
    .replace(instants, (instant) => movedInstant(instant, days))
    .replace(dates, (date) => movedInstant(`${date}T00:00:00Z`, days).slice(0, date.length));
}

/** Written as it was, with or without seconds. */
function movedInstant(instant: string, days: number): string {
  const moved = new Date(Date.parse(instant) + days * dayMs).toISOString();
  return `${moved.slice(0, instant.length - 1)}Z`;
}

/** `20260203T0600Z`, as forecasts are named. */
function movedRun(run: string, days: number): string {
  const at = run.replace(/(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)Z/, '$1-$2-$3T$4:$5:00Z');
  return movedInstant(at, days).replace(/[-:]/g, '').replace(/00Z$/, 'Z');
}
