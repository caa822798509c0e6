// Winds and seas as British area forecasts word them (texts of 2003 to 2017), with the forces and sea states a reader takes from them; the Beaufort scale and
// sea-state table as published by the Met Office.
import { describe, expect, test } from 'vitest';
import { forcesKn } from '../../source/forecast/beaufort.ts';
import { readProse } from '../../source/forecast/bulletin/prose.ts';
import { summaryOf } from '../../source/forecast/bulletin/summary.ts';
import { testPublished } from '../helpers/published.ts';

interface Check {
  readonly id: string;
  readonly input: string;
  readonly expected: {
    readonly base?: readonly [number, number];
    readonly then?: readonly [number, number];
    readonly max_possible?: number;
    readonly now?: readonly [number, number];
    readonly worst_m?: number;
  };
}

describe('forces', () => {
  test.each([
    ['Southwest 5 to 7, perhaps gale 8 later', [34, 40]],
    ['Variable 3 becoming south 4 or 5', [11, 21]],
    ['North 6 to gale 8, decreasing 4 or 5 later', [22, 40]],
  ])('%s: the worst of its clauses is %j knots', (prose, wind) => {
    expect(summaryOf(readProse(prose, 'forces')).figures.wind).toEqual(wind);
  });

  testPublished<readonly Check[]>(
    'every phrase of wind has its forces',
    'weather/13_navtex_uk.json',
    (checks) => {
      const winds = checks.filter(({ id }) => id.startsWith('uk-wind-'));
      expect(winds.length).toBeGreaterThan(6);
      for (const { input, expected } of winds) {
        const read = readProse(input, 'forces').wind.map(({ low, high }) => [low, high]);
        for (const forces of [expected.base, expected.then])
          if (forces) expect(read, input).toContainEqual(forcesKn(...forces));
        const highest = Math.max(
          ...[...(expected.base ?? []), ...(expected.then ?? []), expected.max_possible ?? 0],
        );
        expect(Math.max(...read.map(([, high]) => high ?? 0)), input).toBe(forcesKn(highest)?.[1]);
      }
    },
  );
});

describe('sea state', () => {
  test('rough or very rough is 2.5 to 6 m', () => {
    expect(readProse('Rough or very rough', 'forces').seaWords).toEqual([{ low: 2.5, high: 6, upTo: false }]);
  });

  testPublished<readonly Check[]>(
    'every phrase of sea state has its heights',
    'weather/13_navtex_uk.json',
    (checks) => {
      const seas = checks.filter(({ id }) => id.startsWith('uk-sea-'));
      expect(seas.length).toBeGreaterThan(2);
      for (const { input, expected } of seas) {
        const read = readProse(input, 'forces').seaWords.map(({ low, high }) => [low, high]);
        for (const metres of [expected.now, expected.then])
          if (metres) expect(read, input).toContainEqual(metres);
        if (expected.worst_m)
          expect(Math.max(...read.map(([, high]) => high ?? 0)), input).toBe(expected.worst_m);
      }
    },
  );

  interface State {
    readonly id: string;
    readonly expected: { readonly hmin_m: number; readonly hmax_m: number | null; readonly words: string };
  }
  testPublished<readonly State[]>('every code has its heights', 'weather/02_sea_state.json', (checks) => {
    const codes = checks.filter(({ id }) => /^ss-[2-8]$/.test(id));
    expect(codes).toHaveLength(7);
    for (const { expected } of codes) {
      const word = expected.words.replace(/ \(.*/, '');
      expect(readProse(word, 'forces').seaWords, word).toEqual([
        { low: expected.hmin_m, high: expected.hmax_m, upTo: false },
      ]);
    }
  });
});

test('words for visibility are not taken for the sea', () => {
  for (const words of ['Moderate or good', 'Good, occasionally poor', 'Mainly good', 'Moderate or poor'])
    expect(readProse(words, 'forces').seaWords, words).toEqual([]);
});
