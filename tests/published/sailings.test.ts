import { describe, expect, it } from 'vitest';
import { rhumbLine } from '../../source/passage/distance.ts';

/**
 * Rhumb lines worked elsewhere. Positions in degrees and minutes; course in degrees true, distance in nautical miles.
 * The two of the US Coast Guard's deck examinations are its problems with answers computed from WGS 84 meridional parts.
 */
const worked = [
  {
    source: 'hpmuseum.org forum thread 11196, Mercator sailing, post by Dieter (seen)',
    from: [
      [43, 21 + 16 / 60],
      [-102, 54 + 16 / 60],
    ],
    to: [
      [42, 4 + 30 / 60],
      [-106, 3 + 8 / 60],
    ],
    course: 241.14,
    distance: 159.03,
    within: [0.02, 0.05],
  },
  {
    source: 'Navigation list, Silicon Sea leg 82, the Mercator distance of the worked solution (seen)',
    from: [
      [11, 30],
      [-132, 30],
    ],
    to: [
      [19, 30],
      [-154, 45],
    ],
    course: null,
    distance: 1379.5,
    within: [0, 4],
  },
  {
    source: 'USCG deck examination, Mercator sailing, seatrials.net (problem seen, answer computed)',
    from: [
      [32, 16.6],
      [-68, 28],
    ],
    to: [
      [43, 12.2],
      [-55, 39],
    ],
    course: 42.87,
    distance: 894.6,
    within: [0.1, 0.3],
  },
  {
    source: 'USCG deck examination, Mercator sailing 2, seatrials.net (problem seen, answer computed)',
    from: [
      [49, 45],
      [-6, 35],
    ],
    to: [
      [25, 50],
      [-77, 0],
    ],
    course: 246.49,
    distance: 3596.8,
    within: [0.1, 2],
  },
  {
    source: 'Bowditch, The American Practical Navigator (2002), mid-latitude sailing 2 (memory; recomputed)',
    from: [
      [-8, 48.9],
      [-89, 53.3],
    ],
    to: [
      [-17, 6.9],
      [-104, 51.6],
    ],
    course: 240.4,
    distance: 1007.1,
    within: [0.3, 5],
  },
] as const;

const degrees = ([whole, minutes]: readonly [number, number]) =>
  Math.sign(whole) * (Math.abs(whole) + minutes / 60);

const RADIANS = Math.PI / 180;
/**
 * Sailings by the tables call a minute of latitude a mile; ours is 1852 m. On WGS 84 a minute has 1842.9 m at the equator and 1861.6 m at the poles, so the
 * two may differ by half a part in a hundred.
 */
const MINUTE_AGAINST_MILE = 0.0055;

describe('a rhumb line', () => {
  it.each(worked)('has the course and length of $source', ({ from, to, course, distance, within }) => {
    const line = rhumbLine([degrees(from[0]), degrees(from[1])], [degrees(to[0]), degrees(to[1])]);
    const minutes =
      (60 * Math.abs(degrees(to[0]) - degrees(from[0]))) / Math.abs(Math.cos(line.courseDeg * RADIANS));
    expect(Math.abs(minutes - distance)).toBeLessThan(within[1]);
    expect(Math.abs(line.nm / distance - 1)).toBeLessThan(MINUTE_AGAINST_MILE);
    if (course !== null) expect(Math.abs(line.courseDeg - course)).toBeLessThan(within[0]);
  });

  it('along a parallel is the departure of Bowditch, parallel sailing 1 (memory; recomputed)', () => {
    expect(rhumbLine([49.5, 0], [49.5, 3.5]).nm).toBeCloseTo(136.4, 0);
  });
});
