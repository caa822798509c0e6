import { describe, expect, test } from 'vitest';
import { positionFrom } from '../../source/words/positions.ts';

describe('a position as typed', () => {
  test.each([
    ['56.41 -5.47', [56.41, -5.47]],
    ['56.41, -5.47', [56.41, -5.47]],
    ['-33.85; 151.2', [-33.85, 151.2]],
    ['56.41N 5.47W', [56.41, -5.47]],
    ['56,41 -5,47', [56.41, -5.47]],
    ["56o24.6'N 5o28.2'W", [56.41, -5.47]],
    ["56°24,6'N 5°28,2'W", [56.41, -5.47]],
    ["56°24.6'N 5°28.2'W", [56.41, -5.47]],
    ['56 24.6 n, 5 28.2 w', [56.41, -5.47]],
    ['N56 24.6 W5 28.2', [56.41, -5.47]],
    [`56°24'36"N 5°28'12"W`, [56.41, -5.47]],
    ['33°51.0′S 151°12.0′E', [-33.85, 151.2]],
    ['0 0', [0, 0]],
  ])('%s', (typed, [latitude, longitude]) => {
    const read = positionFrom(typed, 'from');
    expect(read.ok && read.value[0]).toBeCloseTo(latitude!, 9);
    expect(read.ok && read.value[1]).toBeCloseTo(longitude!, 9);
  });

  test.each([
    '',
    'Otter Cay',
    '91 0',
    '0 181',
    '56.41',
    '56 24 5 28',
    '56°60N 5W',
    '56.41N 5.47O',
    '5.47W 56.41N',
    '1 2 3',
    '9'.repeat(500),
  ])('is asked for again: %s', (typed) => {
    expect(positionFrom(typed, 'from')).toMatchObject({
      ok: false,
      troubles: [{ kind: 'not understood', field: 'from' }],
    });
  });
});
