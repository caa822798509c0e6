import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noBoard = { board: async () => 70 };
const now = Date.parse('2026-03-01T07:30:00Z');
const rows = 'w 15-20 g26 1.5-2m 7s\nsw 12 1.2m\n=\nnw 8-12 g16 0.8m\n';

/** Runs `forecast` on a boat in memory, with that on standard input and those answers to what is asked. */
async function forecast(args: readonly string[], input: string, answers: readonly string[] = []) {
  const folder = aFolder(sandpiper);
  const outside = anOutside({ folders: { boat: folder }, now, input, answers });
  const status = await run(['forecast', ...args, '--boat', 'boat'], outside, noBoard);
  return { status, ...outside.written(), folder, outside };
}

describe('forecast', () => {
  it('shows what was understood, row by row, and takes nothing in unless told to', async () => {
    const { status, out, err, folder } = await forecast(['-', '--issued', '06:00'], rows);
    expect(out).toBe(
      `Rows typed as they were heard, issued Sun 1 Mar 2026 06:00, 1 h 30 min old.

Everywhere
  from             for          wind             gusts  seas        period  squalls
  Sun 1 Mar 07:30  10 h 30 min  15 to 20 kn  W   26 kn  1.5 to 2 m  7 s     -
  Sun 1 Mar 18:00  12 h         12 kn        SW  -      1.2 m       -       -
  Mon 2 Mar 06:00  12 h         12 kn        SW  -      1.2 m       -       -
  Mon 2 Mar 18:00  12 h         8 to 12 kn   NW  16 kn  0.8 m       -       -
`,
    );
    expect([status, err, folder.forecasts.size]).toEqual([0, 'Not taken in.\n', 0]);
  });

  it('takes it in with --yes, once however often, and lists it as the one that counts', async () => {
    const { status, err, folder, outside } = await forecast(['-', '--issued', '06:00', '--yes'], rows);
    expect([status, folder.forecasts.size]).toEqual([0, 1]);
    expect(err).toMatch(/^Taken in: forecasts\/20260301T0600Z-[0-9a-f]{12}\.json\n$/);
    await run(['forecast', '-', '--issued', '06:00', '--yes', '--boat', 'boat'], outside, noBoard);
    expect(folder.forecasts.size).toBe(1);
    const again = anOutside({ folders: { boat: folder }, now });
    await run(['forecast', '--boat', 'boat'], again, noBoard);
    expect(again.written().out).toBe(
      `      issued           age         to come   48 h: wind  gusts  seas    as
*  1  Sun 1 Mar 06:00  1 h 30 min  1 d 23 h  17.5 kn     26 kn  1.75 m  typed

Number 1 counts: it is the newest issued. Another: hoveshort forecast use
<number>

Nothing is known yet of how far forecasts are off here: enter what the weather
  is doing (hoveshort record weather wind=18 seas=1.2), best under way.
`,
    );
  });

  it('lets the skipper choose which of several counts, until a newer one is taken in', async () => {
    const { folder } = await forecast(['-', '--issued', '06:00', '--yes'], rows);
    const later = 'w 30-35 g45 4m\n=\n=\n';
    const at = (minutes: number, args: readonly string[], input = '') => {
      const outside = anOutside({ folders: { boat: folder }, now: now + minutes * 60_000, input });
      return run([...args, '--boat', 'boat', '--json'], outside, noBoard).then((status) => ({
        status,
        ...outside.written(),
      }));
    };
    const counting = async (minutes: number) => {
      const { forecast: one } = JSON.parse((await at(minutes, ['verdict'])).out);
      return [one.issuedAt.slice(11, 16), one.chosen];
    };
    await at(1, ['forecast', '-', '--issued', '07:00', '--yes'], later);
    expect(await counting(2)).toEqual(['07:00', false]);
    expect((await at(3, ['forecast', 'use', '2'])).status).toBe(0);
    expect(await counting(4)).toEqual(['06:00', true]);
    const { forecasts } = JSON.parse((await at(5, ['forecast'])).out);
    expect(forecasts).toMatchObject([
      { counts: false, chosen: false, ahead: { wind: 32.5, gust: 45, seas: 4 } },
      { counts: true, chosen: true, ahead: { wind: 17.5, gust: 26, seas: 1.75 } },
    ]);
    await at(6, ['forecast', '-', '--issued', '07:15', '--yes'], rows.replace('15-20', '15'));
    expect(await counting(7)).toEqual(['07:15', false]);
    await at(8, ['forecast', 'use', '20260301T0600Z']);
    await at(9, ['forecast', 'use', 'newest']);
    expect(await counting(10)).toEqual(['07:15', false]);
    const wrong = await at(11, ['forecast', 'use', '9']);
    expect([wrong.status, wrong.err.includes('"9"')]).toEqual([66, true]);
  });

  it('asks on a terminal when it was issued, again after nonsense, and whether to take it in', async () => {
    const { status, folder, out } = await forecast(['-'], rows, ['soon', 'yesterday 23:00', 'yes']);
    expect([status, folder.forecasts.size]).toEqual([0, 1]);
    expect(out).toContain('issued Sat 28 Feb 2026 23:00, 8 h 30 min old');
  });

  it('takes no for an answer', async () => {
    const { err, folder } = await forecast(['-', '--issued', '06:00'], rows, ['no']);
    expect([err, folder.forecasts.size]).toEqual(['Not taken in.\n', 0]);
  });

  it.each([
    ['nothing', '', 65, 'empty'],
    ['rows without an issue time and nobody to ask', rows, 65, 'does not say when it was issued'],
    ['a row that makes no sense', 'w 15-20 plenty 2m\n', 65, 'row 1'],
    ['a picture', '\u0089PNG\r\n', 65, ''],
    ['a web page', '<html><body>w 15</body></html>', 65, 'web page'],
  ])('says what is wrong with %s, and takes nothing in', async (_, input, expected, said) => {
    const { status, out, err, folder } = await forecast(['-', '--yes'], input);
    expect([status, out, folder.forecasts.size]).toEqual([expected, '', 0]);
    expect(err).toContain(said);
    expect(err).not.toMatch(/invalid|illegal|failed to|please|simply/i);
  });

  it('says that a file is not there', async () => {
    const { status, err } = await forecast(['coastal.txt'], '');
    expect([status, err.includes('coastal.txt')]).toEqual([66, true]);
  });

  it('is in one JSON document for scripts', async () => {
    const { out } = await forecast(['-', '--issued', '06:00', '--json'], rows);
    expect(JSON.parse(out).places[0].steps).toHaveLength(4);
  });
});
