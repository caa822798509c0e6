import { describe, expect, it } from 'vitest';
import { curveLines, curveSentence, skySentence } from '../../../source/screens/charts/curve.ts';
import { AT, aDocument } from '../../helpers/a-document.ts';

const alone = aDocument({
  curve: aDocument().curve.map((point) => ({ ...point, score: null, weather: null })),
});

describe('the curve of departures', () => {
  it('goes from now on, with the line to go from', () => {
    const lines = curveLines(aDocument(), 'UTC', 80, 6)!;
    expect(lines).toHaveLength(8);
    expect(lines.at(-1)).toMatch(/\|now +\|Wed +\|Thu +\|Fri/u);
    expect(lines.join('\n')).toContain('go from 85');
  });

  it('shades the nights, and marks the windows under the hours they last', () => {
    const lines = curveLines(aDocument(), 'UTC', 110, 6)!;
    const marks = lines.at(-2)!;
    expect(marks).toMatch(/^ +\|─* window ─*\| *$/u);
    expect(lines.at(-1)!.trimEnd().endsWith('· night')).toBe(true);
    const columns = [...lines[1]!].flatMap((cell, column) => (cell === '·' ? [column] : []));
    const thursday = lines.at(-1)!.indexOf('|Thu');
    const friday = lines.at(-1)!.indexOf('|Fri');
    const perHour = (friday - thursday) / 24;
    const hourOf = (column: number) => ((column - thursday) / perHour + 48) % 24;
    expect(columns.length).toBeGreaterThan(10);
    for (const column of columns) expect(hourOf(column) < 8.5 || hourOf(column) > 16).toBe(true);
    const opens = (marks.indexOf('|') - thursday) / perHour;
    const closes = (marks.lastIndexOf('|') - thursday) / perHour;
    expect(Math.abs(opens - 6)).toBeLessThan(1);
    expect(Math.abs(closes - 15)).toBeLessThan(1);
  });

  it('a boat that is not ready is shown when the weather alone would do', () => {
    const weatherAlone = { at: '2026-02-04T00:00:00Z', until: '2026-02-05T15:00:00Z', startWorkBy: null };
    const lines = curveLines(aDocument({ verdict: 'not ready', weatherAlone }), 'UTC', 110, 6)!;
    expect(lines.at(-2)).toMatch(/\|─+ weather alone ─+\|/u);
  });

  it('polar day and night are said', () => {
    const up = aDocument({ sky: { nights: [], sun: 'does not set' } });
    expect(curveLines(up, 'UTC', 80, 6)!.at(-1)).toContain('no night');
    expect(skySentence(up, 'UTC')).toBe('The sun does not set here now.');
    const all = { from: AT, until: '2026-02-07T07:40:00Z' };
    const down = aDocument({ sky: { nights: [all], sun: 'does not rise' } });
    expect(curveLines(down, 'UTC', 80, 6)!.at(-1)).toContain('· no day');
    expect(skySentence(down, 'UTC')).toBe('The sun does not rise here now.');
    expect(skySentence(aDocument(), 'UTC')).toBe('Dark from Tue 17:30 to Wed 07:00.');
    expect(skySentence(aDocument({ sky: null }), 'UTC')).toBe('');
  });

  it('without a forecast it is the boat alone, against her own threshold', () => {
    expect(curveLines(alone, 'UTC', 80, 6)!.join('\n')).toContain('fit from 95');
    expect(curveSentence(alone, 'UTC')).toContain('The boat alone, leaving now: 97 in 100');
  });

  it('says the same in a sentence', () => {
    expect(curveSentence(aDocument(), 'UTC')).toBe(
      'Leaving now 10 in 100; best 92 in 100 Thu 09:40, worst 10 in 100 Tue 07:40.',
    );
  });

  it('one departure is no curve, none is said to be none', () => {
    const one = aDocument({ curve: aDocument().curve.slice(0, 1) });
    expect(curveLines(one, 'UTC', 80, 6)).toBeNull();
    expect(curveSentence(one, 'UTC')).toBe('Leaving now 10 in 100.');
    expect(curveSentence(aDocument({ curve: [] }), 'UTC')).toBe('No departures were looked at.');
  });
});
