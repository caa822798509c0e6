import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';
import { gribFile } from '../helpers/grib-files.ts';

const name = 'forecasts/gribberish_hist__multi_1.nww3.t12z_1.grib2';
const address = new URL(`../../../shared/checks/${name}`, import.meta.url);
const here = existsSync(address);
const noBoard = { board: async () => 70 };

describe('a real GRIB, from the file to the window', () => {
  it.skipIf(!here)(
    `gives a passage laid through its point hours to leave and hours not to (../shared/checks/${name}${here ? '' : ': skipped, not here'})`,
    async () => {
      const bytes = readFileSync(address);
      const leg = {
        from: [40.2, -71.25] as [number, number],
        to: [40.8, -71.25] as [number, number],
        nm: 36,
      };
      const boat = { ...sandpiper, passages: [{ ...sandpiper.passages[0]!, legs: [leg], reserveDays: 1 }] };
      const folder = aFolder(boat);
      const shown = anOutside({ folders: { boat: folder }, files: { 'a.grb': bytes }, now: 0 });
      const json = await run(['forecast', 'a.grb', '--boat', 'boat', '--json', '--yes'], shown, noBoard);
      expect(json).toBe(0);
      const forecast = JSON.parse(shown.written().out);
      expect(forecast.places.length).toBeGreaterThan(0);
      const now = Date.parse(forecast.issuedAt) + 3_600_000;
      for (const [key, kept] of folder.forecasts)
        folder.forecasts.set(key, { ...kept, receivedAt: kept.issuedAt });
      const asked = anOutside({ folders: { boat: folder }, now });
      await run(['verdict', '--boat', 'boat', '--json'], asked, noBoard);
      const document = JSON.parse(asked.written().out);
      const scores: number[] = document.curve.map(({ weather }: { weather: number }) => weather);
      expect(document.forecast.source).toBe('grib');
      expect(scores.length).toBeGreaterThan(60);
      expect(Math.max(...scores)).toBeGreaterThan(85);
      expect(Math.min(...scores)).toBeLessThan(50);
      expect(document.weatherAlone).not.toBeNull();
    },
  );
});

describe('an ensemble, from the file to the score', () => {
  const points = { from: [37.3, -27.5] as [number, number], to: [37.7, -27.5] as [number, number] };
  const limits = { ...sandpiper.limits, wind: 22, seas: 2.5 };
  const boat = {
    ...sandpiper,
    limits,
    passages: [{ ...sandpiper.passages[0]!, legs: [{ ...points, nm: 24 }], reserveDays: 0 }],
  };

  it('one member of four over every limit is one in four against leaving, and is shown before it counts', async () => {
    const now = Date.parse('2026-02-03T07:00:00Z');
    const folder = aFolder(boat);
    const shown = anOutside({ folders: { boat: folder }, files: { 'a.grb': gribFile('ensemble') }, now });
    expect(await run(['forecast', 'a.grb', '--boat', 'boat', '--yes'], shown, noBoard)).toBe(0);
    const { out } = shown.written();
    expect(out).toContain('an ensemble of 4 members: the simulated passages meet them in turn');
    expect(out).toMatch(/4 members of an ensemble, wind up to 4\d(\.\d)? kn, seas up to 5\.\d+ m/);
    const asked = anOutside({ folders: { boat: folder }, now });
    await run(['verdict', '--boat', 'boat', '--json'], asked, noBoard);
    const { score } = JSON.parse(asked.written().out);
    expect(score.weather).toBe(75);
    await run(['forecast', '--boat', 'boat'], asked, noBoard);
    expect(asked.written().out).toContain('grib, 4 members,');
  });
});
