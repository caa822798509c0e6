import { describe, expect, it } from 'vitest';
import { canvasOf } from '../../../source/screens/charts/canvas.ts';

describe('the canvas', () => {
  it('has its first dot at the bottom left, its last at the top right', () => {
    const canvas = canvasOf(2, 2);
    canvas.dot(0, 0);
    canvas.dot(3, 7);
    expect(canvas.lines()).toEqual([' ⠈', '⡀ ']);
  });

  it('draws each of the eight dots of a cell at its own place', () => {
    const cell = [
      [0, 3, '⠁'],
      [0, 2, '⠂'],
      [0, 1, '⠄'],
      [0, 0, '⡀'],
      [1, 3, '⠈'],
      [1, 2, '⠐'],
      [1, 1, '⠠'],
      [1, 0, '⢀'],
    ] as const;
    for (const [x, y, drawn] of cell) {
      const canvas = canvasOf(1, 1);
      canvas.dot(x, y);
      expect(canvas.lines()).toEqual([drawn]);
    }
  });

  it('joins two dots without a gap', () => {
    const canvas = canvasOf(4, 1);
    canvas.stroke({ x: 0, y: 0 }, { x: 7, y: 3 });
    expect(canvas.lines()).toEqual(['⣀⠤⠒⠉']);
  });

  it('leaves out what lies beyond its edge', () => {
    const canvas = canvasOf(1, 1);
    canvas.stroke({ x: -50, y: -50 }, { x: -1, y: 9 });
    canvas.dot(2, 0);
    canvas.dot(Number.NaN, 0);
    expect(canvas.lines()).toEqual([' ']);
  });
});
