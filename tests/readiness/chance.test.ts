import { describe, expect, it } from 'vitest';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { judged } from '../helpers/beliefs.ts';

const at = Date.parse('2026-03-01T08:00:00Z');
const boat = aBoat();
const entries = [
  anEntry('hours', { engine: 'main', reading: 1000 }, at - 40 * 86_400_000),
  anEntry('hours', { engine: 'main', reading: 1031 }, at - 3_600_000),
  anEntry('dip', { fluid: 'gear-oil', level: 1.2 }, at - 3_600_000),
  anEntry('dip', { fluid: 'fuel', level: 66 }, at - 3_600_000),
  anEntry('dip', { fluid: 'water', level: 70 }, at - 3_600_000),
  anEntry('renew', { anode: 'pencil' }, at - 74 * 86_400_000),
  anEntry('count', { spare: 'impellers', count: 0 }, at - 3_600_000),
  anEntry('count', { spare: 'fuses', count: 0 }, at - 3_600_000),
  anEntry('count', { spare: 'gear-oil-can', count: 0.05 }, at - 3_600_000),
];

describe('chance is seeded and fair', () => {
  const usual = judged({ boat, entries, at });
  const other = judged({ boat, entries, at, seed: 2 });
  const many = judged({ boat, entries, at, simulations: 65_536 });

  it('gives the same answer twice', () => {
    expect(JSON.stringify(judged({ boat, entries, at }))).toBe(JSON.stringify(usual));
  });

  it('moves no chance by 4.5 combined standard errors under another seed, or with 16 times the passages', () => {
    for (const [place, item] of usual.items.entries())
      for (const [against, n] of [
        [other, other.simulations],
        [many, many.simulations],
      ] as const) {
        const that = against.items[place]!;
        const variance = (chance: number, count: number) => {
          const p = (chance * count + 1) / (count + 2);
          return (p * (1 - p)) / count;
        };
        const error = Math.sqrt(variance(item.chance, usual.simulations) + variance(that.chance, n));
        expect(Math.abs(item.chance - that.chance), item.id).toBeLessThan(4.5 * error);
      }
    expect(Math.abs(usual.score.boat - other.score.boat)).toBeLessThan(
      4.5 * Math.hypot(usual.score.error, other.score.error),
    );
    expect(usual.items.some(({ chance }) => chance > 0.05 && chance < 0.95)).toBe(true);
  });

  it('leaves every other item as it was when an item is added', () => {
    const more = aBoat({
      dated: [...boat.dated, { id: 'raft', name: 'Raft service', expires: '2026-03-02' }],
      spares: [...boat.spares, { id: 'hoses', name: 'Hoses', expected: { perEngineHour: 0.01 } }],
    });
    const answer = judged({ boat: more, entries, at });
    for (const item of usual.items)
      expect(answer.items.find(({ id }) => id === item.id)!.chance, item.id).toBe(item.chance);
  });

  it('never finds the boat readier for leaving later, nor readier than her worst vital item', () => {
    for (const [hour, { boat: score }] of usual.curve.entries())
      if (hour > 0) expect(score).toBeLessThanOrEqual(usual.curve[hour - 1]!.boat);
    const worst = Math.min(
      ...usual.items.filter(({ consequence }) => consequence === 'vital').map(({ chance }) => chance),
    );
    expect(usual.score.boat / 100).toBeLessThanOrEqual(worst);
  });
});
