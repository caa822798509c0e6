import type { VerdictDocument } from '../../words/document.ts';
import { nothingLookedAt } from '../../words/not-looked-at.ts';
import { capital, hundred } from '../../words/say.ts';
import { soonWords } from '../when.ts';
import { plotLines, type Span } from './plot.ts';
import { timeTicks } from './time-axis.ts';

const TICK_COLUMNS = 8;

type Curve = Pick<
  VerdictDocument,
  'curve' | 'threshold' | 'sky' | 'windows' | 'weatherAlone' | 'verdict' | 'passage'
>;

/** The score by the hour of leaving, nights shaded and windows marked under it; without a forecast, the boat's alone. Null where there is no curve. */
export function curveLines(
  document: Curve,
  zone: string,
  columns: number,
  rows: number,
  { pointed, dotted }: { pointed?: number; dotted?: Curve } = {},
): string[] | null {
  const { points, judged } = pointsOf(document);
  if (points.length < 2) return null;
  const from = points[0]!.at;
  const to = points.at(-1)!.at;
  const limit = judged ? document.threshold.go : document.threshold.boat;
  return plotLines(
    {
      points,
      from,
      to,
      least: 0,
      most: 100,
      levels: [{ value: limit, word: judged ? `go from ${limit}` : `fit from ${limit}` }],
      ticks: [{ at: from, word: 'now' }, ...timeTicks(from, to, zone, Math.floor(columns / TICK_COLUMNS))],
      marks: [100, 50, 0],
      label: String,
      joined: 'straight',
      shaded: nightsOf(document),
      spans: windowsOf(document),
      corner: skyWord(document),
      ...(pointed === undefined ? {} : { pointed }),
      ...(dotted === undefined ? {} : { band: dotsOf(dotted, from, to) }),
    },
    columns,
    rows,
  );
}

/** Another curve, to be compared with this one, as dots. */
function dotsOf(document: Curve, from: number, to: number) {
  return pointsOf(document)
    .points.filter(({ at }) => at >= from && at <= to)
    .map(({ at, value }) => ({ at, low: value, high: value }));
}

function nightsOf({ sky }: Curve): Span[] {
  return (sky?.nights ?? []).map(({ from, until }) => ({ from: Date.parse(from), to: Date.parse(until) }));
}

/** The windows; where the boat is not ready for any, the weather's own. */
function windowsOf({ windows, weatherAlone, verdict }: Curve): (Span & { word: string })[] {
  const span = ({ at, until }: { at: string; until: string }, word: string) => ({
    from: Date.parse(at),
    to: Date.parse(until),
    word,
  });
  if (weatherAlone && (verdict === 'not ready' || windows.length === 0))
    return [span(weatherAlone, 'weather alone')];
  return windows.map((window) => span(window, 'window'));
}

function skyWord({ sky }: Curve): string {
  if (!sky) return '';
  if (sky.sun === 'rises and sets') return sky.nights.length > 0 ? '· night' : '';
  return sky.sun === 'does not set' ? 'no night' : '· no day';
}

/** When it is dark, in a sentence; nothing where no place is known. */
export function skySentence({ sky, at }: Pick<VerdictDocument, 'sky' | 'at'>, zone: string): string {
  if (!sky) return '';
  if (sky.sun !== 'rises and sets') return `The sun ${sky.sun} here now.`;
  const [night] = sky.nights;
  if (!night) return '';
  const moment = (instant: string) => soonWords(Date.parse(instant), Date.parse(at), zone);
  const from = Date.parse(night.from) <= Date.parse(at) ? 'now' : `from ${moment(night.from)}`;
  return `Dark ${from} to ${moment(night.until)}.`;
}

/** The same as one sentence. */
export function curveSentence(document: Curve & Pick<VerdictDocument, 'items'>, zone: string): string {
  const { points, judged } = pointsOf(document);
  const now = points[0];
  if (!now) return 'No departures were looked at.';
  if (!judged && nothingLookedAt(document))
    return 'Nothing vital was looked at yet: what is unknown counts as good here.';
  const best = points.reduce((most, point) => (point.value > most.value ? point : most), now);
  const worst = points.reduce((least, point) => (point.value < least.value ? point : least), now);
  const at = (moment: number) => soonWords(moment, now.at, zone);
  const doing = document.passage?.toGo ? 'going on' : 'leaving now';
  const what = judged ? capital(doing) : `The boat alone, ${doing}:`;
  if (points.length === 1) return `${what} ${hundred(now.value)}.`;
  if (best.value - worst.value < 1)
    return `${what} ${hundred(now.value)}, and the same at every hour until ${at(points.at(-1)!.at)}.`;
  return `${what} ${hundred(now.value)}; best ${hundred(best.value)} ${at(best.at)}, worst ${hundred(worst.value)} ${at(worst.at)}.`;
}

function pointsOf({ curve }: Curve) {
  const judged = curve.some(({ score }) => score !== null);
  const points = curve.flatMap(({ at, score, boat }) => {
    const value = judged ? score : boat;
    return value === null ? [] : [{ at: Date.parse(at), value }];
  });
  return { points, judged };
}
