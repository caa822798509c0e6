import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { anyKeys } from './any-keys.ts';
import type { Campaign } from './campaign.ts';
import { copiesOnAFailingDisk } from './copies.ts';
import { drawingFilter } from './drawing.ts';
import {
  interleavedWriters,
  livesOnAFailingDisk,
  plantedFaults,
  replacedOnAFailingDisk,
} from './failing-disk.ts';
import { flippedBits } from './flipped-bits.ts';
import { keyChunks } from './keys.ts';
import { killed } from './killed.ts';
import { mergeLaws } from './merge-laws.ts';
import { parsers } from './parsers.ts';
import { shuffledLines } from './shuffled-lines.ts';
import { tornLines } from './torn-lines.ts';
import { twoWriters, writersWithoutTheLock, writersWithTheLock } from './writers.ts';
import { wrongClocks } from './wrong-clocks.ts';

/**
 * Runs every campaign and prints a line of each: what it tried and how often, what was lost, what went undetected, the seconds.
 *     npm run soak -- [--share 0.01] [--seed 7] [words of the campaigns wanted ...]
 */
const CAMPAIGNS: { readonly [word: string]: Campaign } = {
  kill: killed,
  disk: livesOnAFailingDisk,
  replace: replacedOnAFailingDisk,
  copies: copiesOnAFailingDisk,
  torn: tornLines,
  bits: flippedBits,
  lines: shuffledLines,
  writers: writersWithTheLock,
  two: twoWriters,
  unlocked: writersWithoutTheLock,
  interleaved: interleavedWriters,
  merge: mergeLaws,
  clocks: wrongClocks,
  parsers,
  drawing: drawingFilter,
  planted: plantedFaults,
  any: anyKeys,
  keys: keyChunks,
};
/** What is to be found in them is found only with enough tries. */
const ALWAYS_WHOLE: readonly Campaign[] = [writersWithoutTheLock, plantedFaults];
/** Scripts of their own, each with a line of its own; they take how many and the seed. */
const SCRIPTS = ['grib-fuzz', 'calibration', 'hunts'];
const wholeFuzz = 100_000;

const { values, positionals } = parseArgs({
  options: { share: { type: 'string', default: '1' }, seed: { type: 'string', default: '1' } },
  allowPositionals: true,
});
const [share, seed] = [Number(values.share), Number(values.seed)];
const known = [...Object.keys(CAMPAIGNS), ...SCRIPTS];
const unknown = positionals.filter((word) => !known.includes(word));
if (!(share > 0 && share <= 1) || !Number.isInteger(seed) || unknown.length > 0) {
  process.stderr.write(`npm run soak -- [--share 0.01] [--seed 7] [${known.join(' | ')} ...]\n`);
  process.exit(64);
}
const wanted = (word: string) => positionals.length === 0 || positionals.includes(word);
/** The simulated disk throws by the million; nobody reads where from. */
Error.stackTraceLimit = 4;

let [passed, failed] = [0, 0];
line('campaign', 'count', 'lost', 'undetected', 'seconds');
for (const [, campaign] of Object.entries(CAMPAIGNS).filter(([word]) => wanted(word))) {
  const began = performance.now();
  const count = ALWAYS_WHOLE.includes(campaign)
    ? campaign.count
    : Math.max(1, Math.round(campaign.count * share));
  const { count: tried, lost, undetected, notes } = await campaign.run(count, seed);
  line(campaign.name, tried, lost, undetected, ((performance.now() - began) / 1000).toFixed(1));
  for (const note of notes) process.stdout.write(`    ${note}\n`);
  tally(lost + undetected === 0);
}
for (const name of SCRIPTS.filter(wanted)) {
  const script = path.join(import.meta.dirname, `${name}.ts`);
  if (!existsSync(script)) continue;
  const count = String(Math.max(1, Math.round(wholeFuzz * share)));
  tally(spawnSync(process.execPath, [script, count, String(seed)], { stdio: 'inherit' }).status === 0);
}
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed > 0 ? 1 : 0;

function tally(well: boolean): void {
  if (well) passed += 1;
  else failed += 1;
}

function line(name: string, ...figures: readonly (string | number)[]): void {
  process.stdout.write(`${name.padEnd(64)}${figures.map((one) => String(one).padStart(11)).join('')}\n`);
}
