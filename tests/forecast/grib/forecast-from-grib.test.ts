import { describe, expect, it } from 'vitest';
import type { Content } from '../../../source/forecast/content.ts';
import { forecastSchema, type Step } from '../../../source/forecast/forecast.ts';
import { forecastFromGrib, type Point } from '../../../source/forecast/grib/forecast-from-grib.ts';
import { readGrib } from '../../../source/forecast/grib/read.ts';
import { expected, gribFile } from '../../helpers/grib-files.ts';

const KN = 3600 / 1852;
const island: Point = { place: 'the island', at: [37.5, -27] };
const open: Point = { place: 'open water', at: [36.5, -26] };

/** ecCodes' value of one field of a file at a point of its grid. */
function known(name: string, field: number, [lat, lon]: readonly [number, number]): number | null {
  return expected[name]![field]!.points.find(([y, x]) => y === lat && (x - lon) % 360 === 0)![2];
}

async function taken(name: string, ...points: readonly Point[]): Promise<Content> {
  return takenFrom(gribFile(name), ...points);
}

async function takenFrom(octets: Uint8Array, ...points: readonly Point[]): Promise<Content> {
  const read = await forecastFromGrib(readGrib(octets), points);
  if (!read.ok) throw new Error(JSON.stringify(read.troubles));
  return read.value;
}

describe('a GRIB taken in at a point', () => {
  it('is a forecast of the one shape all forecasts have', async () => {
    const content = await taken('forecast', island, open);
    const whole = { format: 1, receivedAt: '2026-02-03T12:00:00.000Z', sha256: 'a'.repeat(64), ...content };
    expect(forecastSchema.safeParse(whole).error).toBeUndefined();
    expect(content).toMatchObject({
      source: 'grib',
      issuer: 'US National Weather Service, NCEP',
      issuedAt: '2026-02-03T06:00:00.000Z',
      notRead: [],
      problems: [],
    });
  });

  it('has at a point of the grid and a time of the file exactly what the file has there', async () => {
    const { places } = await taken('forecast', open);
    const at = [36.5, -26] as const;
    for (const [time, hours] of [0, 6, 12, 18, 24].entries()) {
      const value = (field: number) => known('forecast', time * 6 + field, at)!;
      const step = places[0]!.steps[hours]!;
      expect(step.from).toBe(new Date(Date.UTC(2026, 1, 3, 6 + hours)).toISOString());
      expect(step.wind![0]).toBeCloseTo(Math.hypot(value(0), value(1)) * KN, 1);
      const from = ((Math.atan2(-value(0), -value(1)) * 180) / Math.PI + 360) % 360;
      expect(step.dir).toBeCloseTo(from, 0);
      expect(step.gust).toBeCloseTo(value(2) * KN, 1);
      expect(step.pressure).toBeCloseTo(value(3) / 100, 1);
      expect(step.seas![0]).toBeCloseTo(value(4), 3);
      expect([step.period, step.periodKind]).toEqual([expect.closeTo(value(5), 1), 'peak']);
    }
  });

  it('goes hour by hour, straight from one time to the next, the wind by its parts', async () => {
    const { places } = await taken('forecast', open);
    const { steps } = places[0]!;
    expect(steps).toHaveLength(25);
    const seas = (hour: number) => steps[hour]!.seas![0];
    expect(seas(2)).toBeCloseTo(seas(0) + (seas(6) - seas(0)) / 3, 2);
    const middle = parts(steps[9]!).map((part, i) => 2 * part - parts(steps[6]!)[i]!);
    expect(middle[0]).toBeCloseTo(parts(steps[12]!)[0], 1);
    expect(middle[1]).toBeCloseTo(parts(steps[12]!)[1], 1);
  });

  it('lies between the four points around it', async () => {
    const { places } = await taken('forecast', { place: '', at: [36.625, -26.125] });
    const four = [
      [36.5, -26, 0.75 * 0.75],
      [36.5, -26.5, 0.75 * 0.25],
      [37, -26, 0.25 * 0.75],
      [37, -26.5, 0.25 * 0.25],
    ] as const;
    const wanted = four.reduce(
      (sum, [lat, lon, weight]) => sum + weight * known('forecast', 4, [lat, lon])!,
      0,
    );
    expect(places[0]!.steps[0]!.seas![0]).toBeCloseTo(wanted, 3);
  });

  it('on land has the seas of the nearest sea and says how far that is, and the wind of its own place', async () => {
    expect(known('forecast', 4, [37.5, -27])).toBeNull();
    const { places } = await taken('forecast', island);
    const [step] = places[0]!.steps;
    expect(places[0]!.nearestSeaNm).toBeCloseTo(60 * 0.5 * Math.cos((37.5 * Math.PI) / 180), 0);
    expect(step!.seas![0]).toBeCloseTo(known('forecast', 4, [37.5, -27.5])!, 3);
    expect(step!.gust).toBeCloseTo(known('forecast', 2, [37.5, -27])! * KN, 1);
  });

  it('between sea and land takes the nearest sea, never a share of nothing', async () => {
    const { places } = await taken('forecast', { place: '', at: [37.4, -27.4] });
    expect(places[0]!.nearestSeaNm).toBeCloseTo(
      60 * Math.hypot(0.1, 0.1 * Math.cos((37.5 * Math.PI) / 180)),
      0,
    );
    expect(places[0]!.steps[0]!.seas![0]).toBeCloseTo(known('forecast', 4, [37.5, -27.5])!, 3);
  });

  it('takes wind given as speed and direction by its parts too: two sides of north are north', async () => {
    const content = await taken('speed-and-direction', { place: '', at: [42, -11.75] });
    // Grid values there: 350 and 10 degrees.
    expect(content.places[0]!.steps[0]!.dir! > 350 || content.places[0]!.steps[0]!.dir! < 10).toBe(true);
  });

  it('of several fields of wind takes 10 m before the surface, whatever stands first', async () => {
    const surface = gribFile('speed-and-direction');
    const aloft = gribFile('several-fields');
    const [first, second] = await Promise.all(
      [joined(surface, aloft), joined(aloft, surface)].map((file) =>
        takenFrom(file, { place: '', at: [41.5, -11.5] }),
      ),
    );
    expect(first!.places[0]!.steps.map(({ wind }) => wind)).toEqual(
      second!.places[0]!.steps.map(({ wind }) => wind),
    );
  });

  it('keeps the greatest gust of a span through all of it', async () => {
    const { places } = await taken('greatest-gust-2', { place: '', at: [42, -12] });
    const gust = known('greatest-gust-2', 0, [42, -12])! * KN;
    expect(places[0]!.steps.map((step) => step.gust)).toEqual(
      [1, 2, 3, 4].map(() => expect.closeTo(gust, 1)),
    );
  });

  it('has one hour of a file of one time', async () => {
    const { places } = await taken('one-point', { place: '', at: [42, -12] });
    expect(places[0]!.steps).toMatchObject([
      { from: '2026-02-03T06:00:00.000Z', to: '2026-02-03T07:00:00.000Z', wind: null, gust: null },
    ]);
  });
});

