import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { decode } from '../../source/forecast/grib/decode.ts';
import { readGrib } from '../../source/forecast/grib/read.ts';
import { decodeJpeg2000 } from '../helpers/jpeg-2000.ts';

const folder = new URL('../../../shared/checks/forecasts/', import.meta.url);
const FILES = [
  ['150 fields of 31 x 21 points, simple packing', 'marine72h_g2_simple.grib2'],
  ['150 fields of 31 x 21 points, complex packing', 'marine72h_g2_complex.grib2'],
  ['150 fields of 31 x 21 points, edition 1', 'marine72h_g1_simple.grib1'],
  ['150 fields of 31 x 21 points, JPEG 2000', 'marine72h_g2_jpeg.grib2'],
  ['19 fields of 301 x 331 points, 0.7 MB, JPEG 2000', 'gribberish__gfswave.t18z.atlocn.0p16.f001.grib2'],
] as const;
const RUNS = 5;

export interface GribTime {
  readonly what: string;
  /** Reading and unpacking every field, ms: the first time in this process, and the median of more. */
  readonly firstMs: number;
  readonly againMs: number;
  /** The median of `grib_get_data` on the same file, its process and its printing to nowhere included; null where it is not installed. */
  readonly besideMs: number | null;
}

/** How long GRIB files take to read whole, beside ecCodes' `grib_get_data`. Empty where ../shared/checks/forecasts is absent. */
export async function gribTimes(): Promise<readonly GribTime[]> {
  const times: GribTime[] = [];
  for (const [what, name] of existsSync(folder) ? FILES : []) {
    const file = fileURLToPath(new URL(name, folder));
    const octets = new Uint8Array(readFileSync(file));
    const ours: number[] = [];
    for (let run = 0; run <= RUNS; run += 1) ours.push(await timeOf(() => unpack(octets)));
    const beside: number[] = [];
    for (let run = 0; run < RUNS; run += 1) {
      let status: number | null = null;
      beside.push(
        await timeOf(() => {
          status = spawnSync('grib_get_data', [file], { stdio: 'ignore' }).status;
        }),
      );
      if (status !== 0) break;
    }
    const installed = beside.length === RUNS;
    times.push({
      what,
      firstMs: ours[0]!,
      againMs: median(ours.slice(1)),
      besideMs: installed ? median(beside) : null,
    });
  }
  return times;
}

async function unpack(octets: Uint8Array): Promise<void> {
  for (const field of readGrib(octets).messages) {
    if ((await decode(field, decodeJpeg2000)) === null) throw new Error('a field that cannot be unpacked');
  }
}

async function timeOf(work: () => unknown): Promise<number> {
  const began = performance.now();
  await work();
  return performance.now() - began;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
