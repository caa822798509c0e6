import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };
/** As it was left yesterday: what is daily is due again, what is not is not. */
const yesterday = healthyLog.map(
  (draft): Draft => ({ ...draft, at: draft.at.replace('2026-02-03', '2026-02-02') }),
);

async function round(args: readonly string[] = [], boat: object = sandpiper, columns = 80) {
  const outside = anOutside({ folders: { '.': aFolder(boat, yesterday) }, terminal: { columns } });
  const status = await run(['round', ...args], outside, noScreens);
  return { status, ...outside.written() };
}

describe('the printed round', () => {
  it('has what is due with what was found last and room to write, and names the rest', async () => {
    expect(await round()).toEqual({
      status: 0,
      err: '',
      out: `SANDPIPER: ROUND, drawn up Tue 3 Feb 2026 07:40 (UTC)

By ________________________ on ____________ at ________

1. ENGINE STOPPED: 2 looks
   Engine stopped for a look by hand, clear of shaft and belts; no cap comes off
   a hot cooling system. The maker's manual comes first.

   [ ] Main engine, hours by the meter; last 1010 h, 2 Feb 2026 (main)
       hours ____________

   [ ] House bank at dawn; at least 12.2 V; last 12.7 V, 2 Feb 2026 (house-bank)
       reads __________ V

   not due: Gear oil (next 5 Feb 2026), Fuel (next 4 Feb 2026), Fresh water
     (next 4 Feb 2026), Heat-exchanger pencil anode (next 4 Mar 2026)

2. ENGINE RUNNING: nothing due

3. BEFORE LEAVING: nothing due

   not due: Raw water flows, no weep at the plugs

Level: in the unit beside it, 1/2, full, or off (the stick). Drip: dry, wet,
drops, falls. Left empty is not looked at, which is not the same as unchanged.
To enter it afterwards, with the time of the round: hoveshort record dip
fluid=<id> level=full at="today 07:40"

This is an aid: it knows the log, not the boat. The skipper decides. Makers'
manuals, local rules and licensed people come first.
`,
    });
  });

  it('has every look when nothing was ever looked at, with its cautions', async () => {
    const fluids = [
      {
        ...sandpiper.fluids[0],
        note: 'Engine stopped. Figures: common practice, no source; yours to change.',
      },
    ];
    const outside = anOutside({ folders: { '.': aFolder({ ...sandpiper, fluids }) } });
    expect(await run(['round'], outside, noScreens)).toBe(0);
    const { out } = outside.written();
    expect(out).toContain(`   [ ] Gear oil; low 1.1 L, full 1.3 L; not looked at yet (gear-oil)
       Engine stopped.
       level __________ L added __________ L drip __________
`);
    expect(out).toContain('       left __________ % flakes ______\n');
    expect(out).toContain('       well __________\n');
    expect(out).toContain('1. ENGINE STOPPED: 4 looks, 30 min\n');
  });

  it.each([40, 80, 200])('fits on paper, and on a terminal of %s columns', async (columns) => {
    const long = { ...sandpiper, name: 'Sandpiper '.repeat(8).trim() };
    const { out } = await round([], long, columns);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(
      Math.min(80, columns),
    );
  });

  it('is told as JSON, due or not', async () => {
    const { passes, ...rest } = JSON.parse((await round(['--json'])).out);
    expect(rest).toEqual({ format: 1, boat: 'Sandpiper', at: '2026-02-03T07:40:00Z' });
    expect(passes.map(({ when }: { when: string }) => when)).toEqual(['stopped', 'running', 'leaving']);
    expect(passes[0].looks[1]).toEqual({
      id: 'gear-oil',
      kind: 'fluid',
      name: 'Gear oil',
      due: false,
      nextDue: '2026-02-05T07:00:00Z',
      last: { at: '2026-02-02T07:00:00Z', found: '1.3 L' },
      wants: 'low 1.1 L, full 1.3 L',
      unit: 'L',
      minutes: 10,
      note: null,
    });
  });

  it('wants a fluid that may reach its mark within the day, whatever its interval', async () => {
    const leaking: readonly Draft[] = [
      ...yesterday,
      { kind: 'dip', at: '2026-02-02T17:00:00Z', fluid: 'gear-oil', level: 1.2 },
      { kind: 'dip', at: '2026-02-03T07:30:00Z', fluid: 'gear-oil', level: 1.11 },
    ];
    const outside = anOutside({ folders: { '.': aFolder(sandpiper, leaking) } });
    await run(['round', '--json'], outside, noScreens);
    const look = JSON.parse(outside.written().out).passes[0].looks[1];
    expect(look).toMatchObject({ id: 'gear-oil', due: true, last: { found: '1.11 L' } });
  });

  it('draws nothing that moves a cursor', async () => {
    const { out } = await round([], { ...sandpiper, name: 'a\u001b[2J\u202eb' });
    expect(out).not.toMatch(/[\u001b\u202e]/);
  });
});
