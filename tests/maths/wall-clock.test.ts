import { expect, test } from 'vitest';
import { instantOf, wallOf } from '../../source/maths/wall-clock.ts';

const at = Date.parse;

test.each([
  ['2026-02-03T06:00:00Z', 'Europe/Paris', '2026-02-03T07:00:00Z'],
  ['2026-07-03T06:00:00Z', 'America/New_York', '2026-07-03T02:00:00Z'],
  ['2026-07-03T18:30:15Z', 'Asia/Kolkata', '2026-07-04T00:00:15Z'],
  ['0050-02-03T12:00:00Z', 'UTC', '0050-02-03T12:00:00Z'],
])('%s is shown in %s as %s, and the way back', (instant, zone, wall) => {
  expect(wallOf(at(instant), zone)).toBe(at(wall));
  expect(instantOf(at(wall), zone)).toBe(at(instant));
});

test('an hour that clocks skip is no instant, and of one that comes twice the first is meant', () => {
  expect(instantOf(at('2026-03-29T02:30:00Z'), 'Europe/Paris')).toBeNull();
  expect(instantOf(at('2026-10-25T02:30:00Z'), 'Europe/Paris')).toBe(at('2026-10-25T00:30:00Z'));
});
