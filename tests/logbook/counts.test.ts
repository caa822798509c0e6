import { describe, expect, it } from 'vitest';
import { highestCount, leapTroubles, mostLeap } from '../../source/logbook/counts.ts';
import type { Line } from '../../source/logbook/line.ts';

function fileOf(...counts: number[]) {
  const lines = counts.map((lc, i): Line => {
    const frame = { writer: 'k7m2q9xd', n: i + 1, p: '', crc: '', lc };
    return { how: 'newer', frame, text: '' };
  });
  return {
    name: 'log/x',
    writer: 'k7m2q9xd',
    lines: [...lines, { how: 'zeros', frame: null, text: '' } as const],
  };
}

describe('the count that orders cause and effect', () => {
  it('follows the highest of all laptops', () => {
    expect(highestCount([])).toBe(0);
    expect(highestCount([fileOf(1, 2, 7), fileOf(3, 4)])).toBe(7);
  });

  it('follows a long log by steps, in whatever order it is read', () => {
    const steps = [1, 2, 3].map((step) => step * mostLeap);
    expect(highestCount([fileOf(steps[2]!), fileOf(steps[0]!), fileOf(steps[1]!)])).toBe(3 * mostLeap);
    expect(leapTroubles([fileOf(steps[2]!), fileOf(steps[0]!), fileOf(steps[1]!)])).toEqual([]);
  });

  it('does not follow a leap, and tells it once', () => {
    const files = [fileOf(1, 2 ** 40, 2 ** 40), fileOf(2)];
    expect(highestCount(files)).toBe(2);
    expect(leapTroubles(files)).toEqual([
      { kind: 'count leap', place: { file: 'log/x', line: 2 }, lc: 2 ** 40 },
    ]);
  });
});
