import { expect, test } from 'vitest';
import { directionFrom } from '../../source/words/directions.ts';

test.each([
  ['n', 0],
  ['NNE', 22.5],
  ['se', 135],
  ['south-west', 225],
  ['North West', 315],
  ['nnw', 337.5],
  ['225', 225],
  ['180°', 180],
  ['22,5', 22.5],
  ['0', 0],
  ['360', 360],
])('%s is %d degrees', (typed, degrees) => {
  expect(directionFrom(typed, 'dir')).toEqual({ ok: true, value: degrees });
});

test.each([
  ['so', 'se or sw'],
  ['o', 'e or w'],
  ['NO', 'ne or nw'],
  ['ono', 'ene or wnw'],
])('%s is asked about: the letter o is east in some languages and west in others', (typed, example) => {
  expect(directionFrom(typed, 'dir')).toMatchObject({ ok: false, troubles: [{ example }] });
});

test.each(['361', '-5', 'north by', 'sn', '', '120 m', 'x'.repeat(100_000)])(
  '%.10s is no direction',
  (typed) => {
    expect(directionFrom(typed, 'dir').ok).toBe(false);
  },
);
