// Words for the change of pressure over 3 hours: the Met Office's marine forecast glossary, as reproduced by the Royal Meteorological Society
// (docslib.org/doc/507505/shipping-forecast-task-sheet-v2, gale warnings).
import { expect, test } from 'vitest';
import { tendencyWords } from '../../source/words/pressure.ts';
import { testPublished } from '../helpers/published.ts';

test.each([
  [0.04, 'steady'],
  [1.5, 'rising slowly'],
  [-1.6, 'falling'],
  [-6, 'falling quickly'],
  [-6.1, 'falling very rapidly'],
])('%d hPa is %s', (change, words) => {
  expect(tendencyWords(change)).toBe(words);
});

testPublished<
  readonly { readonly id: string; readonly input: { readonly dp3h: number }; readonly expected: string }[]
>('every change has its published word', 'weather/04_pressure.json', (checks) => {
  const changes = checks.filter(({ id }) => id.startsWith('pt-of-'));
  expect(changes.length).toBeGreaterThan(7);
  for (const { id, input, expected } of changes) expect(tendencyWords(input.dp3h), id).toBe(expected);
});
