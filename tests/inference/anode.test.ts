import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { believeAnode } from '../../source/inference/anode.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const DAY = 86_400_000;
const start = Date.parse('2026-01-01T08:00:00Z');
const on = (day: number) => start + day * DAY;
const renew = (day: number) => anEntry('renew', { anode: 'pencil' }, on(day));
const look = (day: number, share: number, more: object = {}) =>
  anEntry('anode', { anode: 'pencil', share, ...more }, on(day));
const weighed = (day: number, share: number) =>
  anEntry('anode', { anode: 'pencil', massKg: 0.05 * share }, on(day));

/** A pencil of 50 g that usually lasts 120 days. */
function believed(entries: readonly Entry[], day: number, fields: object = {}) {
  const boat = aBoat({
    anodes: [{ ...sandpiper.anodes[0]!, massKg: 0.05, usualLifeDays: 120, ...fields }],
  });
  return believeAnode(boat.anodes[0]!, conditionAt(boat, entries, on(day)));
}

describe('an anode', () => {
  it('tells when it reaches its limit, with a range about it that narrows as it is looked at', () => {
    const one = believed([renew(0), weighed(30, 0.85)], 30)!;
    const three = believed([renew(0), weighed(30, 0.85), weighed(60, 0.7), weighed(90, 0.55)], 90)!;
    const width = ({ reachesLimit: { p10, p90 } }: typeof one) => p90 - p10;
    const straight = on((1 - 1 / 3) / 0.005);
    for (const { reachesLimit } of [one, three]) {
      expect(reachesLimit.p10).toBeLessThan(straight);
      expect(reachesLimit.p90).toBeGreaterThan(straight);
    }
    expect(width(three)).toBeLessThan(width(one) / 2);
  });

  it('learns of its place from those before it: a new one is believed to go as they did', () => {
    const fast = [0, 40, 80].flatMap((day) => [renew(day), weighed(day + 35, 0.4)]);
    const anew = believed([...fast, renew(120)], 120)!;
    expect(anew.wear.mean).toBeGreaterThan(0.012);
    expect(believed([renew(0)], 0)!.wear.mean).toBeLessThan(0.007);
  });

  it('that goes half as fast again as those before it is told so; one that goes as they did is not', () => {
    const earlier = [renew(0), weighed(100, 0.4)];
    const fast = believed([...earlier, renew(101), weighed(116, 0.55), weighed(126, 0.4)], 127)!;
    const usual = believed([...earlier, renew(101), weighed(126, 0.85)], 127)!;
    expect(fast.wearsFast).toBeGreaterThan(0.9);
    expect(usual.wearsFast).toBeLessThan(0.5);
    expect(believed([renew(0), weighed(20, 0.4)], 20)!.wearsFast).toBeNull();
  });

  it('that does not wear is told so from 30 days on, sooner by weight than by eye', () => {
    expect(believed([renew(0), weighed(31, 1)], 32)!.noWearDays).toBeCloseTo(31, 6);
    expect(believed([renew(0), weighed(29, 1)], 60)!.noWearDays).toBeNull();
    expect(believed([renew(0), look(31, 1)], 32)!.noWearDays).toBeNull();
    expect(believed([renew(0), look(60, 1)], 61)!.noWearDays).toBeCloseTo(60, 6);
    expect(believed([renew(0), look(60, 0.8)], 61)!.noWearDays).toBeNull();
  });

  it('that flakes when tapped is told so, until it is renewed', () => {
    const flaking = [renew(0), look(40, 0.7, { flakes: true }), look(41, 0.7)];
    expect(believed(flaking, 42)!.flakes).toBe(true);
    expect(believed([...flaking, renew(43)], 44)!.flakes).toBe(false);
  });

  it('of zinc in fresh water is of the wrong alloy, in salt it is not', () => {
    expect(believed([renew(0)], 1, { metal: 'zinc', water: 'fresh' })!.wrongAlloy).toBe(true);
    expect(believed([renew(0)], 1, { metal: 'zinc', water: 'salt' })!.wrongAlloy).toBe(false);
  });

  it('implies a mean current by the mass it loses, and none where its mass is not known', () => {
    const belief = believed([renew(0), weighed(30, 0.85), weighed(60, 0.7)], 60)!;
    // 50 g x 0.005 a day x 780 Ah/kg in 24 h.
    expect(belief.currentA! / ((0.05 * 0.005 * 780) / 24)).toBeCloseTo(1, 1);
    expect(believed([renew(0)], 1, { massKg: undefined })!.currentA).toBeNull();
  });

  it('never seen is not believed to be anything', () => {
    expect(believed([], 10)).toBeNull();
  });
});
