import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };

async function asked(...given: readonly (string | readonly Draft[])[]) {
  const log = given.find((one) => typeof one !== 'string') ?? healthyLog;
  const args = given.filter((one) => typeof one === 'string');
  const outside = anOutside({ folders: { '.': aFolder(sandpiper, log) } });
  const status = await run(args, outside, noScreens);
  return { status, ...outside.written() };
}

describe('an item', () => {
  it('is as it stands in the verdict, with its entries', async () => {
    const { status, out } = await asked('item', 'fuel', '--json');
    const verdict = JSON.parse((await asked('verdict', '--json')).out);
    const { entries, later, trouble, found, ...item } = JSON.parse(out);
    expect(later).toBe(0);
    expect([trouble, found]).toEqual([[], []]);
    expect(status).toBe(0);
    expect(item).toEqual(verdict.items.find(({ id }: { id: string }) => id === 'fuel'));
    expect(entries).toMatchObject([{ kind: 'dip', fluid: 'fuel', level: 200, struck: false }]);
  });

  it('of a fluid has the way its level went, and the end of the stretch, that the page draws', async () => {
    const { levels, now, atEnd } = JSON.parse((await asked('item', 'fuel', '--json')).out);
    expect(levels.readings).toMatchObject([{ value: 200, off: 'on' }]);
    const [today, end] = levels.ahead;
    expect(levels.line.at(-1)).toEqual(today);
    expect(today.mean).toBe(now.value);
    expect([end.mean, end.p10, end.p90]).toEqual([atEnd.mean, atEnd.p10, atEnd.p90]);
    expect(Date.parse(end.at)).toBeGreaterThan(Date.parse(today.at));
  });

  it('is put into sentences, its entries under them', async () => {
    const { status, out, err } = await asked('item', 'impellers');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^Raw-water impellers: fit; important\.\n/);
    expect(out).toContain('\n2 aboard.\n');
    expect(out).toContain('\nStowed: port settee.\n');
    expect(out).toMatch(
      /\n\nTue 3 Feb 2026 07:00 {4}Raw-water impellers: 2 aboard by count {2}\[aaaaaaaa-10\]\n$/,
    );
  });

  it('says which readings of it, and of its engine, were left out, the newest of many', async () => {
    const odd = [1, 2, 3, 4].map((day) => ({
      kind: 'dip' as const,
      at: `2026-02-02T0${day}:00:00Z`,
      fluid: 'gear-oil',
      level: 9 + day,
    }));
    const back = { kind: 'hours' as const, at: '2026-01-25T07:00:00Z', engine: 'main', reading: 900 };
    const log = [...healthyLog, ...odd, back];
    const said = (await asked(log, 'item', 'gear-oil')).out;
    expect(said).toContain('"gear-oil" reads 13 L on 2026-02-02, and it holds 1.5 L');
    expect(said).not.toContain('reads 10 L');
    expect(said).toContain('and 2 more readings left out');
    expect(JSON.parse((await asked(log, 'item', 'gear-oil', '--json')).out).trouble).toHaveLength(5);
    expect((await asked(log, 'item', 'water')).out).not.toContain('reads');
  });

  it('is wanted by its id', async () => {
    expect(await asked('item')).toEqual({
      status: 64,
      out: '',
      err: 'the id of an item is wanting\nTry: hoveshort item gear-oil\n',
    });
  });

  it('is not found by a wrong one, and the nearest is offered', async () => {
    expect(await asked('item', 'fule')).toEqual({
      status: 66,
      out: '',
      err: 'there is no item "fule"\nTry: fuel\n',
    });
  });

  it('has sentences of every kind of item', async () => {
    for (const id of ['gear-oil', 'pencil', 'fuses', 'impeller-change', 'house-bank', 'flares']) {
      const { status, out } = await asked('item', id);
      expect(status).toBe(0);
      expect(out).not.toMatch(/undefined|NaN|null|Infinity/);
    }
  });
});
