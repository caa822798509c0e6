import { existsSync, readFileSync } from 'node:fs';
import { test } from 'vitest';
import { plainText } from '../../source/forecast/plain-text.ts';

/** A test over real bulletins beside the repository. Where they are absent it is skipped, and its title says so. */
export function testBulletins(promise: string, check: (text: (name: string) => string) => void): void {
  const folder = new URL('../../../shared/checks/weather/bulletins/', import.meta.url);
  const present = existsSync(folder);
  const title = `${promise} (../shared/checks/weather/bulletins${present ? '' : ': skipped, not here'})`;
  const text = (name: string) => plainText(readFileSync(new URL(name, folder), 'utf8')).text;
  test.skipIf(!present)(title, () => check(text));
}
