import type { Condition, FluidEvent } from '../condition/condition.ts';
import { weightedHours } from '../condition/running.ts';
import { MS_A_DAY } from '../condition/time.ts';
import type { LevelDeed, LevelHistory, Spread } from './belief.ts';
import type { History } from './history.ts';
import { levelLine } from './level-line.ts';

/** As far back from the last reading as a person looks to see how a level goes, and at most so many readings: a boat that is dipped every hour has a shorter memory. Judgement. */
const LATELY_MS = 60 * MS_A_DAY;
const MOST_READINGS = 120;

/** How a level has gone lately; the line ends with the level now. */
export function levelHistory(
  { life, periods, present }: History,
  events: readonly FluidEvent[],
  level: Spread,
  { at, engines, spans }: Pick<Condition, 'at' | 'engines' | 'spans'>,
): LevelHistory {
  const { readings, pours } = life;
  const from = Math.max(readings.at(-1)!.at - LATELY_MS, readings.at(-MOST_READINGS)?.at ?? 0);
  const runHoursAt = weightedHours(present.fluid, engines, spans);
  const line = periods
    .filter(({ end }) => end.at >= from)
    .flatMap((period) => levelLine(period, pours, runHoursAt, from));
  return {
    readings: readings
      .filter((reading) => reading.at >= from)
      .map((reading) => ({ at: reading.at, levelL: reading.levelL, off: reading.off })),
    done: events.flatMap((event) => (event.at >= from ? deedOf(event) : [])),
    line: [
      ...line.filter((point) => point.at < at),
      { at, mean: level.mean, p10: level.p10, p90: level.p90 },
    ],
  };
}

function deedOf(event: FluidEvent): readonly LevelDeed[] {
  switch (event.kind) {
    case 'topup':
      return [{ kind: event.kind, at: event.at, amountL: event.amountL }];
    case 'change':
    case 'job':
      return [{ kind: event.kind, at: event.at }];
    case 'reading':
    case 'leak':
      return [];
  }
}
