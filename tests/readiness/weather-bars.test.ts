import { describe, expect, it } from 'vitest';
import type { EntryOf } from '../../source/logbook/entries.ts';
import type { Reason } from '../../source/readiness/answer.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { certainFluid, judged } from '../helpers/beliefs.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

const issued = Date.parse('2026-03-01T04:00:00Z');
const minutes = (count: number) => issued + count * 60_000;
const boat = aBoat({
  fluids: [{ ...sandpiper.fluids[2]!, vary: 0 }],
  anodes: [],
  checks: [],
  limits: { wind: 22, gust: 30, seas: 2 },
});
const forecast = steadyForecast(issued, [{ hours: 96 }]);

type Look = Partial<Pick<EntryOf<'weather'>, 'wind' | 'gust' | 'seas' | 'pressure' | 'squalls'>>;

/** The verdict two hours after issue, and why, of a boat that lacks nothing on a quiet day; looks at the weather by minutes after issue. */
function told(looks: { readonly [minute: number]: Look }, at = minutes(120), said = forecast) {
  const entries = [
    anEntry('dip', { fluid: 'water', level: 300 }, issued - 3_600_000),
    ...Object.entries(looks).map(([minute, look]) =>
      anEntry('weather', look as never, minutes(Number(minute))),
    ),
  ];
  const { verdict, reasons } = judged({
    ...{ boat, entries, at, forecast: said, simulations: 256 },
    fluids: { water: certainFluid(300, 0, 0) },
  });
  return { verdict, weather: reasons.filter(isOfNow) };
}

function isOfNow({ reason }: Reason): boolean {
  return ['weather now', 'squalls now', 'not as forecast', 'pressure falls'].includes(reason);
}

describe('what the weather is doing keeps her from going', () => {
  it('but not a quiet look at a quiet day', () => {
    expect(told({ 90: { wind: 11, gust: 15, seas: 0.8, pressure: 1015 } })).toEqual({
      verdict: 'go',
      weather: [],
    });
  });

  it('wind over its limit two hours ago, whatever was looked at since', () => {
    const { verdict, weather } = told({ 10: { wind: 35 }, 100: { pressure: 1010 }, 110: { wind: 12 } });
    expect(verdict).toBe('hold');
    expect(weather).toEqual([
      { reason: 'weather now', what: 'wind', value: 35, limit: 22, at: minutes(10) },
      { reason: 'not as forecast', what: 'wind', value: 35, said: 10, at: minutes(10) },
    ]);
  });

  it('until it is three hours past, or a forecast was issued since', () => {
    expect(told({ 10: { wind: 35 } }, minutes(189)).verdict).toBe('hold');
    expect(told({ 10: { wind: 35 } }, minutes(191)).verdict).toBe('go');
    const newer = steadyForecast(minutes(20), [{ hours: 96 }]);
    expect(told({ 10: { wind: 35 } }, minutes(120), newer).verdict).toBe('go');
  });

  it('a line of squalls', () => {
    expect(told({ 60: { squalls: 'line' } })).toEqual({
      verdict: 'hold',
      weather: [{ reason: 'squalls now', at: minutes(60) }],
    });
  });

  it('wind, gusts and seas more than two errors off the forecast, either way; not a gust taken from its wind', () => {
    const what = (look: Look, said = forecast) => told({ 60: look }, minutes(120), said).weather;
    expect(what({ wind: 15.2, gust: 20.5, seas: 1 })).toMatchObject([
      { what: 'wind', value: 15.2, said: 10 },
      { what: 'seas', value: 1, said: 0.8 },
    ]);
    expect(what({ wind: 4.8 })).toMatchObject([{ reason: 'not as forecast', what: 'wind' }]);
    expect(what({ gust: 21 })).toMatchObject([{ reason: 'not as forecast', what: 'gust', said: 14 }]);
    expect(what({ gust: 21 }, steadyForecast(issued, [{ hours: 96, gust: null }]))).toEqual([]);
  });

  it('pressure down 3 hPa in 3 hours, to the tenth', () => {
    const fall = (from: number, to: number) =>
      told({ 10: { pressure: from }, 110: { pressure: to } }).weather.map(({ reason }) => reason);
    expect([fall(1026.6, 1023.6), fall(1015, 1012.1)]).toEqual([['pressure falls'], []]);
  });
});

