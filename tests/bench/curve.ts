import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { consequenceOf, enginesOf, itemsOf } from '../../source/boat/boat.ts';
import { daylightsBetween } from '../../source/passage/sun.ts';
import { allBits, keepCommon, sizeOf } from '../../source/readiness/bits.ts';
import { reserveL } from '../../source/readiness/fluids.ts';
import { dueOf } from '../../source/readiness/services.ts';
import { type Case, curveCase, runCurve } from './curve-case.ts';
import { medians, type Row, type Skipped, timeOf } from './row.ts';

const RUNS = 21;
const PASSAGES = 4096;
const ITEMS = 40;
const HOURS = 240;
const MS_AN_HOUR = 3_600_000;
const MS_A_DAY = 24 * MS_AN_HOUR;
/** Runs a size when fitting how the time grows. */
const FIT_RUNS = 5;

/** The whole departure curve, one thread, draws included, beside the same algorithm in NumPy; and how its time grows. */
export async function curveRows(): Promise<readonly (Row | Skipped)[]> {
  const what = `departure curve, ${PASSAGES} passages, ${HOURS} h, ${ITEMS} items`;
  const given = curveCase(ITEMS, HOURS);
  return [await besideNumPy(what, given), ...(await growth())];
}

async function besideNumPy(what: string, given: Case): Promise<Row | Skipped> {
  if (spawnSync('python3', ['-c', 'import numpy']).status !== 0)
    return { what, skipped: 'no python3 with numpy here' };
  const one = { OPENBLAS_NUM_THREADS: '1', OMP_NUM_THREADS: '1' };
  const python = spawn('python3', ['tests/bench/curve.py'], { env: { ...process.env, ...one } });
  python.stderr.pipe(process.stderr);
  const lines = createInterface(python.stdout)[Symbol.asyncIterator]();
  const ask = async (line: string) => {
    python.stdin.write(`${line}\n`);
    return (await lines.next()).value as string;
  };
  await ask(JSON.stringify(forNumPy(given)));
  for (let warming = 0; warming < 3; warming += 1) runCurve(given, PASSAGES);
  let theirs: readonly number[] = [];
  const { ours, floor } = await medians(RUNS, {
    floor: async () => {
      const { ms, scores } = JSON.parse(await ask('again')) as { ms: number; scores: readonly number[] };
      theirs = scores;
      return ms;
    },
    ours: () => timeOf(() => runCurve(given, PASSAGES)),
  });
  python.stdin.end();
  await once(python, 'exit');
  const apart = Math.max(...scoresOf(given).map((score, hour) => Math.abs(score - theirs[hour]!)));
  const same = `scores apart by at most ${(100 * apart).toFixed(1)} in 100`;
  return { what, unit: 'ms', ours, floor: { what: 'NumPy', value: floor }, goal: { atMost: 1 }, note: same };
}

function scoresOf(given: Case): readonly number[] {
  const { boatHeld, weather } = runCurve(given, PASSAGES);
  return boatHeld.map((boat, hour) => {
    const both = allBits(PASSAGES);
    keepCommon(both, boat);
    keepCommon(both, weather!.held[hour]!);
    return sizeOf(both) / PASSAGES;
  });
}

/** The exponents of the time in each of its sizes: 1 where twice as much takes twice as long. */
async function growth(): Promise<readonly Row[]> {
  const sizes = {
    passages: [1024, 2048, 4096, 8192, 16384],
    items: [10, 20, 40, 80, 160],
    hours: [30, 60, 120, 240],
  };
  const runs = {
    passages: (size: number) => [curveCase(ITEMS, HOURS), size] as const,
    items: (size: number) => [curveCase(size, HOURS), PASSAGES] as const,
    hours: (size: number) => [curveCase(ITEMS, size), PASSAGES] as const,
  };
  const rows: Row[] = [];
  for (const by of ['passages', 'items', 'hours'] as const) {
    const measures = Object.fromEntries(
      sizes[by].map((size) => {
        const [given, passages] = runs[by](size);
        return [size, () => timeOf(() => runCurve(given, passages))];
      }),
    );
    const times = await medians(FIT_RUNS, measures);
    const exponent = slope(sizes[by].map((size) => [Math.log(size), Math.log(times[size]!)]));
    rows.push({
      what: `its growth with ${by}, exponent`,
      unit: '',
      ours: exponent,
      floor: null,
      goal: { atMost: 1.1 },
    });
  }
  return rows;
}

