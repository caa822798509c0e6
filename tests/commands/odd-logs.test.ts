import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };
const START = Date.parse('2026-01-01T08:00:00Z');
const DAY = 86_400_000;
const on = (day: number) => new Date(START + day * DAY).toISOString().replace('.000Z', 'Z');
const dip = (day: number, level: number): Draft => ({ kind: 'dip', at: on(day), fluid: 'gear-oil', level });
const hours = (day: number, reading: number): Draft => ({
  kind: 'hours',
  at: on(day),
  engine: 'main',
  reading,
});
const job = (day: number): Draft => ({ kind: 'job', at: on(day), item: 'gear-oil', text: 'a job' });
const off = (day: number): Draft => ({ kind: 'dip', at: on(day), fluid: 'gear-oil', off: 'below' });
const week = [0, 1, 2, 3, 4, 5, 6].map((day) => dip(day, 1.29 - 0.005 * day));
const topUp: Draft = { kind: 'topup', at: on(1), fluid: 'gear-oil', amount: 0.1 };

async function asked(log: readonly Draft[], ...args: readonly string[]): Promise<string> {
  const outside = anOutside({ folders: { '.': aFolder(sandpiper, log) } });
  await run([...args, '--at', on(10)], outside, noScreens);
  const { out, err } = outside.written();
  expect(err).toBe('');
  return out;
}

describe('whatever the log holds, the item and the verdict say something sensible of it', () => {
  it.each<[string, readonly Draft[], RegExp]>([
    [
      'a meter that goes back',
      [...week, hours(0, 1000), hours(3, 940)],
      /"main" reads 940 h on 2026-01-04, below/,
    ],
    ['two readings at one instant', [...week, dip(6, 1.24)], /About 1\.2\d L now/],
    ['a level above the tank', [...week, dip(7, 9)], /reads 9 L on 2026-01-08, and it holds 1\.5 L/],
    ['a top-up with no readings', [topUp], /Not looked at yet/],
    ['one reading', [dip(9, 1.25)], /About 1\.2\d L now/],
    ['no reading', [], /Not looked at yet/],
    ['readings all the same', week.map((_, day) => dip(day, 1.2)), /Tight: (8|9)\d in 100/],
    [
      'a job with nothing after it',
      [...week, job(7)],
      /Since the job on 8 Jan 2026.*in 100 that it loses less/s,
    ],
    ['five jobs in a row', [...week, ...[7, 7.1, 7.2, 7.3, 7.4].map(job)], /Since the job on 8 Jan 2026/],
    ['nothing ever on the stick', [0, 1, 2, 3].map(off), /under the low mark.*Dip it now\./s],
  ])('%s', async (_, log, wanted) => {
    const words = await asked(log, 'item', 'gear-oil');
    expect(words).toMatch(wanted);
    expect(words).not.toMatch(/NaN|Infinity|undefined|null|e[+-]\d/);
    const item = JSON.parse(await asked(log, 'item', 'gear-oil', '--json'));
    const verdict = JSON.parse(await asked(log, 'verdict', '--json'));
    expect(verdict.items.find(({ id }: { id: string }) => id === 'gear-oil').now).toEqual(item.now);
    expect(item.entries).toHaveLength(log.filter(({ kind }) => kind !== 'hours').length);
    if (item.now !== null) expect(item.levels.line.at(-1).mean).toBe(item.now.value);
  });
});
