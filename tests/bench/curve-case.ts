import type { Boat } from '../../source/boat/boat.ts';
import { boatSchema } from '../../source/boat/boat.ts';
import type { Condition } from '../../source/condition/condition.ts';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Forecast, Step } from '../../source/forecast/forecast.ts';
import type { Beliefs } from '../../source/inference/belief.ts';
import { believe } from '../../source/inference/believe.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { stream } from '../../source/maths/stream.ts';
import { type Judged, judgeItems } from '../../source/readiness/judged.ts';
import { type Course, courseThrough } from '../../source/readiness/weather.ts';
import { anEntry } from '../helpers/an-entry.ts';

const NOW = '2026-06-14T06:00:00Z';
const MS_AN_HOUR = 3_600_000;
const MS_A_DAY = 24 * MS_AN_HOUR;
/** The forecast goes on beyond the last departure, as far as a slow passage takes. */
const MORE_HOURS = 40;

export interface Case {
  readonly boat: Boat;
  readonly condition: Condition;
  readonly beliefs: Beliefs;
  readonly course: Course;
}

/** A boat of so many items, of each ten: two fluids, four spares by hours and days, two services, an anode and a check; and a forecast for three legs with departures of so many hours. */
export function curveCase(items: number, hours: number): Case {
  const boat = boatOf(items);
  const at = Date.parse(NOW);
  const condition = conditionAt(boat, logOf(boat, at), at);
  const all = courseThrough(forecastFor(at, hours + MORE_HOURS), condition, boat.limits)!;
  return { boat, condition, beliefs: believe(boat, condition), course: { ...all, lastHour: hours - 1 } };
}

/** The whole departure curve, draws included: every item and the weather over so many passages. */
export function runCurve({ boat, condition, beliefs, course }: Case, count: number): Judged {
  const { limits } = boat;
  return judgeItems(boat, condition, beliefs, {
    count,
    seed: 1,
    threshold: limits.boat / 100,
    limits,
    course,
  });
}

function boatOf(items: number): Boat {
  const tens = Array.from({ length: Math.ceil(items / 10) }, (_, i) => i);
  const name = (kind: string, i: number) => ({ id: `${kind}-${i}`, name: `${kind} ${i}`, minutes: 10 });
  const service = { graceHours: 50, graceDays: 30 };
  return boatSchema.parse({
    format: 1,
    name: 'Forty Things',
    engines: [{ id: 'main', name: 'Main engine', usualHoursPerDay: 0.7 }],
    fluids: tens.flatMap((i) => [
      {
        ...name('oil', i),
        ...{ engine: 'main', atAnchor: 0.6, low: 1, full: 1.4 },
        loss: { perEngineHour: { mean: 0.002, sd: 0.002 }, perDay: { mean: 0.001, sd: 0.001 } },
      },
      { ...name('tank', i), low: 0, full: 130, reserve: 18, loss: { perDay: { mean: 9, sd: 2 } } },
    ]),
    spares: tens.flatMap((i) => [
      { ...name('filter', i), expected: { perEngineHour: 0.004 } },
      { ...name('impeller', i), expected: { perEngineHour: 0.002 } },
      { ...name('fuse', i), expected: { perDay: 0.02 } },
      { ...name('clip', i), expected: { perDay: 0.01 } },
    ]),
    services: tens.flatMap((i) => [
      { ...name('oil-change', i), ...service, everyHours: 150, everyMonths: 12 },
      { ...name('belt-change', i), ...service, everyHours: 600 },
    ]),
    anodes: tens.map((i) => ({
      ...name('anode', i),
      metal: 'zinc',
      water: 'salt',
      massKg: 1,
      usualLifeDays: 300,
    })),
    checks: tens.map((i) => ({ ...name('check', i), everyDays: 3 })),
    limits: {
      ...{ wind: 22, gust: 30, seas: 2, headwind: 15, periodPerMetre: 3 },
      daylight: { afterSunrise: 0.5, beforeSunset: 1 },
    },
    passages: [
      {
        id: 'out',
        name: 'Out',
        legs: [
          { from: [47.1, -20.6], to: [47.23, -20.35], nm: 13.5, place: 'point' },
          {
            ...{ from: [47.23, -20.35], to: [47.52, -19.96], place: 'sound' },
            sectors: [{ from: 10, to: 80, wind: 14, seas: 1.2 }],
          },
          { from: [47.52, -19.96], to: [47.76, -19.52], nm: 24, place: 'approach' },
        ],
        speed: { mean: 5.4, sd: 0.6 },
        motoring: { main: { mean: 0.35, sd: 0.15 } },
        motorToWindward: true,
        reserveDays: 2,
      },
    ],
    passage: 'out',
  });
}

/** A month of looks, everything well. */
function logOf(boat: Boat, now: number): readonly Entry[] {
  const chance = stream(1, 'bench/curve/log');
  const entries: Entry[] = [];
  for (let day = 30; day >= 0; day -= 1) {
    const at = now - day * MS_A_DAY - MS_AN_HOUR;
    entries.push(anEntry('hours', { engine: 'main', reading: 1000 + 0.7 * (30 - day) }, at));
    for (const { id } of boat.fluids)
      entries.push(anEntry('dip', { fluid: id, share: 0.8 + 0.01 * chance.normal() }, at));
    if (day === 30) {
      for (const { id } of boat.spares) entries.push(anEntry('count', { spare: id, count: 2 }, at));
      for (const { id } of boat.services) entries.push(anEntry('service', { service: id }, at));
      for (const { id } of boat.anodes) entries.push(anEntry('renew', { anode: id }, at));
    }
    for (const { id } of boat.checks) entries.push(anEntry('check', { check: id, ok: true }, at));
  }
  return entries;
}

/** Hour by hour at three places, wandering about what the skipper will go out in. */
function forecastFor(from: number, hours: number): Forecast {
  const instant = (hour: number) => new Date(from + hour * MS_AN_HOUR).toISOString();
  const places = ['point', 'sound', 'approach'].map((place) => {
    const chance = stream(1, `bench/curve/${place}`);
    let [wind, dir] = [11, 210];
    const steps = Array.from({ length: hours }, (_, hour): Step => {
      wind = Math.max(2, wind + 1.2 * chance.normal() + 0.08 * (12 - wind));
      dir = (dir + 8 * chance.normal() + 360) % 360;
      const seas = 0.3 + 0.06 * wind;
      return {
        ...{ from: instant(hour), to: instant(hour + 1), how: 'typed' },
        ...{ wind: [wind, wind], dir, gust: 1.35 * wind, seas: [seas, seas] },
        ...{ period: 5, periodKind: null, pressure: null, squalls: null },
      };
    });
    return { place, headlines: [], steps };
  });
  return {
    ...{ format: 1, source: 'typed', issuer: '', issuedAt: instant(0), receivedAt: instant(0) },
    ...{ sha256: '0'.repeat(64), places, notRead: [], problems: [] },
  };
}
