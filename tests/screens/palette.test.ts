import { describe, expect, it } from 'vitest';
import { nextPalette, palettes } from '../../source/screens/palette.ts';

const BLACK = '#000000';
const WHITE = '#ffffff';

/** WCAG 2.2, "relative luminance" and "contrast ratio" (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio). */
function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

const coloursOf = (name: keyof typeof palettes) =>
  Object.values(palettes[name].looks).flatMap(({ color }) => (color === undefined ? [] : [color]));

describe('palettes', () => {
  it('the contrast formula gives the published ends: 21 for black on white, 5.25 for pure red on black', () => {
    expect(contrast(BLACK, WHITE)).toBeCloseTo(21, 6);
    expect(contrast('#ff0000', BLACK)).toBeCloseTo(5.25, 2);
  });

  it('every colour of the day can be read on black and on white', () => {
    for (const colour of coloursOf('day')) {
      expect(contrast(colour, BLACK), colour).toBeGreaterThanOrEqual(4.5);
      expect(contrast(colour, WHITE), colour).toBeGreaterThanOrEqual(4.5);
    }
  });

  it('by night every tone is pure red on black, none left to the terminal', () => {
    expect(palettes.night.ground).toBe(BLACK);
    for (const look of Object.values(palettes.night.looks)) expect(look.color).toBe('#ff0000');
    expect(contrast('#ff0000', BLACK)).toBeGreaterThanOrEqual(4.5);
  });

  it('plain has no colour at all', () => {
    expect(coloursOf('plain')).toEqual([]);
  });

  it('three presses come back to where they began', () => {
    expect(nextPalette(nextPalette(nextPalette('day')))).toBe('day');
    expect(new Set(['day', nextPalette('day'), nextPalette(nextPalette('day'))]).size).toBe(3);
  });
});
