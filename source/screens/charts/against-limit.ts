import { amountWords } from '../../words/say.ts';
import type { WeatherDocument } from '../../words/weather-document.ts';
import { soonWords } from '../when.ts';
import { plotLines } from './plot.ts';
import { timeTicks } from './time-axis.ts';

const TICK_COLUMNS = 8;
const HOUR_MS = 3_600_000;
const MOST_SPANS = 3;

export type Quantity = 'wind' | 'gust' | 'seas';

const UNITS = { wind: 'kn', gust: 'kn', seas: 'm' } as const;
export const QUANTITY_NAMES = { wind: 'wind', gust: 'gusts', seas: 'seas' } as const;

/** One quantity of one forecast over its hours, with the skipper's limit. Figures are NaN where nothing is said. */
export interface AgainstLimit {
  readonly quantity: Quantity;
  readonly from: number;
  readonly figures: readonly number[];
  /** One sd of each, null where it is not given. */
  readonly sds: readonly number[] | null;
  readonly limit: number | null;
}

export function againstLimit(weather: WeatherDocument, forecast: number, quantity: Quantity): AgainstLimit {
  const said = weather.forecasts[forecast]!;
  const known = (list: readonly (number | null)[]) => list.map((figure) => figure ?? Number.NaN);
  return {
    quantity,
    from: Date.parse(weather.from),
    figures: known(said[quantity]),
    sds: quantity === 'gust' ? null : known(quantity === 'wind' ? said.windSd : said.seasSd),
    limit: weather.limits[quantity],
  };
}

/** The forecast as a chart, its spread as dots, its limit as a dotted line; null where fewer than two hours are said. */
export function limitLines(
  chart: AgainstLimit,
  { zone, columns, rows, pointed }: { zone: string; columns: number; rows: number; pointed: number },
): string[] | null {
  const { quantity, figures, sds, limit } = chart;
  const at = (hour: number) => chart.from + hour * HOUR_MS;
  if (figures.filter((figure) => !Number.isNaN(figure)).length < 2) return null;
  const band = figures.map((figure, hour) => {
    const sd = sds?.[hour] ?? 0;
    return { at: at(hour), low: Math.max(0, figure - sd), high: figure + sd };
  });
  const highest = Math.max(limit ?? 0, ...band.flatMap(({ high }) => (Number.isNaN(high) ? [] : [high])));
  const [from, to] = [at(0), at(figures.length - 1)];
  const label = (value: number) => amountWords(value, UNITS[quantity]);
  const top = quantity === 'seas' ? Math.ceil(highest * 2) / 2 : Math.ceil(highest / 5) * 5;
  return plotLines(
    {
      points: figures.map((value, hour) => ({ at: at(hour), value })),
      ...(sds === null ? {} : { band }),
      from,
      to,
      least: 0,
      most: top || 1,
      levels: limit === null ? [] : [{ value: limit, word: `limit ${label(limit)}` }],
      ticks: timeTicks(from, to, zone, Math.floor(columns / TICK_COLUMNS)),
      marks: [top || 1, 0],
      label,
      joined: 'straight',
      pointed,
    },
    columns,
    rows,
  );
}

/** The same as one sentence: `Wind 23 kn now; most 29 kn Sun 04:30, least 10 kn Fri 12:30; over the limit of 22 kn Wed 07:30 to Thu 02:30.` */
export function limitSentence({ quantity, from, figures, limit }: AgainstLimit, zone: string): string {
  const name = QUANTITY_NAMES[quantity];
  const unit = UNITS[quantity];
  const said = figures.flatMap((value, hour) => (Number.isNaN(value) ? [] : [{ hour, value }]));
  const [first] = said;
  if (!first) return `Nothing is said of ${name}: that is not calm.`;
  const moment = (hour: number) => (hour === 0 ? 'now' : soonWords(from + hour * HOUR_MS, from, zone));
  const words = ({ hour, value }: { hour: number; value: number }) =>
    `${amountWords(value, unit)} ${moment(hour)}`;
  const most = said.reduce((best, one) => (one.value > best.value ? one : best));
  const least = said.reduce((best, one) => (one.value < best.value ? one : best));
  const capital = name.charAt(0).toUpperCase() + name.slice(1);
  return `${[
    `${capital} ${words(first)}`,
    `most ${words(most)}, least ${words(least)}`,
    overWords(figures, limit, unit, moment),
    ...(said.length < figures.length ? ['not said at every hour'] : []),
  ].join('; ')}.`;
}

function overWords(
  figures: readonly number[],
  limit: number | null,
  unit: string,
  moment: (hour: number) => string,
): string {
  if (limit === null) return 'no limit is set';
  const runs = runsOver(figures, limit);
  const named = `the limit of ${amountWords(limit, unit)}`;
  if (runs.length === 0) return `never over ${named}`;
  const shown = runs.slice(0, MOST_SPANS).map(([first, last]) => `${moment(first)} to ${moment(last + 1)}`);
  const left = runs.length - shown.length;
  return `over ${named} ${[...shown, ...(left > 0 ? [`${left} times more`] : [])].join(', ')}`;
}

function runsOver(figures: readonly number[], limit: number): [first: number, last: number][] {
  const runs: [number, number][] = [];
  figures.forEach((figure, hour) => {
    if (!(figure > limit)) return;
    const last = runs.at(-1);
    if (last && last[1] === hour - 1) last[1] = hour;
    else runs.push([hour, hour]);
  });
  return runs;
}
