import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bareNumbersIn, readProse } from '../../../source/forecast/bulletin/prose.ts';
import { summaryOf } from '../../../source/forecast/bulletin/summary.ts';

const figuresOf = (prose: string) => summaryOf(readProse(prose, bareNumbersIn(prose))).figures;
const windOf = (prose: string) => figuresOf(prose).wind;
const notRead = (prose: string) => readProse(prose, bareNumbersIn(prose)).notRead;

describe('winds', () => {
  test.each<[string, readonly [number, number]]>([
    ['NW winds 15 to 20 kt.', [15, 20]],
    ['NW winds 15-20 knots.', [15, 20]],
    ['NW winds around 15 kts.', [15, 15]],
    ['NW winds 15 kt to 20 kt.', [15, 20]],
    ['Winds NW 10 to\n15\nkt.', [10, 15]],
    [
      'Northwesterly winds 5 to 10 m/s.',
      [expect.closeTo(9.719, 3) as number, expect.closeTo(19.438, 3) as number],
    ],
    ['Winds to 20 knots.', [20, 20]],
    ['W winds 10 kt or less.', [10, 10]],
    ['W winds less than 10 kt.', [10, 10]],
    ['W winds increasing to 25 to 35 kt by evening.', [25, 35]],
  ])('"%s" is %j knots', (prose, wind) => {
    expect(windOf(prose)).toEqual(wind);
    expect(notRead(prose)).toEqual([]);
  });

  test('of winds split by area or by hour the worst counts, and every direction is kept', () => {
    const split =
      'W winds 10 to 15 kt N of Cape Aster and NW 20 to 30 kt S of the cape, backing S 15 kt after midnight.';
    expect(figuresOf(split)).toMatchObject({ wind: [20, 30], dir: 315, otherDirs: [270, 180] });
    expect(figuresOf('SW winds 25 kt within 20 NM of shore, 10 to 15 kt elsewhere.').wind).toEqual([25, 25]);
  });

  test('a range of directions counts as its middle, and keeps its ends', () => {
    expect(figuresOf('S or SW winds 10 kt.')).toMatchObject({ dir: 202.5, otherDirs: [180, 225] });
    expect(figuresOf('NW to NE winds 10 kt.')).toMatchObject({ dir: 0, otherDirs: [315, 45] });
  });

  test('a direction it turns to without a figure keeps the figure before it', () => {
    expect(readProse('N wind 5 to 10 kt, becoming SW in the afternoon.', 'knots').wind).toMatchObject([
      { dirs: [0], low: 5, high: 10 },
      { dirs: [225], low: 5, high: 10 },
    ]);
  });

  test('the s of gales, of kts and of an owner is no south', () => {
    expect(figuresOf("W gales 35 to 45 kts off the cape's point.")).toMatchObject({
      wind: [35, 45],
      dir: 270,
    });
  });

  test.each([
    ['W winds 20 to 25 kt increasing to gale force late.', [34, 47]],
    ['Storm force winds expected.', [48, 63]],
    ['Light winds.', [0, 10]],
  ])('"%s": a word stands for %j knots, and that is said', (prose, wind) => {
    const { figures, odd } = summaryOf(readProse(prose, 'knots'));
    expect([figures.wind, odd]).toEqual([wind, ['from words']]);
  });

  test('what moves, flows or lies in miles is no wind', () => {
    for (const prose of [
      'Low moving NE at 25 kt.',
      'Ebb current 3 kt.',
      'Ice within 20 NM.',
      'A gale warning may be needed.',
    ])
      expect(windOf(prose), prose).toBeNull();
  });

  test('figures without a unit are knots only where they cannot be forces, and that is said', () => {
    const { figures, odd } = summaryOf(readProse('NW winds 15 to 20 in the morning.', 'knots'));
    expect([figures.wind, odd]).toEqual([[15, 20], ['unit taken']]);
  });

  test.each([
    [
      'Wind southeast 15 knots increasing to southeast 25 and to southeast gales 35 after midnight.',
      [35, 35],
    ],
    ['NW winds 20 kt increasing to 30 late.', [30, 30]],
    ['NW winds 20 kt rising to 25 to 35 by dawn.', [25, 35]],
  ])('"%s": a unit said once counts for the clauses behind it', (prose, wind) => {
    expect(windOf(prose)).toEqual(wind);
    expect(notRead(prose)).toEqual([]);
  });

  test('a range said backwards is turned, and that is said', () => {
    const { figures, odd } = summaryOf(readProse('NW winds 25 to 15 kt.', 'knots'));
    expect([figures.wind, odd]).toEqual([[15, 25], ['range backwards']]);
  });
});

describe('gusts', () => {
  test.each([
    ['SE winds 15 to 20 kt, gusting 28.', 28],
    ['SE winds 15G25 kt.', 25],
    ['SE winds 15-20 kts G25.', 25],
    ['SE 15-20 G28 KT.', 28],
    ['SE winds 20 kt with gusts up to 35 knots.', 35],
    ['SE winds 20 kt with gusts 30 to 35 kt.', 35],
    ['SE winds 20 kt and gusts to 10 m/s.', 19.4384449],
    ['SE winds 20 kt with gale force gusts up to 36 kt.', 36],
    ['SE winds 20 kt with gusts to gale force.', 34],
  ])('"%s": %d knots', (prose, gust) => {
    expect(figuresOf(prose).gust).toBe(gust);
    expect(figuresOf(prose).wind?.[1]).toBeLessThan(26);
    expect(notRead(prose)).toEqual([]);
  });
});

