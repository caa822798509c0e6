import { describe, expect, it } from 'vitest';
import { curveLines, curveSentence } from '../../../source/screens/charts/curve.ts';
import { aDocument } from '../../helpers/a-document.ts';

const alone = aDocument({
  curve: aDocument().curve.map((point) => ({ ...point, score: null, weather: null })),
});

describe('the curve of departures', () => {
  it('goes from now on, with the line to go from', () => {
    const lines = curveLines(aDocument(), 'UTC', 80, 6)!;
    expect(lines).toHaveLength(7);
    expect(lines.at(-1)).toMatch(/\|now +\|Wed +\|Thu +\|Fri/u);
    expect(lines.join('\n')).toContain('go from 85');
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
    expect(curveSentence(one, 'UTC')).toContain('the same at every hour');
    expect(curveSentence(aDocument({ curve: [] }), 'UTC')).toBe('No departures were looked at.');
  });
});
