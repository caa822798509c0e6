import { expect, test } from 'vitest';
import { stream } from '../../source/maths/stream.ts';

const drawn = (
  count: number,
  seed: number,
  name: string,
  kind: 'fillUniform' | 'fillNormal' = 'fillUniform',
) => {
  const out = new Float64Array(count);
  stream(seed, name)[kind](out);
  return out;
};

const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;

const correlation = (a: Float64Array, b: Float64Array) => {
  const centred = (values: Float64Array) => {
    const middle = mean(values);
    return values.map((value) => value - middle);
  };
  const [x, y] = [centred(a), centred(b)];
  const product = (p: Float64Array, q: Float64Array) => p.reduce((sum, value, i) => sum + value * q[i]!, 0);
  return product(x, y) / Math.sqrt(product(x, x) * product(y, y));
};

test('the first values stay the same when more are drawn', () => {
  for (const kind of ['fillUniform', 'fillNormal'] as const) {
    expect(drawn(65_536, 1, 'gear-oil', kind).subarray(0, 4096)).toEqual(drawn(4096, 1, 'gear-oil', kind));
  }
});

test('one by one or by the array, the values are the same', () => {
  const one = stream(7, 'speed');
  expect(Array.from({ length: 5 }, () => one.uniform())).toEqual([...drawn(5, 7, 'speed')]);
  const other = stream(7, 'speed');
  expect(Array.from({ length: 5 }, () => other.normal())).toEqual([...drawn(5, 7, 'speed', 'fillNormal')]);
});

test('every value lies strictly between 0 and 1', () => {
  const values = drawn(1_000_000, 3, 'ends');
  expect(values.every((value) => value > 0 && value < 1)).toBe(true);
});

test('a normal rises with the uniform it is made from', () => {
  const uniforms = drawn(10_000, 2, 'together');
  const normals = drawn(10_000, 2, 'together', 'fillNormal');
  const order = [...uniforms.keys()].sort((i, j) => uniforms[i]! - uniforms[j]!);
  expect(order.every((here, n) => n === 0 || normals[order[n - 1]!]! <= normals[here]!)).toBe(true);
});

test('uniforms are even: 100 bins by chi-square, within five sds of its mean', () => {
  const bins = new Array<number>(100).fill(0);
  for (const value of drawn(1_000_000, 1, 'even')) bins[Math.floor(value * 100)]! += 1;
  const chiSquare = bins.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
  expect(Math.abs(chiSquare - 99)).toBeLessThan(5 * Math.sqrt(2 * 99));
});

test('normals have mean 0, variance 1 and kurtosis 3, within five standard errors', () => {
  const count = 1_000_000;
  const values = drawn(count, 1, 'bell', 'fillNormal');
  expect(Math.abs(mean(values))).toBeLessThan(5 / Math.sqrt(count));
  expect(Math.abs(mean(values.map((value) => value ** 2)) - 1)).toBeLessThan(5 * Math.sqrt(2 / count));
  expect(Math.abs(mean(values.map((value) => value ** 4)) - 3)).toBeLessThan(5 * Math.sqrt(96 / count));
});

test('names and seeds that differ by little give streams that have nothing in common', () => {
  const pairs = [
    [drawn(65_536, 1, 'oil'), drawn(65_536, 1, 'oim')],
    [drawn(65_536, 1, 'oil'), drawn(65_536, 2, 'oil')],
    [drawn(65_536, 1, ''), drawn(65_536, 2, '')],
    [drawn(65_536, 11, '1'), drawn(65_536, 1, '11')],
    [drawn(65_536, 1, 'ab'), drawn(65_536, 1, 'ba')],
  ] as const;
  for (const [a, b] of pairs) {
    expect(Math.abs(correlation(a, b))).toBeLessThan(5 / 256);
    expect(Math.abs(correlation(a.subarray(1), b.subarray(0, -1)))).toBeLessThan(5 / 256);
  }
});

test('ten thousand names start at ten thousand even and different places', () => {
  const starts = Float64Array.from({ length: 10_000 }, (_, i) => stream(1, `spare-${i}`).uniform());
  expect(new Set(starts).size).toBe(10_000);
  expect(Math.abs(mean(starts) - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / 10_000));
  expect(Math.abs(correlation(starts.subarray(1), starts.subarray(0, -1)))).toBeLessThan(0.05);
});

test('the stream of seed 1 and "gear-oil" is the same on every machine and in every release', () => {
  const one = stream(1, 'gear-oil');
  expect([one.uniform(), one.uniform(), one.uniform()]).toEqual([
    0.6408194788201272, 0.39711062818771026, 0.6777491018733782,
  ]);
});
