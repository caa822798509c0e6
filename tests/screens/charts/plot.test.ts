import { describe, expect, it } from 'vitest';
import { type Plot, plotLines } from '../../../source/screens/charts/plot.ts';

const plain: Plot = {
  points: [
    { at: 0, value: 0 },
    { at: 10, value: 10 },
  ],
  from: 0,
  to: 10,
  least: 0,
  most: 10,
  levels: [],
  ticks: [],
  marks: [10, 0],
  label: String,
  joined: 'straight',
};

describe('a plot', () => {
  it('rises from bottom left to top right, its marks at the rows they belong to', () => {
    expect(plotLines(plain, 7, 2)).toEqual(['10   ⡠⠊', ' 0 ⡠⠊  ', '       ']);
  });

  it('keeps a count level until the next one', () => {
    const [top, bottom] = plotLines({ ...plain, joined: 'stepped' }, 7, 2);
    expect(bottom).toMatch(/⣀⣀⣀/u);
    expect(top!.slice(3, 6).trim()).toBe('');
  });

  it('writes a level at the right, in the row it lies in', () => {
    const [top, bottom] = plotLines({ ...plain, levels: [{ value: 1, word: 'low' }] }, 20, 2);
    expect(bottom!.trimEnd().endsWith(' low')).toBe(true);
    expect(top).not.toContain('low');
  });

  it('puts each moment under its place, and leaves out what would run into the one before', () => {
    const ticks = [
      { at: 0, word: 'Mon' },
      { at: 1, word: 'Tue' },
      { at: 6, word: 'Wed' },
    ];
    const lines = plotLines({ ...plain, ticks }, 23, 2);
    expect(lines[2]!.trimEnd()).toBe('   |Mon       |Wed');
  });

  it('every line is as wide as asked', () => {
    for (const line of plotLines({ ...plain, levels: [{ value: 5, word: 'half' }] }, 33, 5)) {
      expect([...line]).toHaveLength(33);
    }
  });

  it('points that are all the same draw a line, not a fault', () => {
    const flat = { ...plain, least: 4, most: 4, points: plain.points.map(({ at }) => ({ at, value: 4 })) };
    expect(plotLines(flat, 12, 2).join('')).toMatch(/[⣀⠤⠒⠉]/u);
  });

  it('leaves out what is not known, in its points and in its band', () => {
    const at = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
    const known = (value: number) =>
      at.map((one) => ({ at: one, value: one > 3 && one < 7 ? Number.NaN : value }));
    const band = at.map((one) => ({ at: one, low: one > 3 && one < 7 ? Number.NaN : 2, high: 8 }));
    const lines = plotLines({ ...plain, points: known(5), band }, 44, 4);
    const middle = lines.slice(0, 4).map((one) => one.slice(19, 27).trim());
    expect(middle[1]! + middle[2]!).toBe('');
    expect(lines.join('')).toMatch(/[⣀⠤⠒⠉]/u);
  });

  it('writes letters over the picture and under it, each in its column, and none for what lies outside', () => {
    const letters = [
      { at: 5, value: 5, letter: 'o' },
      { at: 15, value: 5, letter: 'z' },
    ];
    const below = [
      { at: 0, letter: '+' },
      { at: 10, letter: 'j' },
    ];
    const lines = plotLines({ ...plain, letters, below, pointed: 5 }, 24, 2);
    expect(lines.slice(0, 2).join('').match(/o/gu)).toHaveLength(1);
    expect(lines.join('')).not.toContain('z');
    expect(lines[2]!.trim()).toMatch(/^\+ +↑ +j$/u);
  });
});