describe('what the skipper sees of a GRIB before it counts', () => {
  it('says which points lie outside the grid and keeps the others', async () => {
    const content = await taken('forecast', open, { place: 'far off', at: [10, 60] });
    expect(content.places.map(({ place }) => place)).toEqual(['open water']);
    expect(content.problems).toEqual([{ kind: 'outside the area', where: 'far off' }]);
  });

  it('says what was not taken and why', async () => {
    const { notRead } = await taken('swell-parts', { place: '', at: [42, -12] });
    expect(notRead[0]).toEqual({
      where: 'message 1',
      text: 'significant height of swell, level not read: part 1 of the swell (1 field)',
    });
  });

  it('says what is cut off a download', async () => {
    const octets = gribFile('forecast').subarray(0, -50);
    const { problems, places } = await takenFrom(octets, open);
    expect(problems).toContainEqual({
      kind: 'cut short',
      where: 'message 30',
      text: 'peak wave period for 2026-02-04T06:00:00.000Z, 50 octets missing',
    });
    expect(places[0]!.steps.at(-1)!.period).toBeNull();
  });

  it('says that there is no sea where there is none', async () => {
    const { problems, places } = await takenFrom(
      joined(gribFile('bitmap-all-land'), gribFile('several-fields')),
      { place: 'inland', at: [41, -10] },
    );
    expect(problems).toContainEqual({ kind: 'no sea here', where: 'inland' });
    expect(places[0]!.steps.every(({ seas }) => seas === null)).toBe(true);
  });

  it('takes values that cannot be for missing and says so, and shows points that stand apart', async () => {
    const octets = gribFile('ieee-32');
    const values = new DataView(octets.buffer, octets.length - 4 - 63 * 4);
    values.setFloat32(0, 55);
    values.setFloat32(40 * 4, 12);
    const { problems, places } = await takenFrom(octets, { place: '', at: [42, -12] });
    const where = 'significant height of wind waves and swell for 2026-02-03T06:00:00.000Z';
    expect(problems).toContainEqual({ kind: 'cannot be', where, value: 55 });
    expect(problems).toContainEqual({ kind: 'apart from its neighbours', where, value: expect.any(Number) });
    expect(places[0]!.steps[0]!.seas![0]).toBeLessThan(7);
    expect(places[0]!.nearestSeaNm).toBeGreaterThan(0);
  });

  it.each([
    ['refused-lambert', ['temperature, grid not read: Lambert conformal (1 field)']],
    ['wind-aloft', ['wind u, level not read: 100 m (1 field)']],
    ['mangled-seven-bits', ['the file, garbled: sent as text, seven bits; send it as binary']],
  ])('%s: a file without anything of use says what is in it', async (name, found) => {
    const read = await forecastFromGrib(readGrib(gribFile(name)), [open]);
    expect(read).toEqual({ ok: false, troubles: [{ kind: 'nothing of use', found }] });
  });

  it('a passage wholly elsewhere is a trouble that tells where the grid is', async () => {
    expect(await forecastFromGrib(readGrib(gribFile('forecast')), [{ place: '', at: [0, 0] }])).toEqual({
      ok: false,
      troubles: [{ kind: 'outside the grid', areas: ['36.50N 28.00W to 38.00N 26.00W'] }],
    });
  });
});

function parts({ wind, dir }: Step): readonly [number, number] {
  const from = (dir! * Math.PI) / 180;
  return [-wind![0] * Math.sin(from), -wind![0] * Math.cos(from)];
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  return Uint8Array.from([...a, ...b]);
}
