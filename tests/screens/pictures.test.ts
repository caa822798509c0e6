import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { PICTURES, pictures } from '../helpers/make-pictures.ts';

it('the pictures of the screens are what the screens are, byte for byte (`node tests/helpers/make-pictures.ts` makes them again)', async () => {
  const made = await pictures();
  expect(readdirSync(PICTURES).sort()).toEqual([...made.keys()].sort());
  for (const [name, text] of made) expect(readFileSync(join(PICTURES, name), 'utf8'), name).toBe(text);
});
