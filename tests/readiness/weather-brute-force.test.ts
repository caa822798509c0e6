import { describe, expect, it } from 'vitest';
import type { Limits } from '../../source/boat/limits.ts';
import { type Stream, stream } from '../../source/maths/stream.ts';
import { type DeparturesInput, departures } from '../../source/readiness/departures.ts';
import { isWithin } from '../../source/readiness/turn.ts';
import { drawPaths } from '../../source/readiness/weather-paths.ts';
import type { HourlyWeather } from '../../source/readiness/weather-table.ts';

const count = 32;
const hours = 30;
const forecasts = 1000;

describe('sailing by prefix sums', () => {
  it('agrees with sailing hour by hour in every passage and departure of 1,000 random forecasts', () => {
    let judged = 0;
    let passed = 0;
    for (let run = 0; run < forecasts; run += 1) {
      const given = aRandomCase(run);
      const { held } = departures(given.input);
      for (let hour = 0; hour <= given.input.lastHour; hour += 1)
        for (let i = 0; i < count; i += 1) {
          const holds = (held[hour]![i >>> 5]! & (1 << (i & 31))) !== 0;
          const should = sailHourByHour(given, hour, i);
          if (holds !== should)
            expect.fail(`case ${run}, leaving at ${hour}, passage ${i}: ${holds}, hour by hour ${should}`);
          judged += 1;
          if (holds) passed += 1;
        }
    }
    expect(passed / judged).toBeGreaterThan(0.1);
    expect(passed / judged).toBeLessThan(0.9);
  });

  it('lets fewer passages through, never others, when a limit is tightened', () => {
    for (let run = 0; run < 300; run += 1) {
      const loose = aRandomCase(run);
      const before = departures(loose.input).held;
      for (const limit of ['wind', 'gust', 'seas', 'headwind', 'overHours'] as const) {
        const tight = aRandomCase(run, { [limit]: Number(loose.limits[limit]) * 0.8 });
        const after = departures(tight.input).held;
        const others = after.some((bits, hour) =>
          bits.some((word, place) => (word & ~before[hour]![place]!) !== 0),
        );
        expect(others, `case ${run}, ${limit}`).toBe(false);
      }
    }
  });
});

interface Case {
  readonly limits: Limits;
  readonly tables: readonly HourlyWeather[];
  readonly courses: readonly {
    readonly courseDeg: number;
    readonly sectors: { from: number; to: number; wind?: number; seas?: number }[];
  }[];
  readonly paths: ReturnType<typeof drawPaths>;
  readonly input: DeparturesInput;
}

function aRandomCase(run: number, tighter: Partial<Limits> = {}): Case {
  const chance = stream(7, `case ${run}`);
  const between = (low: number, high: number) => low + (high - low) * chance.uniform();
  const limits = {
    ...{
      boat: 95,
      go: 85,
      wind: between(12, 28),
      gust: between(18, 36),
      seas: between(1, 3),
      headwind: between(10, 22),
    },
    ...{ overHours: Math.floor(between(0, 5)), smallCraft: 'watch', periodPerMetre: between(1, 4) },
    ...tighter,
  } as Limits;
  const members = chance.uniform() < 0.3 ? 2 + Math.floor(4 * chance.uniform()) : 0;
  const tables = Array.from({ length: 3 }, () => anEnsemble(chance, members));
  const courses = tables.map(() => ({
    courseDeg: between(0, 360),
    sectors:
      chance.uniform() < 0.3
        ? [{ from: between(0, 360), to: between(0, 360), wind: between(8, 20), seas: between(1, 3) }]
        : [],
  }));
  const paths = drawPaths(count, hours, (name) => stream(run, name));
  const share = new Float64Array(count);
  const nm = tables.map(() => between(2, 12));
  const spans = tables.map((weather, leg) => ({
    leg,
    fromNm: nm.slice(0, leg).reduce((sum, one) => sum + one, 0),
    nm: nm[leg]!,
    weather: {
      weather,
      piece: courses[leg]!,
      limits,
      motorBelow: 8,
      motorToWindward: false,
      share,
      paths,
    },
    endHour: weather.endHour,
    gates: leg > 0 && chance.uniform() < 0.2 ? [{ from: between(0, 20), to: between(20, 30) }] : null,
  }));
  const speed = Float64Array.from({ length: count }, () => between(3, 7));
  const out = chance.uniform() < 0.2 ? between(0, 4) : 0;
  const sailedNm = speed.map((knots) => knots * out);
  const input = {
    ...{ count, lastHour: hours - 1, hours, speed, sailedNm, share, spans },
    ...{ waitHours: between(0, 6), overHours: limits.overHours, mustCover: between(4, 40) },
    mayArrive: (hour: number) => hour % 24 < 18,
  };
  return { limits, tables, courses, paths, input };
}

function anEnsemble(chance: Stream, size: number): HourlyWeather {
  const table = aTable(chance);
  const { endHour } = table;
  return { ...table, members: Array.from({ length: size }, () => ({ ...aTable(chance), endHour })) };
}

