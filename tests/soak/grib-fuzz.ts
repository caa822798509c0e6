import { goThrough, mutatedGrib } from '../helpers/mutated-grib.ts';

/**
 * Takes many broken GRIB files all the way and prints one line: how many, crashes, files over a second, peak memory.
 *     node tests/soak/grib-fuzz.ts [count, 100000 unless given] [seed, 1 unless given]
 */
const [count = 100_000, seed = 1] = process.argv.slice(2).map(Number);
const HANG_MS = 1000;
let [crashes, hangs, slowest] = [0, 0, 0];
const began = performance.now();
for (let n = 0; n < count; n += 1) {
  const from = performance.now();
  try {
    await goThrough(mutatedGrib(seed, n));
  } catch (error) {
    crashes += 1;
    process.stderr.write(`file ${n} of seed ${seed}: ${error instanceof Error ? error.stack : error}\n`);
  }
  const took = performance.now() - from;
  slowest = Math.max(slowest, took);
  if (took > HANG_MS) {
    hangs += 1;
    process.stderr.write(`file ${n} of seed ${seed}: ${took.toFixed(0)} ms\n`);
  }
}
const peakMb = process.resourceUsage().maxRSS / 1024;
const seconds = (performance.now() - began) / 1000;
process.stdout.write(
  `grib fuzz: ${count} files in ${seconds.toFixed(0)} s, ${crashes} crashes, ${hangs} over a second (slowest ${slowest.toFixed(0)} ms), peak memory ${peakMb.toFixed(0)} MB\n`,
);
process.exitCode = crashes + hangs > 0 ? 1 : 0;
