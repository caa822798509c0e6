import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };

const drafts: readonly Draft[] = [
  { kind: 'hours', at: '2026-01-20T07:00:00Z', engine: 'main', reading: 1000, by: 'Ann' },
  { kind: 'dip', at: '2026-01-21T07:00:00Z', fluid: 'gear-oil', share: 0.5 },
  {
    kind: 'topup',
    at: '2026-01-21T07:00:00Z',
    fluid: 'gear-oil',
    amount: 0.1,
    share: 1,
    from: 'gear-oil-can',
  },
  { kind: 'dip', at: '2026-01-22T07:00:00Z', fluid: 'gear-oil', off: 'below', by: 'Bo' },
  { kind: 'strike', at: '2026-01-23T07:00:00Z', entry: 'aaaaaaaa-4', why: 'stick not wiped' },
  {
    kind: 'service',
    at: '2026-01-19T10:00:00Z',
    service: 'impeller-change',
    uses: [{ spare: 'impellers', count: 1 }],
  },
];

async function log(args: readonly string[], entries = drafts) {
  const outside = anOutside({ folders: { '.': aFolder(sandpiper, entries) } });
  const status = await run(['log', ...args], outside, noScreens);
  return { status, ...outside.written() };
}

const idsOf = (out: string) => JSON.parse(out).entries.map(({ id }: { id: string }) => id);

describe('the log', () => {
  it('is listed newest first, each with its id, struck entries marked', async () => {
    expect(await log([])).toEqual({
      status: 0,
      out: [
        'Fri 23 Jan 2026 07:00       Struck: entry aaaaaaaa-4, because stick not wiped  [aaaaaaaa-5]',
        'Thu 22 Jan 2026 07:00  Bo   STRUCK: Gear oil: nothing on the stick  [aaaaaaaa-4]',
        'Wed 21 Jan 2026 07:00       Gear oil: 0.1 L poured in, now at the full mark, from Gear oil in cans  [aaaaaaaa-3]',
        'Wed 21 Jan 2026 07:00       Gear oil: 50 % of the way from low to full  [aaaaaaaa-2]',
        'Tue 20 Jan 2026 07:00  Ann  Main engine: meter at 1000 h  [aaaaaaaa-1]',
        'Mon 19 Jan 2026 10:00       Raw-water impeller: done, with 1 Raw-water impellers  [aaaaaaaa-6]',
        '',
      ].join('\n'),
      err: '',
    });
  });

  it.each([
    [
      ['--item', 'gear-oil'],
      [4, 3, 2],
    ],
    [['--item', 'gear-oil-can'], [3]],
    [['--item', 'impellers'], [6]],
    [
      ['--kind', 'dip'],
      [4, 2],
    ],
    [['--kind', 'dip', '--item', 'main'], []],
    [
      ['--since', '2026-01-21T07:00Z'],
      [5, 4, 3, 2],
    ],
    [
      ['--since', '2026-01-22'],
      [5, 4],
    ],
    [
      ['--at', '2026-01-21T08:00Z'],
      [3, 2, 1, 6],
    ],
  ])('shows with %j only the entries that fit', async (args, numbers) => {
    const { status, out } = await log(['--json', ...args]);
    expect(status).toBe(0);
    expect(idsOf(out)).toEqual(numbers.map((number) => `aaaaaaaa-${number}`));
  });

  it('gives entries as they were saved, with whether they were struck', async () => {
    const { out } = await log(['--json', '--kind', 'dip']);
    expect(JSON.parse(out)).toMatchObject({
      format: 1,
      boat: 'Sandpiper',
      entries: [
        { id: 'aaaaaaaa-4', fluid: 'gear-oil', off: 'below', by: 'Bo', struck: true },
        { id: 'aaaaaaaa-2', fluid: 'gear-oil', share: 0.5, struck: false },
      ],
    });
  });

  it('says when it is empty', async () => {
    expect(await log([], [])).toEqual({ status: 0, out: 'no entries\n', err: '' });
  });

  it('says how much happened after the moment asked for, and lists none of it', async () => {
    const { out } = await log(['--at', '2026-01-21T08:00Z']);
    expect(out).toContain('Tue 20 Jan 2026 07:00');
    expect(out).not.toContain('22 Jan 2026');
    expect(out).toMatch(/\n2 entries later than the moment asked for are not listed\.\n$/u);
    expect(JSON.parse((await log(['--json', '--at', '2026-01-21T08:00Z'])).out).later).toBe(2);
    expect((await log([])).out).not.toContain('later than');
  });

  it('knows no item the boat and the log do not name, and offers the nearest', async () => {
    expect(await log(['--item', 'gear-oli'])).toEqual({
      status: 66,
      out: '',
      err: 'there is no item "gear-oli"\nTry: gear-oil\n',
    });
  });

  it('shows entries about an item the boat no longer has', async () => {
    const gone: readonly Draft[] = [{ kind: 'dip', at: '2026-01-21T07:00:00Z', fluid: 'old-tank', level: 3 }];
    const { status, out } = await log(['--item', 'old-tank', '--json'], gone);
    expect(status).toBe(0);
    expect(idsOf(out)).toEqual(['aaaaaaaa-1']);
  });

  it('cannot be made to move the cursor, by an entry or a name', async () => {
    const hostile: readonly Draft[] = [
      { kind: 'remark', at: '2026-01-21T07:00:00Z', text: 'a\u001b[2Jb\nc\u202ed', by: '\u009b31m' },
    ];
    const { out } = await log([], hostile);
    expect(out).toBe('Wed 21 Jan 2026 07:00  \ufffd31m  A\u241b[2Jb c\ufffdd  [aaaaaaaa-1]\n');
  });
});