function aTable(chance: Stream): HourlyWeather {
  const gappy = (low: number, high: number, missing: number) =>
    Float64Array.from({ length: hours }, () =>
      chance.uniform() < missing ? Number.NaN : low + (high - low) * chance.uniform(),
    );
  const level = 2 + 14 * chance.uniform();
  const endHour = Math.floor(20 + 11 * chance.uniform());
  const until = (values: Float64Array) => values.map((value, hour) => (hour < endHour ? value : Number.NaN));
  const flags = (often: number) =>
    Uint8Array.from({ length: hours }, () => (chance.uniform() < often ? 1 : 0));
  return {
    ...{ hours, endHour, otherDirs: otherDirsOf(chance, endHour), derivedGust: false, members: [] },
    ...{
      wind: until(gappy(level - 2, level + 3, 0.004)),
      windSd: gappy(1, 3, 0),
      gust: until(gappy(level, level + 8, 0.1)),
    },
    ...{
      dir: until(gappy(0, 360, 0.05)),
      dirSd: gappy(5, 30, 0),
      seas: until(gappy(0.2, 1.1, 0.004)),
      seasSd: gappy(0.1, 0.4, 0),
    },
    ...{
      period: until(gappy(3, 9, 0.2)),
      squallLine: flags(0.003),
      gale: flags(0.003),
      smallCraft: flags(0.1),
    },
  };
}

/** One hour in six has a second direction, now and then from anywhere. */
function otherDirsOf(chance: Stream, endHour: number): HourlyWeather['otherDirs'] {
  const said = Array.from({ length: endHour }, (_, hour) => hour).filter(() => chance.uniform() < 1 / 6);
  return new Map(said.map((hour) => [hour, [chance.uniform() < 0.1 ? Number.NaN : 360 * chance.uniform()]]));
}

/** The rules of the model as they are written, one hour after the other. */
function sailHourByHour(
  { limits, tables, courses, paths, input }: Case,
  departure: number,
  i: number,
): boolean {
  let time = departure;
  let over = 0;
  const sailed = input.sailedNm[i]!;
  for (const [leg, { nm, fromNm, gates }] of input.spans.entries()) {
    const left = Math.min(nm, fromNm + nm - sailed);
    if (left <= 0) continue;
    const begin = time;
    if (gates !== null && sailed <= fromNm) {
      const open = gates.filter(({ to }) => to >= time).map(({ from }) => Math.max(0, from - time));
      const wait = Math.min(...open, Number.POSITIVE_INFINITY);
      if (wait > input.waitHours) return false;
      time += wait;
    }
    time += left / input.speed[i]!;
    for (let hour = Math.floor(begin); hour < time; hour += 1) {
      const table = metIn(tables[leg]!, i);
      const known = hour < tables[leg]!.endHour;
      const said = known && [table.wind, table.gust, table.seas].every((one) => !Number.isNaN(one[hour]!));
      if (!said && hour < departure + Math.ceil(input.mustCover)) return false;
      const found = known ? judgeHour(table, courses[leg]!, limits, paths, hour, i) : 'passes';
      if (found === 'fails') return false;
      if (found === 'over') over += 1;
    }
    if (over > input.overHours) return false;
  }
  return input.mayArrive(time);
}

/** The weather passage i meets. */
function metIn(table: HourlyWeather, i: number): HourlyWeather {
  return table.members[i % table.members.length] ?? table;
}

function judgeHour(
  table: HourlyWeather,
  { courseDeg, sectors }: Case['courses'][number],
  limits: Limits,
  paths: Case['paths'],
  hour: number,
  i: number,
): 'fails' | 'over' | 'passes' {
  const at = hour * count + i;
  const wind = table.wind[hour]! + table.windSd[hour]! * paths.wind[at]!;
  const gust = table.gust[hour]! + 1.3 * table.windSd[hour]! * paths.wind[at]!;
  const seas = table.seas[hour]! + table.seasSd[hour]! * paths.seas[at]!;
  const all = [table.dir[hour]!, ...(table.otherDirs.get(hour) ?? [])].map(
    (dir) => dir + table.dirSd[hour]! * paths.direction[at]!,
  );
  if (table.squallLine[hour] || table.gale[hour]) return 'fails';
  if (gust > limits.gust! || seas > Number(limits.seas)) return 'fails';
  if (seas > Math.max(1, table.period[hour]! / limits.periodPerMetre!)) return 'fails';
  const offBow = (from: number) => Math.abs(((((from - courseDeg) % 360) + 540) % 360) - 180);
  const ahead = all.some((from) => Number.isNaN(from) || offBow(from) < 60);
  for (const sector of sectors)
    if (
      all.some((from) => Number.isNaN(from) || isWithin(from, sector)) &&
      (wind > sector.wind! || seas > sector.seas!)
    )
      return 'fails';
  const limit = ahead ? Math.min(Number(limits.wind), limits.headwind!) : Number(limits.wind);
  if (wind > limit + 5) return 'fails';
  return wind > limit ? 'over' : 'passes';
}
