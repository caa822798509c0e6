import { expect, test } from 'vitest';
import { chanceWords } from '../../source/words/chances.ts';

test.each([
  [1, 'nearly all'],
  [0.996, 'nearly all'],
  [0.99, '99 in 100'],
  [0.981, '49 in 50'],
  [0.95, '19 in 20'],
  [0.9499, '9 in 10'],
  [0.9, '9 in 10'],
  [0.85, '17 in 20'],
  [0.8, '8 in 10'],
  [0.75, '3 in 4'],
  [2 / 3, '2 in 3'],
  [0.5, '5 in 10'],
  [0.34, '1 in 3'],
  [0.22, '2 in 10'],
  [0.05, '1 in 20'],
  [0.012, '1 in 100'],
  [0.008, 'less than 1 in 100'],
  [0.003, 'almost none'],
  [0, 'almost none'],
])('%d is said as %s', (chance, words) => {
  expect(chanceWords(chance)).toBe(words);
});

test('nothing is said better than it is, and never worse for a better chance', () => {
  let last = 0;
  for (let i = 0; i <= 10_000; i += 1) {
    const said = figureOf(chanceWords(i / 10_000));
    expect(said).toBeLessThanOrEqual(i / 10_000 + 1e-9);
    expect(said).toBeGreaterThanOrEqual(last);
    last = said;
  }
});

function figureOf(words: string): number {
  if (words === 'nearly all') return 0.995;
  const found = /^(\d+) in (\d+)$/.exec(words);
  return found ? Number(found[1]) / Number(found[2]) : 0;
}
