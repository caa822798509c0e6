import { describe, expect, it } from 'vitest';
import { passageNm, rhumbLine } from '../../source/passage/distance.ts';
import { piecesOf } from '../../source/passage/pieces.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';

const passageWith = (legs: (typeof sandpiper.passages)[0]['legs']) =>
  aBoat({ passages: [{ ...sandpiper.passages[0]!, legs }] }).passages[0]!;

describe('a passage', () => {
  it('is as long as its legs, by the miles given or along the rhumb line', () => {
    const [given, measured] = [sandpiper.passages[0]!.legs[0]!, { from: [41.4, -30], to: [42.4, -30] }];
    const passage = passageWith([given, measured as typeof given]);
    // One degree of latitude at 41.9 N on WGS 84 is 59.97 international nautical miles.
    expect(passageNm(passage)).toBeCloseTo(22 + 59.97, 1);
  });

  it('goes the short way round, over the date line too, and back on the opposite course', () => {
    const out = rhumbLine([10, 179], [11, -179]);
    const back = rhumbLine([11, -179], [10, 179]);
    expect(out.nm).toBeCloseTo(back.nm, 9);
    expect(Math.abs(((out.courseDeg - back.courseDeg + 360) % 360) - 180)).toBeLessThan(1e-9);
    expect(out.nm).toBeLessThan(140);
  });

  it('is cut into pieces of at most 25 miles that together are the whole, leg by leg', () => {
    const pieces = piecesOf(aBoat().passages[0]!);
    expect(pieces.map(({ leg, fromNm, nm }) => [leg, fromNm, nm])).toEqual([
      [0, 0, 22],
      [1, 22, 19],
      [1, 41, 19],
    ]);
  });

  it('has its pieces where she then is, over the date line too', () => {
    const leg = { from: [0, 179.5] as [number, number], to: [0, -179.5] as [number, number], nm: 60 };
    const [first, middle, last] = piecesOf(passageWith([leg]));
    expect(first!.middle[1]).toBeCloseTo(179.5 + 1 / 6, 9);
    expect(Math.abs(middle!.middle[1])).toBeCloseTo(180, 9);
    expect(last!.middle[1]).toBeCloseTo(-179.5 - 1 / 6, 9);
    expect(first!.courseDeg).toBeCloseTo(90, 9);
  });
});
