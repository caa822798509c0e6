import { describe, expect, it } from 'vitest';
import { readTable } from '../../source/tracing/read-table.ts';
import { ownTables, tablesFor, tablesWith } from '../../source/tracing/tables.ts';
import { sayTrouble } from '../../source/words/troubles.ts';

const good = ownTables()[0]!;
const said = (change: object) => {
  const read = readTable(JSON.stringify({ ...good, ...change }, null, 2), 'tracing/mine.json');
  return read.ok ? [] : read.troubles.map(sayTrouble);
};

describe('a table of the owner', () => {
  it('is read as ours are, and takes the place of ours of the same id', () => {
    const read = readTable(JSON.stringify({ ...good, title: 'mine' }), 'tracing/mine.json');
    expect(read.ok).toBe(true);
    const tables = tablesWith(read.ok ? [read.value] : []);
    expect(tables.filter(({ id }) => id === good.id).map(({ title }) => title)).toEqual(['mine']);
    expect(tables).toHaveLength(ownTables().length);
  });

  it('goes before ours for a thing it names', () => {
    const own = { ...good, id: 'mine', for: { ...good.for, words: [], items: ['box'] } };
    const fit = tablesFor({ id: 'box', name: 'Gear box oil', kind: 'fluid' }, tablesWith([own]));
    expect(fit.map(({ id }) => id)).toEqual(['mine']);
  });

  it('with a likelihood outside 0 to 1 is refused, with the line', () => {
    const clues = good.clues.map((clue) => ({ ...clue, chances: { ...clue.chances, plug: 1.2 } }));
    expect(said({ clues })[0]).toMatch(/line \d+: clues\[0\]\.chances\.plug is 1\.2/u);
  });

  it('with priors that do not add up is refused, with their sum', () => {
    expect(said({ somethingElse: 0.5 })[0]).toContain('they make 1.44');
  });

  it('with a chance for a cause it does not have, or none for one it has, is refused', () => {
    const [first, ...rest] = good.clues;
    const { plug: _, ...others } = first!.chances;
    const troubles = said({ clues: [{ ...first, chances: { ...others, plgu: 0.5 } }, ...rest] });
    expect(troubles.join('\n')).toMatch(/"?plug"? is missing|plug/u);
    expect(troubles).toHaveLength(2);
  });

  it.each([
    '',
    '{',
    '[]',
    'null',
    '{"format":2}',
    '{"format":1,"causes":[{}],"clues":[{"chances":{"__proto__":1}}]}',
  ])('that is %j is a trouble, never a fault', (text) => {
    const read = readTable(text, 'tracing/mine.json');
    expect(read.ok).toBe(false);
    if (!read.ok) for (const trouble of read.troubles) expect(sayTrouble(trouble)).not.toBe('');
  });
});

describe('our own tables', () => {
  it('pass the same checks as an owner\u2019s', () => {
    for (const table of ownTables()) {
      const read = readTable(JSON.stringify(table), table.id);
      expect(read.ok ? [] : read.troubles.map(sayTrouble), table.id).toEqual([]);
    }
  });

  it('each find the items they are for, by the usual names', () => {
    const ids = (kind: string, name: string, fuel = false) =>
      tablesFor({ id: name.toLowerCase().replaceAll(' ', '-'), name, kind, fuel }, ownTables()).map(
        ({ id }) => id,
      );
    expect(ids('fluid', 'Gear oil')).toEqual(['gear-oil']);
    expect(ids('fluid', 'Engine oil')).toEqual(['engine-oil']);
    expect(ids('fluid', 'Coolant')).toEqual(['coolant']);
    expect(ids('fluid', 'Petrol', true)).toEqual(['fuel']);
    expect(ids('fluid', 'Fresh water')).toEqual([]);
    expect(ids('check', 'Bilge pump, times a day')).toEqual(['bilge']);
    expect(ids('check', 'Bilge float worked by hand')).toEqual([]);
    expect(ids('check', 'Charging voltage')).toEqual(['charging']);
    expect(ids('engine', 'Main engine')).toEqual(['overheating', 'will-not-start']);
    expect(ids('anode', 'Shaft anode')).toEqual(['anode-wear']);
  });
});
