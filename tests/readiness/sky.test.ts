import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { skyAlong } from '../../source/readiness/sky.ts';
import { aBoat } from '../helpers/a-boat.ts';

const HOUR_MS = 3_600_000;

function skyAt(latitude: number, at: string, hours: number) {
  const boat = aBoat({
    anchorages: [{ id: 'here', name: 'Here', at: [latitude, 0] }],
    anchorage: 'here',
  });
  const from = Date.parse(at);
  const to = from + hours * HOUR_MS;
  return { from, to, sky: skyAlong(boat, conditionAt(boat, [], from), from, to)! };
}

describe('the nights along the departures', () => {
  it('on the equator at the equinox they are half of the time, one a day', () => {
    const { sky } = skyAt(0, '2026-03-20T12:00:00Z', 72);
    expect(sky.sun).toBe('rises and sets');
    expect(sky.nights).toHaveLength(3);
    const dark = sky.nights.reduce((sum, { from, to }) => sum + (to - from) / HOUR_MS, 0);
    expect(dark).toBeGreaterThan(34.5);
    expect(dark).toBeLessThan(36);
  });

  it('are cut to the hours asked for, whether these begin by day or by night', () => {
    for (const at of ['2026-03-20T12:00:00Z', '2026-03-20T23:00:00Z']) {
      const { sky, from, to } = skyAt(45, at, 40);
      expect(sky.nights.length).toBeGreaterThan(0);
      for (const night of sky.nights) {
        expect(night.from).toBeGreaterThanOrEqual(from);
        expect(night.to).toBeLessThanOrEqual(to);
        expect(night.to).toBeGreaterThan(night.from);
      }
    }
  });

  it('in the polar summer there are none, in the polar winter there is nothing else', () => {
    const summer = skyAt(75, '2026-06-21T00:00:00Z', 100);
    expect(summer.sky).toEqual({ nights: [], sun: 'does not set' });
    const winter = skyAt(75, '2026-12-21T00:00:00Z', 100);
    expect(winter.sky).toEqual({
      nights: [{ from: winter.from, to: winter.to }],
      sun: 'does not rise',
    });
  });
});
