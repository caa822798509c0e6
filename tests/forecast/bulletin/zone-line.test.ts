import { expect, test } from 'vitest';
import { beginsZoneLine, purgeInstant, zoneLine } from '../../../source/forecast/bulletin/zone-line.ts';

test.each([
  ['XXZ110-010315-', ['XXZ110']],
  ['XXZ110-112>114-YYZ020-010315-', ['XXZ110', 'XXZ112', 'XXZ113', 'XXZ114', 'YYZ020']],
])('%s names %j', (line, zones) => {
  expect(zoneLine(line)).toMatchObject({ zones, purge: '010315' });
});

test.each(['XXZ110', 'XXZ110-0103-', 'Lantern Sound-', 'XXZ100>999-010315-', '-010315-'])(
  '%s is no zone line',
  (line) => {
    expect(zoneLine(line)).toBeNull();
  },
);

test('a zone line may go on in the next', () => {
  expect(beginsZoneLine('XXZ110-111-112-')).toBe(true);
  expect(beginsZoneLine('XXZ110-010315-')).toBe(false);
});

test.each([
  ['010315', '2026-02-01T03:15'],
  ['312200', '2026-01-31T22:00'],
  ['312000', '2026-03-31T20:00'],
  ['302000', '2026-03-30T20:00'],
])('a purge time %s is the first such after an issue of 31 January, 21:00', (purge, instant) => {
  const at = purgeInstant(purge, Date.parse('2026-01-31T21:00Z'));
  expect(at && new Date(at).toISOString().slice(0, 16)).toBe(instant);
});

test.each(['002000', '322000', '012500', '010360'])('a purge time %s is none', (purge) => {
  expect(purgeInstant(purge, Date.parse('2026-01-31T21:00Z'))).toBeNull();
});
