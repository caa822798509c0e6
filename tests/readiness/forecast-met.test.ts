import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Forecast } from '../../source/forecast/forecast.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { stream } from '../../source/maths/stream.ts';
import { forecastMet } from '../../source/readiness/forecast-met.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const HOUR = 3_600_000;
const start = Date.parse('2026-02-03T00:00:00Z');
const at = (hour: number) => start + hour * HOUR;
const boat = aBoat();
const passage = boat.passages[0]!;
const plan = anEntry('plan', { passage: passage.id }, at(0));
const left = anEntry('left', {}, at(0));
const said = steadyForecast(start, [{ hours: 240, wind: [15, 15], gust: 20, dir: 350, seas: [2, 2] }]);

function met(entries: readonly Entry[], forecasts: readonly Forecast[], hour = 1000) {
  return forecastMet(boat, conditionAt(boat, entries, at(hour)), forecasts);
}

describe('forecasts against what was met', () => {
  it('are off by what was met less what was said, directions the short way round, seas in parts of the height', () => {
    const look = anEntry('weather', { wind: 18, gust: 19, dir: 10, seas: 2.5 }, at(3));
    const { looks, by, own } = met([plan, left, look], [said], 4);
    expect([looks, own]).toEqual([1, null]);
    expect(by.map(({ what, lead, mean, sd }) => [what, lead, mean, sd])).toEqual([
      ['wind', [0, 1], 3, null],
      ['gust', [0, 1], -1, null],
      ['direction', [0, 1], 20, null],
      ['seas', [0, 1], 0.25, null],
    ]);
  });

  it('are told apart by their lead, with mean and sd', () => {
    const looks = [10, 30, 31, 100].map((hour, i) => anEntry('weather', { wind: 14 + 2 * i }, at(hour)));
    const { by } = met([plan, left, ...looks], [said], 110);
    expect(by.map(({ lead, count, mean, sd }) => [lead, count, mean, sd])).toEqual([
      [[0, 1], 1, -1, null],
      [[1, 2], 2, 2, Math.SQRT2],
      [[3, null], 1, 5, null],
    ]);
  });

  it('are those that had been received by then, none before they begin or after they end', () => {
    const late = { ...said, receivedAt: new Date(at(5)).toISOString() };
    const look = anEntry('weather', { wind: 18 }, at(3));
    expect(met([plan, left, look], [late]).looks).toBe(0);
    expect(met([plan, left, anEntry('weather', { wind: 18 }, at(241))], [said]).looks).toBe(0);
  });

  it('are held to what is met lying only where they name the anchorage or have a point near it', () => {
    const look = anEntry('weather', { wind: 3 }, at(3));
    const lying = boat.anchorages.find(({ id }) => id === boat.anchorage)!;
    expect(met([look], [said]).looks).toBe(0);
    const places = [{ ...said.places[0]!, place: lying.name }];
    expect(met([look], [{ ...said, places }]).looks).toBe(1);
  });

  it.each([0.5, 1, 2])('give the errors they were made with back: %d times common practice', (scale) => {
    const errors = stream(7, `met ${scale}`);
    const looks = Array.from({ length: 400 }, (_, i) => {
      const hour = 0.25 + i * 0.5;
      const sd = scale * (2.5 + (0.8 * hour) / 24);
      return anEntry('weather', { wind: Math.max(0, 60 + sd * errors.normal()) }, at(hour));
    });
    const strong = steadyForecast(start, [{ hours: 240, wind: [60, 60] }]);
    const { own } = met([plan, left, ...looks], [strong], 240);
    expect(own!.wind!.atIssue / (2.5 * scale)).toBeGreaterThan(0.88);
    expect(own!.wind!.atIssue / (2.5 * scale)).toBeLessThan(1.12);
    expect(own!.wind!.perDay / own!.wind!.atIssue).toBeCloseTo(0.8 / 2.5, 10);
    expect(own).not.toHaveProperty('seas');
  });

  it('are offered from thirty looks on, and not from twenty-nine', () => {
    const looks = (count: number) =>
      Array.from({ length: count }, (_, i) => anEntry('weather', { wind: 12 + (i % 7) }, at(1 + i)));
    expect(met([plan, left, ...looks(29)], [said], 60).own).toBeNull();
    expect(met([plan, left, ...looks(30)], [said], 60).own).toHaveProperty('wind');
  });

  it('never make the boat a better forecaster than a quarter of common practice', () => {
    const looks = Array.from({ length: 30 }, (_, i) => anEntry('weather', { wind: 15 }, at(1 + i)));
    expect(met([plan, left, ...looks], [said], 60).own!.wind).toEqual({ atIssue: 0.625, perDay: 0.2 });
  });
});
