import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { positionFrom, positionWords } from '../../source/words/positions.ts';
import { legFrom, legText } from '../../source/words/typed-leg.ts';

const read = (text: string) => {
  const leg = legFrom(text, (part) => positionFrom(part, 'leg'), 'leg');
  return leg.ok ? leg.value : null;
};
const to = [47.23, -20.35];

describe('a leg as it is typed', () => {
  it.each([
    ["47°13.8'N 20°21.0'W, 13.5 nm, Gannister Point", { to, nm: 13.5, place: 'Gannister Point' }],
    ['47 13.8N 20 21W 13.5 nm Gannister Point', { to, nm: 13.5, place: 'Gannister Point' }],
    ['47.23 -20.35, 13,5, Here', { to, nm: 13.5, place: 'Here' }],
    ['N47 13.8 W20 21, 25 km', { to, nm: 13.4989200864 }],
    ['47.23 -20.35 3 Sisters', { to, place: '3 Sisters' }],
    ['47.23 -20.35, Ostler Sound, south', { to, place: 'Ostler Sound, south' }],
    ['47,23 -20,35', { to }],
  ])('%s', (text, leg) => {
    const found = read(text);
    expect(found?.to.map((angle) => Number(angle.toFixed(6)))).toEqual(leg.to);
    expect({ ...found, to }).toEqual(leg);
  });

  it.each([
    '',
    'Gannister Point',
    '47.23',
    '47.23 -20.35, 0 nm',
    '47.23 -20.35 -7',
    '91 0, 5 nm',
    '47 61N 20W',
  ])('not: %s', (text) => expect(read(text)).toBeNull());

  it('reads back what it says, to some 2 m', () => {
    const angle = (most: number) =>
      fc.integer({ min: -most * 60_000, max: most * 60_000 }).map((n) => n / 60_000);
    const place = fc.stringMatching(/^[A-Z][a-z]{2,8}( [A-Z][a-z]{2,8})?$/u);
    const nm = fc.integer({ min: 1, max: 99_999 }).map((tenths) => tenths / 10);
    const leg = fc.record({ to: fc.tuple(angle(90), angle(180)), nm, place }, { requiredKeys: ['to'] });
    fc.assert(
      fc.property(leg, (given) => {
        const found = read(legText(given))!;
        expect([found.nm, found.place]).toEqual([given.nm, given.place]);
        expect(found.to[0]).toBeCloseTo(given.to[0], 6);
        expect(found.to[1]).toBeCloseTo(given.to[1], 6);
      }),
    );
  });

  it('says degrees and minutes, and carries a minute that is full', () => {
    expect(positionWords([47.1, -20.6])).toBe("47°06.0'N 20°36.0'W");
    expect(positionWords([-0.0000001, 179.9999999])).toBe("0°00.0'S 180°00.0'E");
    expect(positionWords([12.99999999, 5.5])).toBe("13°00.0'N 5°30.0'E");
  });
});
