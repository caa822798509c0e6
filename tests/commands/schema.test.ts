import { expect, it } from 'vitest';
import { boatJsonSchema } from '../../source/boat/schema.ts';
import { run } from '../../source/commands/run.ts';
import { anOutside } from '../helpers/an-outside.ts';

it('prints the JSON Schema of boat.json without needing a boat', async () => {
  const outside = anOutside({});
  expect(await run(['schema'], outside, { board: () => Promise.reject(new Error('opened')) })).toBe(0);
  const { out, err } = outside.written();
  expect(err).toBe('');
  expect(out.endsWith('}\n')).toBe(true);
  expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(boatJsonSchema())));
});
