import { execFile } from 'node:child_process';
import path from 'node:path';
import { promisify } from 'node:util';
import { type Campaign, found, type Outcome } from './campaign.ts';

const run = promisify(execFile);
const mostMb = 200;
/** Node takes what it is let take before it tidies up; so little shows what is needed, and more than that ends the process. */
const SMALL = ['--max-old-space-size=64', '--max-semi-space-size=4'];

/** Boat file, log, standard input, forecasts and arguments on mutated texts, a few of them huge. */
export const parsers: Campaign = {
  name: `parsers on mutated texts, in under ${mostMb} MB`,
  count: 1_000_000,
  async run(count, seed) {
    const script = path.join(import.meta.dirname, 'parse-many.ts');
    const { stdout } = await run(process.execPath, [...SMALL, script, String(count), String(seed)]).catch(
      ({ stderr }) => ({ stdout: JSON.stringify({ outcome: died(stderr), peakMb: 0 }) }),
    );
    const { outcome, peakMb } = JSON.parse(stdout) as { outcome: Outcome; peakMb: number };
    if (peakMb > mostMb) found(outcome, 'undetected', `${peakMb.toFixed(0)} MB at the peak`);
    return outcome;
  },
};

function died(stderr: unknown): Outcome {
  return { count: 0, lost: 1, undetected: 0, notes: [String(stderr).slice(0, 500)] };
}
