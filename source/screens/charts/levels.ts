import type { LevelPointDocument, LevelsDocument } from '../../words/levels-document.ts';
import { amountWords, counted, dayWords, momentWords } from '../../words/say.ts';
import type { ShownItem } from '../shown-item.ts';
import { plotLines } from './plot.ts';
import { timeTicks } from './time-axis.ts';

const TICK_COLUMNS = 10;
const DAY_MS = 86_400_000;
/** So many columns a day keep readings of one day from those of the next; at least a fortnight is shown. */
const DAY_COLUMNS = 2;
const LEAST_DAYS = 14;
/** To show the last job with a week before it, a day may have a single column. */
const DAYS_BEFORE_JOB = 7;
/** Kept free at either side for the words. */
const WORD_COLUMNS = 12;

/** A fluid's level as it went and will go, as much of it as there is room for. */
export interface LevelChart {
  readonly levels: LevelsDocument;
  readonly marks: readonly { readonly value: number; readonly word: string }[];
  readonly from: number;
  readonly now: number;
}

/** Null for what was never read, or is not reckoned yet. */
export function levelChart(
  { levels, low, full, reserve }: Extract<ShownItem, { kind: 'fluid' }>,
  { now, columns }: { now: number; columns: number },
): LevelChart | null {
  const [first] = levels?.line ?? [];
  if (!levels || !first) return null;
  const room = columns - WORD_COLUMNS;
  const days = Math.max(LEAST_DAYS, Math.floor(room / DAY_COLUMNS));
  const lastRead = msOf(levels.readings.at(-1) ?? first);
  const job = levels.done.findLast(({ kind }) => kind === 'job');
  const beforeJob = job ? msOf(job) - DAYS_BEFORE_JOB * DAY_MS : now;
  const since = Math.min(
    now - days * DAY_MS,
    lastRead - LEAST_DAYS * DAY_MS,
    beforeJob < now - room * DAY_MS ? now : beforeJob,
  );
  const from = Math.max(msOf(first), since);
  const seen = <T extends { at: string }>(list: readonly T[]) => list.filter((one) => msOf(one) >= from);
  return {
    levels: {
      readings: seen(levels.readings),
      done: seen(levels.done),
      line: seen(levels.line),
      ahead: levels.ahead,
    },
    marks: [
      { value: full, word: 'full' },
      ...(reserve === low ? [] : [{ value: reserve, word: 'keep' }]),
      { value: low, word: 'low' },
    ],
    from,
    now,
  };
}

const LETTERS = { on: 'o', below: 'v', above: '^', topup: '+', change: 'x', job: 'j' } as const;
const LETTER_WORDS: readonly (readonly [keyof typeof LETTERS, string])[] = [
  ['on', 'read'],
  ['below', 'nothing on the stick'],
  ['above', 'over the full mark'],
  ['topup', 'topped up'],
  ['change', 'drained and refilled'],
  ['job', 'job'],
];

/** The chart as lines of `columns`: the picture in `rows`, what was done under it, then the days. */
export function levelLines(
  { levels, marks, from, now }: LevelChart,
  { zone, columns, rows }: { zone: string; columns: number; rows: number },
): string[] {
  const { readings, done, line, ahead } = levels;
  const way = [...line, ...ahead].map((point) => ({ ...point, at: msOf(point) }));
  const to = Math.max(way.at(-1)!.at, from + DAY_MS);
  const values = [...readings, ...marks]
    .map(({ value }) => value)
    .concat(way.flatMap(({ p10, p90 }) => [p10, p90]));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = (most - least || Math.abs(most) || 1) * 0.04;
  return plotLines(
    {
      points: way.map(({ at, mean }) => ({ at, value: mean })),
      band: way.map(({ at, p10, p90 }) => ({ at, low: p10, high: p90 })),
      letters: readings.map((reading) => ({
        at: msOf(reading),
        value: reading.value,
        letter: LETTERS[reading.off],
      })),
      // Jobs last: where a top-up went with one, the job is what is to be seen.
      below: done
        .toSorted((a, b) => Number(a.kind === 'job') - Number(b.kind === 'job'))
        .map((deed) => ({ at: msOf(deed), letter: LETTERS[deed.kind] })),
      pointed: now,
      from,
      to,
      least: least - room,
      most: most + room,
      levels: marks,
      marks: marks.map(({ value }) => value),
      ticks: timeTicks(from, to, zone, Math.floor(columns / TICK_COLUMNS)),
      label: (value) => amountWords(value, 'L'),
      joined: 'straight',
    },
    columns,
    rows,
  );
}

/** What the letters and dots of the chart mean. */
export function levelsLegend({ levels: { readings, done, ahead } }: LevelChart): string {
  const met = new Set<string>([...readings.map(({ off }) => off), ...done.map(({ kind }) => kind)]);
  return [
    ...LETTER_WORDS.filter(([what]) => met.has(what)).map(([what, words]) => `${LETTERS[what]} ${words}`),
    ahead.length === 0 ? '↑ now' : '↑ now, then on to the end of the stretch',
    'dots: 8 in 10 lie between',
  ].join('; ');
}

/** The same as one sentence. */
export function levelsSentence({ levels, marks, from, now }: LevelChart, zone: string): string {
  const { readings, done, line, ahead } = levels;
  const count = (kind: (typeof done)[number]['kind']) => done.filter((deed) => deed.kind === kind).length;
  const jobs = done.filter(({ kind }) => kind === 'job').map((job) => dayWords(msOf(job), zone));
  const deeds = [
    ...(count('topup') > 0 ? [counted(count('topup'), 'top-up', 'top-ups')] : []),
    ...(count('change') > 0 ? [counted(count('change'), 'change', 'changes')] : []),
    ...(jobs.length > 0 ? [`${jobs.length === 1 ? 'a job' : 'jobs'} on ${jobs.join(', ')}`] : []),
  ];
  const last = line.at(-1);
  const end = ahead.at(-1);
  const ways = [
    ...(last ? [`${rangeWords(last)} now`] : []),
    ...(end
      ? [`${rangeWords(end)} at the end of the stretch, ${momentWords(msOf(end), zone, now)}, leaving now`]
      : []),
  ].join(', ');
  return `${[
    `${counted(readings.length, 'reading', 'readings')} since ${dayWords(from, zone)}${deeds.length === 0 ? '' : `, ${deeds.join(', ')}`}`,
    `by the line through them ${ways}, 8 times in 10`,
    marks.map(({ value, word }) => `${word} ${amountWords(value, 'L')}`).join(', '),
  ].join('; ')}.`;
}

function rangeWords({ mean, p10, p90 }: LevelPointDocument): string {
  return `${amountWords(mean, 'L')} (${amountWords(p10, 'L')} to ${amountWords(p90, 'L')})`;
}

function msOf({ at }: { readonly at: string }): number {
  return Date.parse(at);
}
