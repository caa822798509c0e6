// Classes of leaks from the manuals of army equipment, and the size of drops; the source of each stands beside it.
import { describe, expect, test } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { leastLossLPerDay } from '../../source/inference/leak-class.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { judged } from '../helpers/beliefs.ts';
import { expectNear } from '../helpers/published.ts';

const at = Date.parse('2026-03-01T08:00:00Z');
const HOUR = 3_600_000;

/** Gear oil read full an hour ago, and so seen to leak. */
function gearOil(told: { class: 'wet' | 'drops' | 'falls'; dropsPerMinute?: number }) {
  const entries = [
    anEntry('hours', { engine: 'main', reading: 1000 }, at - HOUR),
    anEntry('dip', { fluid: 'gear-oil', share: 1 }, at - HOUR),
    anEntry('count', { spare: 'gear-oil-can', count: 3 }, at - HOUR),
    anEntry('leak', { item: 'gear-oil', ...told }, at - HOUR),
  ];
  const boat = aBoat();
  const { events } = conditionAt(boat, entries, at).fluids.get('gear-oil')!;
  const item = judged({ boat, entries, at }).items.find(({ id }) => id === 'gear-oil')!;
  return { item, least: leastLossLPerDay(boat.fluids[0]!, events, at) };
}

describe('leak classes (US Army TM 5-5420-227-24; TM 9-6115-604-12)', () => {
  test('I, wet but no drop, and II, a drop forms but none falls: may be run, with the level checked', () => {
    expect(gearOil({ class: 'wet' }).item.state).not.toBe('unfit');
    const { item } = gearOil({ class: 'drops' });
    expect([item.state, item.why.map(({ why }) => why).includes('leak')]).toEqual(['watch', true]);
  });

  test('III, drops fall: to be mended first, unless what is aboard covers twice what they take', () => {
    expect(gearOil({ class: 'falls', dropsPerMinute: 1 }).item.state).toBe('watch');
    expect(gearOil({ class: 'falls', dropsPerMinute: 12 }).item.state).toBe('unfit');
  });
});

describe('drops', () => {
  test('one in 12 seconds, of 0.05 mL, is 360 mL a day (an owner, forums.sailboatowners.com 1249930152)', () => {
    expectNear(1000 * gearOil({ class: 'falls', dropsPerMinute: 5 }).least, 360, { absolute: 0.5 });
  });

  test('6 a minute take at least the 118 mL in 10 hours that drops of 0.0328 mL would (Hydraulics magazine, 86167), and at most 0.05/0.0328 times that', () => {
    const tenHours = (1000 * gearOil({ class: 'falls', dropsPerMinute: 6 }).least * 10) / 24;
    expect(tenHours).toBeGreaterThan(118);
    expect(tenHours).toBeLessThan((118 * 0.05) / 0.0327);
  });
});
