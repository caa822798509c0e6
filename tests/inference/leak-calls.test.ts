import { describe, expect, it } from 'vitest';
import { callsOfALeak, everCalledLeaking } from '../helpers/leak-calls.ts';

const seeds = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

describe('a leak is told from none', () => {
  // The whole, 300 fluids looked at every day, is in the soak.
  it('through a year of daily readings at most 1 healthy fluid in 15 is ever called leaking (30 simulated, looked at every fortnight)', () => {
    const called = seeds(30).filter((seed) => everCalledLeaking(seed, 14));
    expect(called.length).toBeLessThanOrEqual(2);
  });

  it.each([
    ['lying', 5],
    ['running', 9],
  ] as const)(
    'a leak %s of a tenth of the marks a day is called one within %i readings in 9 boats of 10, and of the right kind within 13 in 85 of 100',
    (kind, readings) => {
      const calls = seeds(60).map((seed) => callsOfALeak(seed, kind));
      expect(calls.filter(({ at }) => at <= readings).length).toBeGreaterThanOrEqual(54);
      expect(calls.filter(({ right }) => right).length).toBeGreaterThanOrEqual(51);
    },
  );
});
