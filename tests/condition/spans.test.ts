import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const at = (hour: number) => Date.UTC(2026, 0, 1, hour);
const left = (hour: number) => anEntry('left', {}, at(hour));
const arrived = (hour: number, anchorage?: string) =>
  anEntry('arrived', { ...(anchorage && { anchorage }) }, at(hour));

const now = (entries: readonly Entry[], boat = aBoat()) => conditionAt(boat, entries, at(100));

describe('where she is', () => {
  it('is where the boat file says while the log says nothing', () => {
    expect(now([])).toMatchObject({ underWay: null, anchorage: 'heron-bight', arrivedAt: null, spans: [] });
    expect(now([], aBoat({ anchorage: undefined })).anchorage).toBeNull();
  });

  it('is under way from leaving on, lying nowhere', () => {
    expect(now([left(1)])).toMatchObject({
      underWay: { since: at(1) },
      anchorage: null,
      arrivedAt: null,
      spans: [{ from: at(1), to: null }],
    });
  });

  it('is the anchorage last arrived at, or none named', () => {
    expect(now([left(1), arrived(9, 'heron-bight')])).toMatchObject({
      anchorage: 'heron-bight',
      arrivedAt: at(9),
    });
    expect(now([left(1), arrived(9)])).toMatchObject({ anchorage: null, arrivedAt: at(9), underWay: null });
  });

  it('names an anchorage the boat does not have as a trouble, and lies at none', () => {
    const lying = now([left(1), arrived(9, 'heron-bigth')]);
    expect(lying.anchorage).toBeNull();
    expect(lying.troubles).toMatchObject([
      { kind: 'unknown item', item: 'heron-bigth', near: 'heron-bight' },
    ]);
  });
});

describe('time under way', () => {
  it('runs from each leaving to the next arrival', () => {
    expect(now([left(1), arrived(9), left(20), arrived(30)]).spans).toEqual([
      { from: at(1), to: at(9) },
      { from: at(20), to: at(30) },
    ]);
  });

  it('is not begun twice by a second leaving, nor ended by an arrival while lying', () => {
    expect(now([arrived(0), left(1), left(2), arrived(9), arrived(12)]).spans).toEqual([
      { from: at(1), to: at(9) },
    ]);
    expect(now([left(1), arrived(9), arrived(12)]).arrivedAt).toBe(at(12));
  });
});
