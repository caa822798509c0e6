import type { ForecastTrouble } from '../../source/trouble.ts';

/** One trouble of every kind a forecast can be in: a kind without an example here does not compile. */
export const forecastTroubles: {
  readonly [K in ForecastTrouble['kind']]: Extract<ForecastTrouble, { kind: K }>;
} = {
  'forecast empty': { kind: 'forecast empty' },
  'forecast too long': { kind: 'forecast too long', bytes: 50_000_000, most: 4_000_000 },
  'foreign file': { kind: 'foreign file', what: 'a NetCDF file' },
  'no figures': { kind: 'no figures' },
  'not a forecast': { kind: 'not a forecast', subjects: ['a navigational warning'] },
  'no such zone': { kind: 'no such zone', zone: 'XXZ999', zones: ['XXZ110', 'XXZ111'] },
  'zone wanted': { kind: 'zone wanted', zones: ['XXZ110', 'XXZ111'] },
  'issue time wanted': { kind: 'issue time wanted' },
  'direction wanted': { kind: 'direction wanted', row: 2, text: 'so', choices: ['se', 'sw'] },
  'forecast over': {
    kind: 'forecast over',
    ended: '2026-02-01T06:00:00.000Z',
    now: '2026-02-03T07:40:00.000Z',
  },
  'row not understood': { kind: 'row not understood', row: 3, text: 'se 15 xx', word: 'xx' },
  'row says two': {
    kind: 'row says two',
    row: 1,
    text: 'se 15 nw 20',
    what: 'direction',
    first: 'se',
    second: 'nw',
  },
  'nothing above': { kind: 'nothing above', row: 1 },
  'too many rows': { kind: 'too many rows', rows: 31, most: 20 },
  'table not understood': {
    kind: 'table not understood',
    where: 'hourly.wave_height',
    found: 'the unit "fathoms"',
    expected: 'm or ft',
  },
  'nothing of use': { kind: 'nothing of use', found: ['air temperature: not wind or sea'] },
  'outside the grid': { kind: 'outside the grid', areas: ['40 N 10 W to 50 N 0 W'] },
};
