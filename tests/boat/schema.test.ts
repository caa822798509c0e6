import { expect, test } from 'vitest';
import { boatJsonSchema } from '../../source/boat/schema.ts';

interface Schema {
  readonly description?: string;
  readonly type?: string;
  readonly properties?: { readonly [name: string]: Schema };
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly required?: readonly string[];
}

const schema = boatJsonSchema() as Schema;

test('every field of the boat file says in the JSON Schema what it is', () => {
  const silent = fieldsOf(schema, '').filter(([, field]) => !field.description);
  expect(silent.map(([path]) => path)).toEqual([]);
});

test('every number says its unit or that it has none', () => {
  const unit =
    /litres|hour|day|month|minute|second|metre|knot|degree|nautical mile|kilogram|passages in 100|uses|unit|share|chance|share|standard deviation|people|part|money|in its|format/;
  const silent = fieldsOf(schema, '').filter(
    ([, { type, description = '' }]) => (type === 'number' || type === 'integer') && !unit.test(description),
  );
  expect(silent).toEqual([]);
});

test('an editor asks only for the format and the name', () => {
  expect(schema.required).toEqual(['format', 'name']);
});

test('made twice it is the same', () => {
  expect(boatJsonSchema()).toEqual(schema);
});

function fieldsOf(one: Schema, path: string): (readonly [string, Schema])[] {
  const inner = [one.items, ...(one.anyOf ?? [])].filter((part) => part !== undefined);
  return [
    ...Object.entries(one.properties ?? {}).flatMap(([name, field]) => [
      [`${path}.${name}`, field] as const,
      ...fieldsOf(field, `${path}.${name}`),
    ]),
    ...inner.flatMap((part) => fieldsOf(part, path)),
  ];
}
