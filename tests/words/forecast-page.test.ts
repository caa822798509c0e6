import { describe, expect, it } from 'vitest';
import { forecastPage } from '../../source/words/forecast-page.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const issued = Date.parse('2026-03-01T04:00:00Z');

/** The rows of the table, each as its cells, headings first. */
function rows(steps: Parameters<typeof steadyForecast>[1]) {
  const page = forecastPage(steadyForecast(issued, steps), issued, 'UTC');
  return page
    .split('\n')
    .filter((line) => line.startsWith('  '))
    .map((line) => line.trim().split(/ {2,}/));
}

describe('a forecast as it was understood', () => {
  it('shows every direction said for a time, not the first alone', () => {
    const dirs = rows([
      { hours: 6, dir: 0, otherDirs: [90, null] },
      { hours: 6, dir: null },
      { hours: 6, dir: 225 },
    ]).map((cells) => cells[3]);
    expect(dirs.slice(1)).toEqual(['N, E, variable', '-', 'SW']);
  });

  it('shows the pressure where one is said', () => {
    const said = rows([
      { hours: 6, pressure: 1013.2 },
      { hours: 6, pressure: null },
    ]);
    expect(said.map((cells) => cells.at(-1))).toEqual(['pressure', '1013 hPa', '-']);
    expect(rows([{ hours: 6, pressure: null }])[0]).not.toContain('pressure');
  });

  it('says where it holds: everywhere, at a place, or near a point alone', () => {
    const headed = (more: object) => {
      const forecast = steadyForecast(issued, [{ hours: 6 }]);
      const places = forecast.places.map((place) => ({ ...place, ...more }));
      return forecastPage({ ...forecast, places }, issued, 'UTC').split('\n')[2];
    };
    const at = [38.96, -9.42] as const;
    expect([headed({}), headed({ place: 'PZZ575' }), headed({ place: 'Bight', at }), headed({ at })]).toEqual(
      [...['Everywhere', 'PZZ575', 'Bight at 38.96, -9.42', 'Near 38.96, -9.42']],
    );
  });
});
