import { describe, expect, it } from 'vitest';
import { asciiOf } from '../../../source/screens/ascii.ts';
import {
  levelChart,
  levelLines,
  levelsLegend,
  levelsSentence,
} from '../../../source/screens/charts/levels.ts';
import { widthOf } from '../../../source/screens/width.ts';
import type { LevelsDocument } from '../../../source/words/levels-document.ts';
import { aFluid } from '../../helpers/a-document.ts';

const DAY = 86_400_000;
const NOW = Date.parse('2026-02-03T07:40:00Z');
const on = (day: number) => new Date(NOW + day * DAY).toISOString();
const point = (day: number, mean: number, apart: number) => ({
  at: on(day),
  mean,
  p10: mean - apart,
  p90: mean + apart,
});
/** Forty days to now: half a litre down to the low mark, topped up ten days ago by a job. */
const days = Array.from({ length: 41 }, (_, i) => i - 40);
const levelOn = (day: number) => 1.3 - (day < -10 ? 0.005 * (day + 40) : 0.004 * (day + 10));
const levels: LevelsDocument = {
  readings: days.map((day) => ({ at: on(day), value: levelOn(day), off: day === -11 ? 'below' : 'on' })),
  done: [
    { at: on(-10), kind: 'job' },
    { at: on(-10), kind: 'topup', amount: 0.15 },
    { at: on(-30), kind: 'topup', amount: 0.01 },
  ],
  line: days.map((day) => point(day, levelOn(day), 0.01)),
  ahead: [point(0, levelOn(0), 0.01), point(3, 1.24, 0.04)],
};
const fluid = (given: Partial<LevelsDocument> = {}) =>
  aFluid({ id: 'oil', name: 'Oil', low: 1.1, full: 1.3, reserve: 1.1, levels: { ...levels, ...given } });
const size = { zone: 'UTC', columns: 100, rows: 10 };
const chartOf = (columns = 100, given: Partial<LevelsDocument> = {}) =>
  levelChart(fluid(given), { now: NOW, columns })!;

describe('the chart of a level', () => {
  it('has its readings as letters, its marks, what was done under it, and goes on past now to the end of the stretch', () => {
    const lines = levelLines(chartOf(), size);
    expect(lines).toHaveLength(12);
    for (const one of lines) expect(widthOf(one)).toBe(100);
    const picture = lines.slice(0, 10).join('\n');
    expect(picture.match(/o/gu)!.length).toBeGreaterThan(30);
    expect(picture.match(/v/gu)).toHaveLength(1);
    expect(picture).toMatch(/1\.3 L .* full/u);
    expect(picture).toMatch(/1\.1 L .* low/u);
    const under = lines[10]!;
    expect(under.match(/[+j↑]/gu)!.join('')).toBe('+j↑');
    const now = under.indexOf('↑');
    const beyond = lines.slice(0, 10).map((one) => one.slice(now + 1, 95));
    expect(beyond.join('')).toMatch(/[⠁-⣿]/u);
    expect(beyond.join('')).not.toContain('o');
  });

  it('has dots further apart the less is known, and a line between them', () => {
    const rowsOf = (apart: number) => {
      const line = days.map((day) => point(day, 1.2, apart));
      const only = chartOf(100, { line, readings: [], ahead: [], done: [] });
      const lines = levelLines(
        {
          ...only,
          marks: [
            { value: 1.4, word: 'full' },
            { value: 1, word: 'low' },
          ],
        },
        size,
      );
      return lines.slice(1, 9).filter((one) => /[⠁-⣿]/u.test(one)).length;
    };
    expect(rowsOf(0)).toBe(1);
    expect(rowsOf(0.1)).toBeGreaterThanOrEqual(3);
  });

  it('shows fewer days where there is less room, but never less than a fortnight', () => {
    const ages = [120, 80, 40, 20].map((columns) => (NOW - chartOf(columns, { done: [] }).from) / DAY);
    expect(ages[0]).toBe(40);
    expect(ages[1]).toBe(34);
    expect(ages[2]).toBe(14);
    expect(ages[3]).toBe(14);
  });

  it('shows the last job with a week before it where a day has a column for it', () => {
    expect((NOW - chartOf(40).from) / DAY).toBe(17);
    const long = { done: [{ at: on(-30), kind: 'job' as const }] };
    expect((NOW - chartOf(40, long).from) / DAY).toBe(14);
  });

  it('says the same in one sentence', () => {
    expect(levelsSentence(chartOf(), 'UTC')).toBe(
      '41 readings since 25 Dec 2025, 2 top-ups, a job on 24 Jan 2026; by the line through them 1.26 L (1.25 L to 1.27 L) now, 1.24 L (1.2 L to 1.28 L) at the end of the stretch, Fri 6 Feb 07:40, leaving now, 8 times in 10; full 1.3 L, low 1.1 L.',
    );
  });

  it('tells what its letters mean, and only those there are', () => {
    expect(levelsLegend(chartOf())).toBe(
      'o read; v nothing on the stick; + topped up; j job; ↑ now, then on to the end of the stretch; dots: 8 in 10 lie between',
    );
    expect(levelsLegend(chartOf(100, { done: [], ahead: [] }))).toBe(
      'o read; v nothing on the stick; ↑ now; dots: 8 in 10 lie between',
    );
  });

  it('keeps its letters, line and marks without UTF-8', () => {
    const plain = levelLines(chartOf(), size).map((one) => asciiOf(one, widthOf));
    expect(plain.join('')).toMatch(/^[ -~]+$/u);
    expect(plain.join('\n')).toMatch(/o.*full|full/u);
    expect(plain[10]).toContain('^');
  });

  it('is not drawn of what was never read', () => {
    expect(levelChart(aFluid({ id: 'oil', name: 'Oil' }), { now: NOW, columns: 100 })).toBeNull();
  });

  it('of a single reading is a chart all the same', () => {
    const one = { readings: levels.readings.slice(-1), done: [], line: levels.line.slice(-1) };
    const lines = levelLines(chartOf(100, one), size);
    expect(lines.join('')).toContain('o');
    expect(levelsSentence(chartOf(100, one), 'UTC')).toMatch(/^1 reading since 3 Feb 2026; by the line/u);
  });
});
