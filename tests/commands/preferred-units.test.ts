import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import { forecastSchema } from '../../source/forecast/forecast.ts';
import { FILE_UNITS, prefer } from '../../source/words/preferred.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';
import { otherUnits } from '../helpers/other-units.ts';
import { namedInstants } from '../helpers/sample-calendar.ts';

afterAll(() => prefer(FILE_UNITS));

const PREFERRED = {
  volume: 'US',
  height: 'ft',
  wind: 'm/s',
  clock: '12 h',
  zone: 'America/New_York',
} as const;

/** The sample boat on the morning named for hold. */
async function say(args: readonly string[], input = '') {
  const at = (name: string) => join('sample-boat', name);
  const forecasts = new Map(
    readdirSync(at('forecasts')).map((name) => [
      name,
      forecastSchema.parse(JSON.parse(readFileSync(join(at('forecasts'), name), 'utf8'))),
    ]),
  );
  const folder = aFolder(readFileSync(at('boat.json'), 'utf8'), [], { forecasts });
  for (const line of readFileSync(at('log/7kq3w9pn.ndjson')).toString('latin1').split('\n'))
    if (line !== '') folder.lines.push(Buffer.from(line, 'latin1'));
  const now = Date.parse(namedInstants.hold);
  const outside = anOutside({ folders: { sample: folder }, now, input, settings: PREFERRED });
  await run([...args, '--boat', 'sample', '--simulations', '256'], outside, {
    board: () => Promise.reject(new Error('the board was opened')),
  });
  return outside.written();
}

describe('with US measures, feet, metres a second, a 12 h clock and a zone preferred', () => {
  it.each([
    'verdict',
    'brief',
    'round',
    'stores',
    'stores --markdown',
    'forecast',
    'log',
    'item gear-oil',
    'item fuel',
    'item pencil',
    'item oil-change',
    'trace gear-oil',
    'trace bilge-pump opening=1.5in depth=2 pump=800',
    'record dip fluid=gear-oil level=1.2',
    'record weather wind=9 gust=14 seas=4',
    'record gate passage=dovetail-candlefold leg=2 from=9:40am to=11:10am',
  ])('`%s` says nothing in another unit', async (words) => {
    const { out, err } = await say(words.split(' '));
    expect(out.length).toBeGreaterThan(40);
    expect(otherUnits(`${out}\n${err}`)).toEqual([]);
  });

  it('a forecast typed in bare numbers is read in them and echoed in them', async () => {
    const { out, err } = await say(['forecast', '-', '--issued', '3:00am'], 'se 8-10 g14 4-6 7s\n');
    expect(out).toMatch(/8 to 10 m\/s +SE +14 m\/s +4 to 6 ft/u);
    expect(otherUnits(`${out}\n${err}`)).toEqual([]);
  });

  it('with --json a bare number is in knots and metres', async () => {
    const { out } = await say(
      ['forecast', '-', '--issued', '2026-06-10T06:00Z', '--json'],
      'se 8-10 g14 2 7s\n',
    );
    expect(JSON.parse(out).places[0].steps[0]).toMatchObject({ wind: [8, 10], gust: 14, seas: [2, 2] });
  });

  it('when the window opens is said in the zone preferred, in the reasons as beside the window', async () => {
    const { out } = await say(['verdict']);
    const opens = /It opens in [^,]*, (\w+ \d+ \w+ [0-9:apm]+), for/u.exec(out.replace(/\s+/gu, ' '))?.[1];
    expect(opens).toMatch(/(?:am|pm)$/u);
    expect(out).toContain(`Window: ${opens}`);
  });
});
