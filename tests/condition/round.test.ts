import { describe, expect, it } from 'vitest';
import type { Boat } from '../../source/boat/boat.ts';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { roundAt } from '../../source/condition/round.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const NOW = Date.UTC(2026, 1, 3, 7, 40);
const DAY = 86_400_000;

function due(entries: readonly Entry[], boat: Boat = aBoat(), at = NOW) {
  const round = roundAt(boat, conditionAt(boat, entries, at));
  return Object.values(round)
    .flat()
    .filter((look) => look.due)
    .map(({ id }) => id);
}

describe('the round', () => {
  it('has three passes in walking order: the meter, then as in the boat file', () => {
    const boat = aBoat({
      fluids: [...sandpiper.fluids, { ...sandpiper.fluids[0]!, id: 'hot-oil', how: 'running-hot' }],
      checks: [...sandpiper.checks, { id: 'charging', name: 'Charging', when: 'running' }],
    });
    const { stopped, running, leaving } = roundAt(boat, conditionAt(boat, [], NOW));
    expect(stopped.map(({ id }) => id)).toEqual([
      'main',
      'gear-oil',
      'fuel',
      'water',
      'pencil',
      'house-bank',
    ]);
    expect(running.map(({ id }) => id)).toEqual(['hot-oil', 'charging']);
    expect(leaving.map(({ id }) => id)).toEqual(['raw-water']);
  });

  it('wants everything that was never looked at', () => {
    expect(due([])).toEqual(['main', 'gear-oil', 'fuel', 'water', 'pencil', 'house-bank', 'raw-water']);
  });

  it.each([
    [2, false],
    [2.4, false],
    [2.6, true],
    [3, true],
    [30, true],
  ])(
    'wants a fluid of every 3 days again when that falls due within the half day: %s days on',
    (days, wanted) => {
      const dip = anEntry('dip', { fluid: 'gear-oil', share: 1 }, NOW - days * DAY);
      expect(due([dip]).includes('gear-oil')).toBe(wanted);
    },
  );

  it('wants the meter each round, and what has no interval once', () => {
    const hours = anEntry('hours', { engine: 'main', reading: 1000 }, NOW - 1000);
    expect(due([hours])).toContain('main');
    const boat = aBoat({ checks: [{ id: 'bow', name: 'Bow' }] });
    expect(due([], boat)).toContain('bow');
    expect(due([anEntry('check', { check: 'bow', ok: true }, NOW - 900 * DAY)], boat)).not.toContain('bow');
  });

  it('wants a look before leaving anew after each arrival, and after work that unsettles it', () => {
    const look = anEntry('check', { check: 'raw-water', ok: true }, NOW - 3 * DAY);
    expect(due([look])).not.toContain('raw-water');
    expect(due([look, anEntry('arrived', {}, NOW - DAY)])).toContain('raw-water');
    expect(due([look, anEntry('renew', { anode: 'pencil' }, NOW - DAY)])).toContain('raw-water');
  });
});
