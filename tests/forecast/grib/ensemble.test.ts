import { describe, expect, it } from 'vitest';
import type { Content } from '../../../source/forecast/content.ts';
import { forecastSchema, type Member } from '../../../source/forecast/forecast.ts';
import { membersIn } from '../../../source/forecast/grib/ensemble.ts';
import { forecastFromGrib, type Point } from '../../../source/forecast/grib/forecast-from-grib.ts';
import { readGrib } from '../../../source/forecast/grib/read.ts';
import { expected, gribFile } from '../../helpers/grib-files.ts';

const KN = 3600 / 1852;
const members = 4;
const point: Point = { place: 'off the head', at: [37.5, -27.5] };

async function taken(octets: Uint8Array, points: readonly Point[] = [point]): Promise<Content> {
  const read = await forecastFromGrib(readGrib(octets), points);
  if (!read.ok) throw new Error(JSON.stringify(read.troubles));
  return read.value;
}

/** ecCodes' value at the point: of a time (0 to 4), a member, and wind u, v or seas (0 to 2). */
function known(time: number, member: number, which: number): number {
  const field = expected.ensemble![(time * members + member) * 3 + which]!;
  expect(field.member).toBe(member);
  return field.points.find(([lat, lon]) => lat === point.at[0] && (lon - point.at[1]) % 360 === 0)![2]!;
}

describe('an ensemble', () => {
  it.each(['members-1', 'members-2'])('%s: lists its members, the control first', (name) => {
    expect(membersIn(readGrib(gribFile(name)))).toEqual([0, 1, 2]);
  });

  it('has at a point of the grid and a time of the file exactly what each member has there', async () => {
    const { places } = await taken(gribFile('ensemble'));
    expect(places[0]!.members!.map(({ member }) => member)).toEqual([0, 1, 2, 3]);
    for (let time = 0; time < 5; time += 1)
      for (const { member, wind, dir, seas } of places[0]!.members!) {
        const [u, v] = [known(time, member, 0), known(time, member, 1)];
        expect(wind![time * 6]).toBeCloseTo(Math.hypot(u, v) * KN, 1);
        expect(dir![time * 6]).toBeCloseTo(((Math.atan2(-u, -v) * 180) / Math.PI + 360) % 360, 0);
        expect(seas![time * 6]).toBeCloseTo(known(time, member, 2), 2);
      }
  });

  it('is a forecast of the one shape, its steps those of the control', async () => {
    const content = await taken(gribFile('ensemble'));
    const whole = { format: 1, receivedAt: '2026-02-03T12:00:00.000Z', sha256: 'a'.repeat(64), ...content };
    expect(forecastSchema.safeParse(whole).error).toBeUndefined();
    const { steps, members: all } = content.places[0]!;
    const [control] = all!;
    expect(control!.wind).toEqual(steps.map(({ wind }) => wind![0]));
    expect(control!.seas).toEqual(steps.map(({ seas }) => seas![0]));
    expect(control!.wind).toHaveLength(25);
  });

  it('has nothing of its own of what only fields without members say', async () => {
    const both = Uint8Array.from([...gribFile('forecast'), ...gribFile('ensemble')]);
    const { places } = await taken(both);
    expect(places[0]!.steps.every(({ gust, period }) => gust !== null && period !== null)).toBe(true);
    const own = (member: Member) => Object.keys(member).sort();
    expect(places[0]!.members!.map(own)).toEqual(
      places[0]!.members!.map(() => ['dir', 'member', 'seas', 'wind']),
    );
  });

  it('one member alone is a forecast like any other', async () => {
    const one = readGrib(gribFile('ensemble')).messages.filter(({ member }) => member === 2);
    const read = await forecastFromGrib({ messages: one, problems: [], skipped: [] }, [point]);
    expect(read.ok && read.value.places[0]).toMatchObject({ steps: { length: 25 } });
    expect(read.ok && 'members' in read.value.places[0]!).toBe(false);
  });

  it('cut short says how many members do not reach as far as the others', async () => {
    const whole = gribFile('ensemble');
    // The last three fields are those of the last member.
    const { problems, places } = await taken(whole.subarray(0, whole.length - 500));
    expect(problems).toContainEqual({
      kind: 'members incomplete',
      where: point.place,
      text: '1 of 4 do not say all its hours',
    });
    const [control, , , last] = places[0]!.members!;
    expect([control!.seas![24], last!.seas![24]]).toEqual([expect.any(Number), null]);
    expect(last!.seas![18]).not.toBeNull();
  });

  it('too large to be kept whole keeps as many members as it can, and says so', async () => {
    const points = Array.from({ length: 3300 }, (_, i) => ({ ...point, place: `${i}` }));
    const { problems, places } = await taken(gribFile('ensemble'), points);
    expect(places[0]!.members).toHaveLength(3);
    expect(problems).toContainEqual({
      kind: 'members left out',
      where: 'the ensemble',
      text: '1 of 4: more than is kept',
    });
  });
});
