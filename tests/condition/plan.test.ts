import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const on = (day: number) => Date.UTC(2026, 0, 1) + day * 86_400_000;
const back = { ...sandpiper.passages[0]!, id: 'back-home', name: 'Back home', reserveDays: 1 };
const boat = aBoat({ passages: [...sandpiper.passages, back] });
const plan = (day: number, passage: string, fields: object = {}) =>
  anEntry('plan', { passage, ...fields }, on(day));

function planned(entries: readonly Entry[], aboard = boat) {
  const { passage, crew, reserveDays } = conditionAt(aboard, entries, on(100));
  return [passage?.id, crew, reserveDays];
}

describe('the passage planned', () => {
  it("is the boat file's while the log has none", () => {
    expect(planned([])).toEqual(['to-otter-cay', 2, 2]);
  });

  it('is the last plan, with its own crew and days in reserve where it gives them', () => {
    expect(planned([plan(1, 'back-home')])).toEqual(['back-home', 2, 1]);
    expect(planned([plan(1, 'back-home', { crew: 1, reserveDays: 5 })])).toEqual(['back-home', 1, 5]);
    expect(planned([plan(1, 'back-home', { crew: 1 }), plan(2, 'to-otter-cay')])).toEqual([
      'to-otter-cay',
      2,
      2,
    ]);
  });

  it('is none where neither names one', () => {
    expect(planned([], aBoat({ passage: undefined }))).toEqual([undefined, 2, 0]);
  });

  it('stays what it was when a plan names a passage the boat does not have', () => {
    const entries = [plan(1, 'back-home'), plan(2, 'bakc-home')];
    expect(planned(entries)).toEqual(['back-home', 2, 1]);
    expect(conditionAt(boat, entries, on(100)).troubles).toMatchObject([
      { kind: 'unknown item', item: 'bakc-home', near: 'back-home' },
    ]);
  });
});
