import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };
const at = '2026-02-03T07:20:00Z';
const short: readonly Draft[] = [
  ...healthyLog.filter((draft) => draft.kind !== 'count' || draft.spare !== 'fuses'),
  { kind: 'use', at, spare: 'impellers', count: 1 },
  { kind: 'count', at, spare: 'gear-oil-can', count: 0.8 },
];

async function stores(args: readonly string[], boat: object = sandpiper, log = short) {
  const outside = anOutside({ folders: { '.': aFolder(boat, log) } });
  const status = await run(['stores', ...args], outside, noScreens);
  return { status, ...outside.written() };
}

const renamed = (name: string, locker?: string) => ({
  ...sandpiper,
  spares: sandpiper.spares.map((spare) =>
    spare.id === 'impellers' ? { ...spare, name, ...(locker === undefined ? {} : { locker }) } : spare,
  ),
});

describe('the stores', () => {
  it('are a page: short first, with what takes them, where they are and what to buy; then what nobody counted', async () => {
    expect(await stores([])).toEqual({
      status: 0,
      err: '',
      out: `SANDPIPER: STORES, as of Tue 3 Feb 2026 07:40 (UTC)

                     ABOARD  SHORT THIS PASSAGE  ENOUGH  STOWED
Raw-water impellers  1       less than 1 in 100  0       port settee
    watch: 1 aboard, 2 wanted.
    for Raw-water impeller (1)
Gear oil in cans     0.8 L   -                   -       -
    watch: 0.8 L aboard, 1.3 L wanted.
    for Gear oil
Pencil anodes        4       -                   -       -
    for Heat-exchanger pencil anode (1)

ENOUGH: the stock that does in 95 of 100 passages.

TO BUY: 2 things, about 40, 1 without a price
  1 x Raw-water impellers; 1 aboard of 2 wanted; about 40; stowed: port settee
  0.5 L of Gear oil in cans; 0.8 L aboard of 1.3 L wanted

NOT ENTERED YET (1): Fuses
`,
    });
  });

  it('have the figures of the verdict in JSON', async () => {
    const { out } = await stores(['--json']);
    const document = JSON.parse(out);
    const verdict = anOutside({ folders: { '.': aFolder(sandpiper, short) } });
    await run(['verdict', '--json'], verdict, noScreens);
    const { items } = JSON.parse(verdict.written().out);
    for (const store of document.stores) {
      const { count, buy, shortChance, locker, state, reason } = items.find(
        ({ id }: { id: string }) => id === store.id,
      );
      expect(store).toMatchObject({ count, buy, shortChance, locker, state, reason });
    }
    expect(document).toMatchObject({ format: 1, boat: 'Sandpiper', cost: { total: 40, unpriced: 1 } });
    expect(document.notEntered).toEqual([{ id: 'fuses', name: 'Fuses', locker: null }]);
  });

  it('print the shopping list alone as Markdown, where nothing in a name is markup', async () => {
    const { out } = await stores(['--markdown'], renamed('Impellers *[spare](x)*'));
    expect(out).toBe(`# To buy for Sandpiper, about 40, 1 without a price

- [ ] 1 x Impellers \\*\\[spare\\]\\(x\\)\\*; 1 aboard of 2 wanted; about 40; stowed: port settee
- [ ] 0.5 L of Gear oil in cans; 0.8 L aboard of 1.3 L wanted
`);
  });

  it('print the shopping list alone as CSV', async () => {
    const { out } = await stores(['--csv'], renamed('Impellers, "long"', 'port\nsettee'));
    expect(out).toBe(
      [
        'buy,unit,name,aboard,wanted,price,cost,stowed',
        '1,each,"Impellers, ""long""",1,2,40,40,"port\nsettee"',
        '0.5,L,Gear oil in cans,0.8,1.3,,,',
        '',
      ].join('\r\n'),
    );
  });

  it.each(['=1+1', '+1', '-1', '@sum', '\t=1', '\r=1'])(
    'leave no cell that a spreadsheet would run: %j',
    async (name) => {
      const { out } = await stores(['--csv'], renamed(name, name));
      const [, row] = out.split('\r\n');
      expect(row).toMatch(/^1,each,"?'.+,"?'[^,]+$/);
      expect(row).not.toMatch(/,"?[=+\-@\t\r]/);
    },
  );

  it('have an empty list where nothing is to be bought', async () => {
    expect((await stores([], sandpiper, healthyLog)).out).toContain('TO BUY: nothing\n');
    expect((await stores(['--markdown'], sandpiper, healthyLog)).out).toBe(
      '# To buy for Sandpiper\n\nNothing.\n',
    );
    expect((await stores(['--csv'], sandpiper, healthyLog)).out.split('\r\n')).toHaveLength(2);
  });

  it('never say "nothing" where nothing was counted without saying so', async () => {
    const { out } = await stores([], sandpiper, []);
    expect(out).toContain('NOT ENTERED YET (4): Raw-water impellers, Gear oil in cans, Pencil anodes, Fuses');
  });

  it('take one form at a time', async () => {
    const { status, err } = await stores(['--csv', '--json']);
    expect(status).toBe(64);
    expect(err).toContain('"--json --csv" is not understood');
  });

  it('draw nothing that moves a cursor', async () => {
    const evil = renamed('a\u001b[2Jb', '\u202ec');
    for (const args of [[], ['--markdown'], ['--csv'], ['--json']]) {
      const { out } = await stores(args, evil);
      expect(out).not.toMatch(/[\u001b\u202e]/);
    }
  });
});