describe('a warning that does not bar leaving', () => {
  const reasons = (headlines: object[], more: object = {}, place = '') => {
    const places = forecast.places.map((one) => ({ ...one, place, headlines: headlines as never }));
    const limits = { wind: 22, gust: 30, seas: 2, ...more };
    return judged({
      ...{ boat: aBoat({ limits, checks: [] }), at: minutes(120), simulations: 256 },
      forecast: { ...forecast, places },
    }).reasons;
  };
  const headline = (level: string, about: string | null, from: string | null, to: string | null) => ({
    ...{ text: `${about} ${level}`, level, about, from, to },
  });

  it('is said all the same, while it holds on the way: small craft, strong wind, a watch, fog', () => {
    const told = reasons([
      headline('advisory', 'small craft', null, null),
      headline('advisory', 'small craft', null, null),
      headline('warning', 'strong wind', null, '2026-03-01T12:00:00Z'),
      headline('watch', 'gale', '2026-03-01T10:00:00Z', null),
      headline('advisory', null, null, null),
      headline('watch', 'storm', '2026-03-09T10:00:00Z', null),
      headline('warning', 'squalls', null, '2026-03-01T06:00:00Z'),
      headline('other', 'gale', null, null),
    ]);
    expect(told.filter(({ reason }) => reason === 'warning to mind')).toEqual(
      ['small craft advisory', 'strong wind warning', 'gale watch', 'null advisory'].map((text) => ({
        ...{ reason: 'warning to mind', text },
      })),
    );
    expect(told.some(({ reason }) => reason === 'under the score')).toBe(false);
  });

  it('but not beside what bars: a gale warning, small craft that are to stop', () => {
    const barred = [
      reasons([headline('warning', 'gale', null, null)]),
      reasons([headline('warning', 'strong wind', null, null)], { smallCraft: 'stop' }),
    ];
    for (const told of barred) {
      expect(told.some(({ reason }) => reason === 'warning to mind')).toBe(false);
      expect(told.some(({ reason }) => reason === 'under the score')).toBe(true);
    }
  });

  it('and a forecast for other waters is not called over', () => {
    const told = reasons([], {}, 'PZZ575').filter(({ reason }) => reason.startsWith('forecast'));
    expect(told).toEqual([{ reason: 'forecast elsewhere', places: ['PZZ575'] }]);
  });
});

describe('what is said of the way, without barring it', () => {
  const long = { ...sandpiper.passages[0]!, speed: { mean: 5, sd: 0 } };
  const said = (nm: number, hours: number, limits: object = {}, step: object = {}) =>
    judged({
      boat: aBoat({
        ...{ checks: [], limits: { wind: 30, seas: 4, ...limits } },
        passages: [{ ...long, legs: [{ from: [41.2, -30.4], to: [42.2, -30.4], nm }] }],
      }),
      at: issued,
      forecast: steadyForecast(issued, [{ hours, ...step }]),
      simulations: 256,
    }).reasons.filter(({ reason }) => ['period not said', 'beyond forecast'].includes(reason));

  it('that some of the passage lies beyond the forecast, where that need not be covered', () => {
    expect(said(400, 75)).toEqual([{ reason: 'beyond forecast', hours: 5 }]);
    expect(said(400, 96)).toEqual([]);
    expect(said(400, 48)).toEqual([]);
    expect(said(400, 48, { forecastMustCover: 24 })).toEqual([{ reason: 'beyond forecast', hours: 32 }]);
  });

  it('that the period of seas is left out where it is judged', () => {
    const missing = { period: null, seas: [1.4, 1.4] };
    expect(said(20, 48, { periodPerMetre: 3 }, missing)).toEqual([{ reason: 'period not said' }]);
    expect(said(20, 48, {}, missing)).toEqual([]);
    expect(said(20, 48, { periodPerMetre: 3 }, { ...missing, seas: [0.8, 0.8] })).toEqual([]);
    expect(said(20, 48, { periodPerMetre: 3 })).toEqual([]);
  });
});

describe('under way', () => {
  it('there is no window to wait for', () => {
    const entries = [anEntry('left', {}, issued)];
    const gale = steadyForecast(issued, [{ hours: 96, wind: [50, 50] }]);
    const { reasons, passage } = judged({ boat, entries, at: minutes(60), forecast: gale, simulations: 256 });
    expect(reasons.map(({ reason }) => reason)).toContain('under the score');
    expect(reasons.map(({ reason }) => reason)).not.toContain('no window');
    expect(passage!.toGo!.nm).toBeCloseTo(passage!.nm - passage!.nm / passage!.hours, 6);
  });
});

describe('the age of a forecast', () => {
  it('is said from 12 hours on, and past 24 she never goes by it', () => {
    const at = (hours: number) => told({}, issued + hours * 3_600_000).verdict;
    expect([at(24), at(24.1)]).toEqual(['go', 'hold']);
  });
});
