import { ownTables } from '../../source/tracing/tables.ts';
import { huntInvented } from '../helpers/invented-faults.ts';

/**
 * Hunts over 1,000 invented faults drawn from each table: looks needed against random order (a shuffle a fault) and against asking by prior chance, and whether
 * the chances told come true, in bins.
 *     node tests/soak/hunts.ts [count] [seed]        the whole is a count of 100,000; a smaller one takes that part
 */
const WHOLE = 100_000;
const share = Math.min(1, Number(process.argv[2] ?? WHOLE) / WHOLE);
const seed = Number(process.argv[3] ?? 1);
const count = Math.max(1, Math.round(1000 * share));
const MOST_OF_RANDOM = 0.7;
const slack = 1 / Math.sqrt(share);
const BINS = [0, 0.5, 0.7, 0.9, 0.95, 1.01];
let failed = 0;

for (const table of ownTables()) {
  const { looks, right, told } = huntInvented(table, count, seed);
  const ratio = looks['next best'] / looks.random;
  say(
    `${table.id}: looks needed, of random order ${looks.random.toFixed(2)}, by prior ${looks['by prior'].toFixed(2)}`,
    `${looks['next best'].toFixed(2)}, ${(100 * ratio).toFixed(1)} %`,
    ratio <= MOST_OF_RANDOM * (1 + 0.2 * (slack - 1)) && looks['next best'] < looks['by prior'],
  );
  say(
    `${table.id}: right at the end, next best, random, by prior`,
    [right['next best'], right.random, right['by prior']].map((one) => one.toFixed(3)).join(', '),
    right['next best'] > right.random - 0.05 * slack,
  );
  for (const [i, from] of BINS.slice(0, -1).entries()) {
    const bin = told.filter(({ chance }) => chance >= from && chance < BINS[i + 1]!);
    if (bin.length === 0) continue;
    const chance = bin.reduce((sum, one) => sum + one.chance, 0) / bin.length;
    const held = bin.filter((one) => one.right).length / bin.length;
    const near =
      Math.abs(held - chance) < 3.5 * Math.sqrt((chance * (1 - chance)) / bin.length) + 1 / bin.length;
    say(`${table.id}: told ${chance.toFixed(3)}`, `came true ${held.toFixed(3)} of ${bin.length}`, near);
  }
}
process.exitCode = failed > 0 ? 1 : 0;

function say(what: string, found: string, holds: boolean): void {
  if (!holds) failed += 1;
  process.stdout.write(`hunts  ${what}: ${found}${holds ? '' : '  OUT OF BOUNDS'}\n`);
}