describe('seas', () => {
  const feet = (height: number): number => expect.closeTo(height * 0.3048, 6) as number;
  test.each<[string, readonly [number, number]]>([
    ['Seas 3 to 5 ft.', [feet(3), feet(5)]],
    ['Seas 3 to\n5\nfeet.', [feet(3), feet(5)]],
    ['Combined seas 2.5 TO 5.5\nM.', [2.5, 5.5]],
    ['Waves 2 ft or less.', [feet(2), feet(2)]],
    ['Seas 3 to 5 ft building to 6 to 8 ft.', [feet(6), feet(8)]],
    ['Seas less than 8 ft in NE swell.', [feet(8), feet(8)]],
    ['Waves 2 to 4 ft with occasional waves to 8 ft.', [feet(2), feet(4)]],
    ['Seas to 9 ft. A 2 ft chop.', [feet(9), feet(9)]],
  ])('"%s" is %j m', (prose, seas) => {
    expect(figuresOf(prose).seas).toEqual(seas);
  });

  test('of a sea given in parts the whole is put together by energy, and that is said', () => {
    const { figures, odd } = summaryOf(readProse('Wind waves 3 m. W swell 4 m at 11 seconds.', 'knots'));
    expect(figures).toMatchObject({ seas: [5, 5], period: 11, periodKind: 'swell' });
    expect(odd).toEqual(['seas put together']);
  });

  test('beside the whole sea its parts give only the period, of the highest of them', () => {
    expect(
      figuresOf('Seas 8 to 10 ft. Wave Detail: S 2 ft at 16 seconds and NW 9 ft at 8 seconds.'),
    ).toMatchObject({
      seas: [feet(8), feet(10)],
      period: 8,
      periodKind: 'peak',
    });
  });

  test('a swell higher than what is called the seas counts: no part is higher than the whole', () => {
    expect(figuresOf('Seas 2 ft or less. Swell W 5 to 7 ft at 12 seconds.').seas).toEqual([feet(5), feet(7)]);
  });

  test('water levels, surf and the highest single waves are no seas, and are left over', () => {
    expect(notRead('Water level 3 ft below datum. Surf 6 to 8 ft. Highest waves up to 12 ft.')).toEqual([
      'WATER LEVEL 3 FT BELOW DATUM',
      'SURF 6 TO 8 FT',
      'HIGHEST WAVES UP TO 12 FT',
    ]);
    expect(figuresOf('Surf 6 to 8 ft.').seas).toBeNull();
  });

  test('without a unit a height is not guessed at', () => {
    expect(figuresOf('NW winds 15 kt. Seas 4 to 6.').seas).toBeNull();
    expect(notRead('NW winds 15 kt. Seas 4 to 6.')).toEqual(['4 TO 6']);
  });
});

describe('squalls', () => {
  test.each([
    ['W winds 10 kt. A chance of thunderstorms.', 'isolated'],
    ['W winds 10 kt. Isolated tstms.', 'isolated'],
    ['W winds 10 kt. Scattered squalls.', 'scattered'],
    ['W winds 10 kt. Showers and thunderstorms likely.', 'scattered'],
    ['W winds 10 kt. A line of strong thunderstorms in the evening.', 'line'],
    ['W winds 10 kt. Rain.', null],
  ])('"%s": %s', (prose, squalls) => {
    expect(figuresOf(prose).squalls).toBe(squalls);
  });
});

test('a word in which the receiver lost a character is never filled in', () => {
  expect(windOf('SW winds 2* to 25 kt.')).toEqual([25, 25]);
  expect(windOf('SW winds 15 kt to *5 kt.')).toBeNull();
  expect(windOf('SW winds 1*5 kt.')).toBeNull();
  expect(notRead('SW winds 1*5 kt.')).not.toEqual([]);
});

test('every digit is read or left over: an unknown figure among known ones always comes back', () => {
  const known = [
    'SE winds 10 to 15 kt',
    'seas 3 to 5 ft',
    'gusts up to 28 kt',
    'NW 9 ft at 8 seconds',
    'after 3 AM',
  ];
  fc.assert(
    fc.property(
      fc.shuffledSubarray(known),
      fc.integer({ min: 0, max: 999 }),
      fc.nat(5),
      (parts, figure, place) => {
        const phrase = `${figure} furlongs`;
        const prose = `${[...parts.slice(0, place), phrase, ...parts.slice(place)].join('. ')}.`;
        const { notRead: left } = readProse(prose, 'knots');
        expect(left.some((one) => one.includes(String(figure)))).toBe(true);
      },
    ),
    { seed: 1, numRuns: 300 },
  );
});

test('whatever the prose, its figures are ordered, not below 0 and below 300', () => {
  const words =
    'N SW winds wind 5 10 15 20 25 35 100 999 to - kt m/s ft m seas swell gusts G of at seconds 8 , . ... or less F6 becoming * NM AM'.split(
      ' ',
    );
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...words), { maxLength: 40 }),
      fc.constantFrom('knots', 'forces'),
      (prose, bare) => {
        const { wind, seas, gust } = summaryOf(readProse(prose.join(' '), bare)).figures;
        for (const [low, high] of [wind, seas].filter((one) => one !== null)) {
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeGreaterThanOrEqual(low);
        }
        expect(wind?.[1] ?? 0).toBeLessThanOrEqual(250);
        expect(seas?.[1] ?? 0).toBeLessThanOrEqual(40);
        expect(gust ?? 0).toBeLessThanOrEqual(300);
      },
    ),
    { seed: 2, numRuns: 2000 },
  );
});
