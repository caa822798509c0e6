import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { type Forecast, forecastFileName } from '../../source/forecast/forecast.ts';
import { writeLine } from '../../source/logbook/line.ts';
import { stream } from '../../source/maths/stream.ts';
import { sampleForecasts } from './sample-forecasts.ts';
import { sampleLife } from './sample-life.ts';

const writer = '7kq3w9pn';

/** The log of the sample boat as her laptop wrote it: one line an entry, numbered and chained, with one line cut off by a power cut. */
export function sampleLog(): Buffer {
  const typing = stream(1, 'sample-boat/typing');
  const ids = new Map<string, string>();
  const lines: Uint8Array[] = [];
  let n = 1;
  let p = '00000000';
  let rec = 0;
  for (const { draft, mark, strikes, torn } of sampleLife()) {
    const { kind, at, by, ...fields } = draft as typeof draft & { entry?: string };
    rec = Math.max(rec + 1500, Date.parse(at) + 15_000 + Math.round(45_000 * typing.uniform()));
    const id = `${writer}-${n}`;
    if (mark !== undefined) ids.set(mark, id);
    if (strikes !== undefined) fields.entry = ids.get(strikes)!;
    const frame = { v: 1, id, p, lc: n, at, rec: new Date(rec).toISOString(), by };
    const { bytes, crc } = writeLine({ ...frame, kind, ...fields }, crc32);
    if (torn) {
      lines.push(bytes.subarray(0, Math.floor(bytes.length * 0.6)), Buffer.from('\n'));
      continue;
    }
    lines.push(bytes);
    n += 1;
    p = crc;
  }
  return Buffer.concat(lines);
}

/** A forecast as the program keeps it. */
export function forecastText(forecast: Forecast): string {
  return `${JSON.stringify(forecast, null, 1)}\n`;
}

/** Where it belongs in the boat's folder. */
export const sampleLogPath = join('log', `${writer}.ndjson`);

if (import.meta.main) {
  const folder = process.argv[2] ?? 'sample-boat';
  mkdirSync(join(folder, 'log'), { recursive: true });
  writeFileSync(join(folder, sampleLogPath), sampleLog());
  mkdirSync(join(folder, 'forecasts'), { recursive: true });
  for (const one of sampleForecasts())
    writeFileSync(join(folder, 'forecasts', forecastFileName(one)), forecastText(one));
}
