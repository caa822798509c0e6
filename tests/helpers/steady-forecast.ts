import type { Forecast, Step } from '../../source/forecast/forecast.ts';

const MS_AN_HOUR = 3_600_000;
const calm: Omit<Step, 'from' | 'to'> = {
  wind: [10, 10],
  dir: 200,
  gust: 14,
  seas: [0.8, 0.8],
  period: 6,
  periodKind: null,
  pressure: 1015,
  squalls: null,
  how: 'typed',
};

/** An invented forecast for everywhere, of steps one after the other from its issue on; each says what differs from a quiet day, and how long it lasts. */
export function steadyForecast(
  issuedAt: number,
  steps: readonly (Partial<Step> & { readonly hours: number })[],
  more: Partial<Forecast> = {},
): Forecast {
  const instant = (hour: number) => new Date(issuedAt + hour * MS_AN_HOUR).toISOString();
  let from = 0;
  const laid = steps.map(({ hours, ...said }) => {
    from += hours;
    return { ...calm, ...said, from: instant(from - hours), to: instant(from) };
  });
  return {
    format: 1,
    source: 'typed',
    issuer: '',
    issuedAt: instant(0),
    receivedAt: instant(0),
    sha256: '0'.repeat(64),
    places: [{ place: '', headlines: [], steps: laid }],
    notRead: [],
    problems: [],
    ...more,
  };
}
