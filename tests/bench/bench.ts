import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { boardRows, keyRows } from './board.ts';
import { curveRows } from './curve.ts';
import { gribTimes } from './grib.ts';
import { inferenceRow, savingRow } from './log.ts';
import { makeBoat } from './long-log.ts';
import { type Row, type Skipped, sayRow } from './row.ts';
import { packageRow, verdictRow } from './shell.ts';

/** Prints how fast and how large the program is beside its floors, each measured in this run. Fails on no time. Words on the command line choose the parts. */
const folder = mkdtempSync(join(tmpdir(), 'hoveshort-bench-'));
const tenYears = join(folder, 'ten-years');
const more = join(folder, 'more');
makeBoat(tenYears, 40_000);
makeBoat(more, 100_000);

const parts: { readonly [name: string]: () => Promise<readonly (Row | Skipped)[]> } = {
  board: () => boardRows(folder, { '40,000': tenYears, '100,000': more }),
  verdict: async () => [await verdictRow(folder)],
  keys: () => keyRows(folder),
  curve: curveRows,
  saving: async () => [await savingRow(folder, readFileSync('sample-boat/boat.json', 'utf8'))],
  inference: async () => [await inferenceRow(folder, tenYears, '40,000')],
  package: async () => [packageRow()],
  grib: async () => (await gribTimes()).map(gribRow),
};
const chosen = process.argv.slice(2);

try {
  for (const [name, rows] of Object.entries(parts)) {
    if (chosen.length > 0 && !chosen.includes(name)) continue;
    for (const row of await rows()) process.stdout.write(`${sayRow(row)}\n`);
  }
} finally {
  rmSync(folder, { recursive: true });
}

function gribRow({ what, againMs, besideMs }: Awaited<ReturnType<typeof gribTimes>>[number]): Row {
  const floor = besideMs === null ? null : { what: 'grib_get_data', value: besideMs };
  return { what: `GRIB, ${what}`, unit: 'ms', ours: againMs, floor, goal: floor && { atMost: 1 } };
}
