import { describe, expect, test } from 'vitest';
import { timedPeriods } from '../../../source/forecast/bulletin/periods.ts';

/** Saturday 31 January 2026, 16:00 in a zone five hours behind. */
const issue = { at: Date.parse('2026-01-31T21:00Z'), aheadMinutes: -300 };
/** Saturday, 02:30 there. */
const beforeDawn = { ...issue, at: Date.parse('2026-01-31T07:30Z') };

/** Local days and hours, as 31T16 to 01T06. */
function hours(labels: readonly string[], at = issue, nearShore = false): readonly (string | null)[] {
  const local = (instant: number) => new Date(instant - 5 * 3_600_000).toISOString().slice(8, 13);
  return timedPeriods(
    labels.map((label) => ({ label, prose: '' })),
    at,
    nearShore,
  ).map(({ span }) => span && `${local(span.from)} to ${local(span.to)}`);
}

describe('periods follow one another in local days and nights', () => {
  test.each<[readonly string[], readonly string[]]>([
    [
      ['TONIGHT', 'SUN', 'SUN NIGHT'],
      ['31T16 to 01T06', '01T06 to 01T18', '01T18 to 02T06'],
    ],
    [
      ['REST OF TODAY', 'TONIGHT', 'SUNDAY'],
      ['31T16 to 31T18', '31T18 to 01T06', '01T06 to 02T06'],
    ],
    [
      ['THIS EVENING', 'OVERNIGHT', 'SUN MORNING', 'SUN AFTERNOON'],
      ['31T16 to 01T00', '01T00 to 01T06', '01T06 to 01T12', '01T12 to 01T18'],
    ],
  ])('%j', (labels, expected) => {
    expect(hours(labels)).toEqual(expected);
  });

  test('before dawn tonight is the night that is, and today the day to come', () => {
    expect(hours(['REST OF TONIGHT', 'SATURDAY', 'SAT NIGHT'], beforeDawn)).toEqual([
      '31T02 to 31T06',
      '31T06 to 31T18',
      '31T18 to 01T06',
    ]);
    expect(hours(['TODAY', 'TONIGHT', 'SUN', 'SUN NIGHT'], beforeDawn)).toEqual([
      '31T02 to 31T18',
      '31T18 to 01T06',
      '01T06 to 01T18',
      '01T18 to 02T06',
    ]);
  });

  test('one over several days lasts to the end of the last', () => {
    expect(hours(['TONIGHT THROUGH THU NIGHT', 'FRI'])).toEqual(['31T16 to 06T06', '06T06 to 07T06']);
    expect(hours(['TONIGHT', 'SUN AND SUN NIGHT', 'MON AND TUE', 'WED'])).toEqual([
      '31T16 to 01T06',
      '01T06 to 02T06',
      '02T06 to 04T06',
      '04T06 to 05T06',
    ]);
  });

  test('a day without a night of its own is 24 hours; the last of a near-shore forecast ends with the day', () => {
    expect(hours(['TONIGHT', 'SUN', 'MON'])).toEqual(['31T16 to 01T06', '01T06 to 02T06', '02T06 to 03T06']);
    expect(hours(['TONIGHT', 'SUN', 'SUN NIGHT', 'MON'], issue, true).at(-1)).toBe('02T06 to 02T18');
  });

  test('a day left out leaves a gap', () => {
    expect(hours(['TONIGHT', 'MON', 'MON NIGHT'])).toEqual([
      '31T16 to 01T06',
      '02T06 to 02T18',
      '02T18 to 03T06',
    ]);
  });

  test('a label that names no time has none, and what comes back to an earlier one neither', () => {
    expect(hours(['TONIGHT', 'OUTLOOK', 'SUN'])).toEqual(['31T16 to 01T06', null, '01T06 to 02T06']);
    expect(hours(['SUN', 'TONIGHT'])[1]).toBeNull();
  });
});
