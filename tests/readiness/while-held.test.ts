import { describe, expect, it } from 'vitest';
import type { Fields } from '../../source/logbook/entries.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { judged } from '../helpers/beliefs.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const at = Date.parse('2026-02-03T07:40:00Z');
const day = 86_400_000;
const filter = { everyHours: 100, uses: [{ spare: 'filters', count: 1 }] };

/** Two services due, one filter for both of them; aboard unless told otherwise. */
function held(hours: number, { minutes = 60, filters = 1, blows = 40, water = 300 } = {}) {
  const boat = aBoat({
    spares: [...sandpiper.spares, { id: 'filters', name: 'Filters' }],
    services: [
      { ...filter, id: 'first', name: 'First', minutes },
      { ...filter, id: 'second', name: 'Second', minutes },
      { id: 'wash', name: 'Wash', everyMonths: 1, minutes },
    ],
  });
  const done = ['first', 'second', 'wash'].map((service) => anEntry('service', { service }, at - 300 * day));
  const entries = [
    ...healthyLog
      .filter(({ kind }) => kind !== 'service')
      .map(({ kind, at: when, ...fields }) => anEntry(kind, fields as Fields<typeof kind>, when)),
    ...done,
    anEntry('hours', { engine: 'main', reading: 500 }, at - 300 * day),
    anEntry('count', { spare: 'filters', count: filters }, at - day),
    anEntry('dip', { fluid: 'water', level: water }, at),
  ];
  const forecast = steadyForecast(at, [{ hours, wind: [blows, blows] }, { hours: 120 }]);
  const answer = judged({ boat, entries, at, forecast, simulations: 512 });
  const { verdict, score, toGetReady, whileHeld } = answer;
  const after = [...toGetReady, ...whileHeld].map(({ boatScoreAfter }) => boatScoreAfter);
  return { verdict, work: whileHeld.map(({ item }) => item), boatScores: [score.boat, ...after] };
}

describe('worth doing while held', () => {
  it('is what comes due within the stretch, with its parts aboard: one filter does for one service', () => {
    expect(held(24)).toMatchObject({ verdict: 'hold', work: ['first', 'wash'] });
    expect(held(24, { filters: 2 }).work).toEqual(['first', 'second', 'wash']);
    expect(held(24, { filters: 0 }).work).toEqual(['wash']);
  });

  it('fits the wait', () => {
    expect(held(24, { minutes: 13 * 60 }).work).toEqual(['first']);
    expect(held(24, { minutes: 30 * 60 }).work).toEqual([]);
  });

  it('leaves the boat as what gets her ready makes her', () => {
    const { boatScores } = held(24, { water: 30 });
    expect(boatScores[0]).toBeLessThan(50);
    expect(boatScores.at(-1)).toBeGreaterThan(95);
    expect(boatScores.at(-1)).toBe(boatScores.at(-2));
  });

  it('is nothing where nothing holds her', () => {
    expect(held(24, { blows: 10 })).toMatchObject({ verdict: 'go', work: [] });
  });
});
