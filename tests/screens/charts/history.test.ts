import { describe, expect, it } from 'vitest';
import { historyLines, historyOf, historySentence } from '../../../source/screens/charts/history.ts';
import { AT, aDocument, aLoaded } from '../../helpers/a-document.ts';

const { condition } = aLoaded();
const itemOf = (id: string) => aDocument().items.find((item) => item.id === id)!;
const history = (id: string) => historyOf(itemOf(id), condition);
const size = { now: Date.parse(AT), zone: 'UTC', columns: 80, rows: 8 };

describe('the history of an item', () => {
  it('of a fluid is its readings between its marks', () => {
    const levels = history('gear-oil')!;
    expect(levels.points).toHaveLength(20);
    const chart = historyLines(levels, size)!;
    expect(chart).toHaveLength(9);
    expect(chart.join('\n')).toMatch(/1\.3 L .* full/u);
    expect(chart.join('\n')).toMatch(/1\.1 L .* low/u);
    expect(historySentence(levels, 'UTC')).toBe(
      '20 readings of the level, from 1.28 L on 14 Jan 2026 to 1.19 L on 2 Feb 2026; between 1.19 L and 1.28 L; full 1.3 L, low 1.1 L.',
    );
  });

  it('of an anode is the metal left', () => {
    expect(historySentence(history('pencil')!, 'UTC')).toContain(
      'from 70 % on 5 Dec 2025 to 40 % on 29 Jan 2026',
    );
  });

  it('of a store is the count, in steps', () => {
    const counts = history('impellers')!;
    expect(counts.joined).toBe('stepped');
    expect(counts.points.map(({ value }) => value)).toEqual([2, 1]);
  });

  it('what was never read says so and has no chart', () => {
    const coolant = history('coolant')!;
    expect(historyLines(coolant, size)).toBeNull();
    expect(historySentence(coolant, 'UTC')).toBe('No level yet.');
  });

  it('what has no figure has no history to draw', () => {
    expect(history('flares')).toBeNull();
    expect(history('fire-blanket')).toBeNull();
  });
});
