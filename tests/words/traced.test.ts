import { describe, expect, it } from 'vitest';
import { ownTables } from '../../source/tracing/tables.ts';
import { tablesOf, thingsOf } from '../../source/words/traced.ts';
import { aTemplateBoat } from '../helpers/template-boat.ts';

describe('what can be traced', () => {
  it('is, by every table of ours, something a new boat has, with a page of its own on the board', () => {
    const from = { boat: aTemplateBoat(), own: { tables: [], troubles: [] } };
    const reached = thingsOf(from.boat).flatMap(({ id }) => tablesOf(from, id).map((table) => table.id));
    expect(new Set(reached)).toEqual(new Set(ownTables().map(({ id }) => id)));
  });
});
