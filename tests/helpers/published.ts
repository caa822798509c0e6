import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/**
 * A test over a whole file of published values, read in place beside the repository: `file` lies under ../shared/checks.
 * Where those files are absent the test is skipped, and its title says so.
 */
export function testPublished<T>(promise: string, file: string, check: (published: T) => void): void {
  const address = new URL(`../../../shared/checks/${file}`, import.meta.url);
  const present = existsSync(address);
  const title = `${promise} (../shared/checks/${file}${present ? '' : ': skipped, not here'})`;
  test.skipIf(!present)(title, () => check(JSON.parse(readFileSync(address, 'utf8'))));
}

/** Cases of such a file. */
export interface Cases<Input, Expected> {
  readonly cases: readonly { readonly input: Input; readonly expected: Expected }[];
}

/** Fails unless `actual` lies within that share of `wanted`, or that far from it. */
export function expectNear(actual: number, wanted: number, { relative = 0, absolute = 0, what = '' }): void {
  const apart = Math.abs(actual - wanted);
  const allowed = Math.max(absolute, relative * Math.abs(wanted));
  expect(
    apart <= allowed,
    `${what} ${actual} is not near ${wanted}: ${apart} apart, ${allowed} allowed`,
  ).toBe(true);
}