/** Of the line of least squares. */
function slope(points: readonly (readonly [x: number, y: number])[]): number {
  const mean = (place: 0 | 1) => points.reduce((sum, point) => sum + point[place], 0) / points.length;
  const [x0, y0] = [mean(0), mean(1)];
  const over = points.reduce((sum, [x, y]) => sum + (x - x0) * (y - y0), 0);
  return over / points.reduce((sum, [x]) => sum + (x - x0) ** 2, 0);
}

/** The case in figures, for draws and rows of NumPy's own. */
function forNumPy({ boat, condition, beliefs, course }: Case): object {
  const now = condition.at;
  const { limits } = boat;
  const { passage, pieces, tables, lastHour, hours } = course;
  const until = now + 2 * hours * MS_AN_HOUR;
  const days = daylightsBetween(now, until, passage.legs.at(-1)!.to);
  const { afterSunrise = 0, beforeSunset = 0 } = limits.daylight || {};
  const legs = passage.legs.map((_, leg) => {
    const own = pieces.filter((piece) => piece.leg === leg);
    const { wind, windSd, gust, dir, dirSd, seas, seasSd, period } = tables[pieces.indexOf(own[0]!)]!;
    const columns = Object.entries({ wind, windSd, gust, dir, dirSd, seas, seasSd, period });
    return {
      nm: own.reduce((sum, piece) => sum + piece.nm, 0),
      course: own[0]!.courseDeg,
      sectors: own[0]!.sectors,
      table: Object.fromEntries(columns.map(([name, values]) => [name, [...values]])),
    };
  });
  return {
    ...{
      passages: PASSAGES,
      hours,
      departures: lastHour + 1,
      limits,
    },
    ...{ motorBelow: passage.motorBelow, speed: passage.speed, legs, reserveDays: condition.reserveDays },
    waiting: beliefs.waiting.get('main'),
    days: {
      from: days.map(({ from }) => (from - now) / MS_AN_HOUR + afterSunrise),
      to: days.map(({ to }) => (to - now) / MS_AN_HOUR - beforeSunset),
    },
    items: itemsOf(boat).map((item) => ({
      ...itemForNumPy(item, { boat, condition, beliefs, course }),
      kind: item.kind,
      vital: consequenceOf(boat, item) === 'vital',
    })),
  };
}

function itemForNumPy(item: ReturnType<typeof itemsOf>[number], { boat, condition, beliefs }: Case): object {
  switch (item.kind) {
    case 'fluid': {
      const { level, run, rest } = beliefs.fluids.get(item.id)!;
      const pair = ({ mean, sd }: { mean: number; sd: number }) => [mean, sd];
      const { atAnchor, vary } = item;
      const engine = enginesOf(item).length > 0;
      return {
        level: pair(level),
        run: pair(run),
        rest: pair(rest),
        vary,
        atAnchor,
        engine,
        reserve: reserveL(item),
      };
    }
    case 'spare': {
      const { shape, rate, per } = beliefs.demand.get(item.id)!;
      return {
        shape,
        rate,
        per: per === 'day' ? 'day' : 'hour',
        stock: condition.spares.get(item.id)!.count,
      };
    }
    case 'anode': {
      const { share, wear } = beliefs.anodes.get(item.id)!;
      return { share: share.mean, shareSd: share.sd, wear: [wear.mean, wear.sd], days: 0, limit: item.limit };
    }
    case 'service': {
      const due = dueOf(boat, item, condition);
      const left = due.hours! - due.nowHours! + item.graceHours;
      const leftHours =
        due.on === null ? null : (due.on - condition.at + item.graceDays * MS_A_DAY) / MS_AN_HOUR;
      return { left, leftHours, unread: due.unreadDays };
    }
    default:
      return {};
  }
}
