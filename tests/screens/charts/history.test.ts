import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../../source/condition/condition-at.ts';
import { historyLines, historyOf, historySentence } from '../../../source/screens/charts/history.ts';
import { aBoat } from '../../helpers/a-boat.ts';
import { AT, aDocument, aLoaded } from '../../helpers/a-document.ts';
import { anEntry } from '../../helpers/an-entry.ts';

const { condition } = aLoaded();
const itemOf = (id: string) => aDocument().items.find((item) => item.id === id)!;
const history = (id: string) => historyOf(itemOf(id), condition);
const size = { now: Date.parse(AT), zone: 'UTC', columns: 80, rows: 8 };

describe('the history of an item', () => {
  it('of an anode is the metal left', () => {
    expect(historySentence(history('pencil')!, 'UTC')).toContain(
      'from 70 % on 5 Dec 2025 to 40 % on 29 Jan 2026',
    );
  });

  it('of an anode stands at its new size from when it was fitted, and does not grow towards it', () => {
    const renewed = [
      anEntry('renew', { anode: 'pencil' }, '2026-01-01T08:00:00Z'),
      anEntry('anode', { anode: 'pencil', share: 0.4 }, '2026-01-20T08:00:00Z'),
      anEntry('renew', { anode: 'pencil' }, '2026-01-20T09:00:00Z'),
    ];
    const metal = historyOf(itemOf('pencil'), conditionAt(aBoat(), renewed, Date.parse(AT)))!;
    expect(metal.points.map(({ value }) => value)).toEqual([0.4]);
    expect(metal.besides.map(({ value }) => value)).toEqual([1, 1, 0.4]);
    const [top] = historyLines(metal, size)!;
    expect(top!.match(/[⠁-⣿]/gu)!.length).toBeLessThan(20);
  });

  it('of a store is the count, in steps', () => {
    const counts = history('impellers')!;
    expect(counts.joined).toBe('stepped');
    expect(counts.points.map(({ value }) => value)).toEqual([2, 1]);
  });

  it('what was never looked at says so and has no chart', () => {
    const bare = historyOf(itemOf('pencil'), conditionAt(aBoat(), [], Date.parse(AT)))!;
    expect(historyLines(bare, size)).toBeNull();
    expect(historySentence(bare, 'UTC')).toBe('No metal left yet.');
  });

  it('what has no figure has no history to draw', () => {
    expect(history('flares')).toBeNull();
    expect(history('fire-blanket')).toBeNull();
  });
});
