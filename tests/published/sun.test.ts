import { describe, expect, it } from 'vitest';
import { daylightsBetween, sunOn } from '../../source/passage/sun.ts';
import { testPublished } from '../helpers/published.ts';

const MINUTE = 60_000;

/** Sunrise and sunset in local standard or daylight time as published; station positions from memory, good to 2 km. */
const published = [
  ['FMY Fort Myers, US National Weather Service CLI', 26.585, -81.861, '2014-12-29', -5, '07:15', '17:44'],
  [
    'DCA Washington National, US National Weather Service CLI',
    38.848,
    -77.034,
    '2026-06-29',
    -4,
    '05:46',
    '20:37',
  ],
  ['EKA Eureka, US National Weather Service CLI', 40.81, -124.16, '2014-12-29', -8, '07:40', '16:57'],
  ['BGR Bangor, US National Weather Service CLI', 44.807, -68.828, '2014-11-03', -5, '06:16', '16:21'],
  ['CDB Cold Bay, US National Weather Service CLI', 55.206, -162.724, '2017-03-15', -8, '09:05', '20:56'],
  ['BET Bethel, US National Weather Service CLI', 60.785, -161.829, '2014-01-02', -9, '10:57', '16:48'],
  ['OME Nome, US National Weather Service CLI', 64.512, -165.445, '2014-10-24', -8, '10:23', '19:09'],
] as const;

describe('the sun', () => {
  it.each(published)(
    'rises and sets at %s within a minute of the time printed',
    (_, lat, lon, date, offset, rise, set) => {
      const noon = Date.parse(`${date}T12:00:00Z`) - offset * 60 * MINUTE;
      const sun = sunOn(noon, [lat, lon]);
      expect(typeof sun).toBe('object');
      if (typeof sun === 'string') return;
      const local = (clock: string) => Date.parse(`${date}T${clock}:00Z`) - offset * 60 * MINUTE;
      expect(Math.abs(sun.from - local(rise))).toBeLessThanOrEqual(1.5 * MINUTE);
      expect(Math.abs(sun.to - local(set))).toBeLessThanOrEqual(1.5 * MINUTE);
    },
  );

  it('does not set in a polar summer nor rise in a polar winter', () => {
    expect(sunOn(Date.parse('2026-06-21T12:00:00Z'), [75, 20])).toBe('up');
    expect(sunOn(Date.parse('2026-12-21T12:00:00Z'), [75, 20])).toBe('down');
    const week = 7 * 24 * 60 * MINUTE;
    const winter = Date.parse('2026-12-18T00:00:00Z');
    expect(daylightsBetween(winter, winter + week, [75, 20])).toEqual([]);
    const summer = Date.parse('2026-06-18T00:00:00Z');
    const days = daylightsBetween(summer, summer + week, [75, 20]);
    for (let at = summer; at < summer + week; at += 30 * MINUTE)
      expect(days.some(({ from, to }) => from <= at && at <= to)).toBe(true);
  });

  it('runs the days on which it does not set together into one, whatever hour they are counted from', () => {
    for (let hour = 0; hour < 24; hour += 1) {
      const from = Date.parse('2026-06-18T00:00:00Z') + hour * 60 * MINUTE;
      const days = daylightsBetween(from, from + 5 * 24 * 60 * MINUTE, [75, 20]);
      expect(days, `from ${hour}:00`).toHaveLength(1);
      expect(days[0]!.from).toBeLessThan(from);
    }
  });

  it('gives each day once, on either side of the date line', () => {
    for (const longitude of [-179.9, 179.9, 0]) {
      const from = Date.parse('2026-03-01T00:00:00Z');
      const days = daylightsBetween(from, from + 4 * 24 * 60 * MINUTE, [10, longitude]);
      expect(new Set(days.map((day) => day.from)).size).toBe(days.length);
      for (const [i, day] of days.entries()) if (i > 0) expect(day.from).toBeGreaterThan(days[i - 1]!.to);
    }
  });
});

interface Check {
  readonly id: string;
  readonly input: {
    readonly lat: number;
    readonly lon: number;
    readonly date: string;
    readonly utc_offset_h: number;
  };
  readonly expected: { readonly sunrise: string; readonly sunset: string };
}

testPublished<readonly Check[]>(
  'every published sunrise and sunset is met within a minute',
  'weather/08_sun.json',
  (checks) => {
    const printed = checks.filter(({ expected }) => /^\d\d:\d\d$/.test(expected?.sunrise ?? ''));
    expect(printed.length).toBeGreaterThan(14);
    for (const { id, input, expected } of printed) {
      const at = (clock: string) =>
        Date.parse(`${input.date}T${clock}:00Z`) - input.utc_offset_h * 60 * MINUTE;
      const sun = sunOn(at('12:00'), [input.lat, input.lon]);
      if (typeof sun === 'string') throw new Error(`${id}: the sun is ${sun}`);
      expect(Math.abs(sun.from - at(expected.sunrise)), id).toBeLessThanOrEqual(1.5 * MINUTE);
      expect(Math.abs(sun.to - at(expected.sunset)), id).toBeLessThanOrEqual(1.5 * MINUTE);
    }
  },
);
