import type { VerdictDocument } from '../../words/document.ts';
import { durationWords, lengthWords, sentence } from '../../words/say.ts';
import { stayingPresses } from '../../words/staying.ts';
import { actionWords } from '../action-words.ts';
import { curveLines } from '../charts/curve.ts';
import { apart, type Line, line, paragraph, type Stop, say } from '../lines.ts';
import { nameOf, type Sight } from '../sight.ts';
import { soonWords } from '../when.ts';

const STOP: Stop = { key: 'leaving', part: 'leaving', opens: { open: 'answer' } };
const HOUR_MS = 3_600_000;
const MOST_WORK = 2;

/** When to leave: where to, the countdown, how long she can wait, and the curve in `rows` lines, none where 0. */
export function leavingLines(sight: Sight, columns: number, rows: number): Line[] {
  const { document, model } = sight;
  const curve = document && rows > 0 ? (curveLines(document, model.zone, columns - 4, rows) ?? []) : [];
  const [title, ...rest] = passageLines(sight, columns);
  return [
    title!,
    ...countdownLines(sight, columns),
    ...rest,
    ...curve.map((text) => line(say(`  ${text}`, 'chart'))),
  ];
}

/** The passage planned, and how long she can wait: on one line where there is room. */
export function passageLines(sight: Sight, columns: number): [Line, ...Line[]] {
  const { document, model } = sight;
  const pointer = say(model.chosen === STOP.key ? '> ' : '  ', 'chosen');
  if (!document) return [{ ...line(pointer, say('LEAVING', 'title'), say('  working')), stop: STOP }];
  const going = document.passage?.toGo ? 'UNDER WAY' : 'LEAVING';
  const title = [pointer, say(going, 'title'), say(` ${passageWords(document)}`)];
  const waits = waitsWords(sight);
  if (waits === '') return [{ ...line(...title), stop: STOP }];
  const both = apart(title, [say(`${waits}  `)], columns);
  if (both.spans.length > title.length) return [{ ...both, stop: STOP }];
  return [{ ...line(...title), stop: STOP }, ...paragraph(waits, columns - 2, { indent: 2 })];
}

export function passageWords({ passage }: VerdictDocument): string {
  if (!passage) return 'with no passage planned';
  return `for ${passage.name}, ${lengthWords(passage)}`;
}

export function countdownLines(sight: Sight, columns: number): Line[] {
  return paragraph(countdown(sight), columns - 2, { indent: 2 });
}

/** `Opens in 1 d 22 h, Thu 06:00, for 9 h; closes: ...`, or what stands in the way of a countdown. */
export function countdown(sight: Sight): string {
  const { document } = sight;
  if (!document) return '';
  if (document.passage === null) return 'No passage is planned: no window can be told.';
  if (document.passage.toGo) return '';
  if (!document.forecast) return 'No forecast: no window can be told.';
  if (document.score.weather === null)
    return 'No window can be told: the forecast says nothing of this passage.';
  const [window] = document.windows;
  if (document.verdict !== 'not ready' && window) return windowWords(sight, document, window);
  if (document.weatherAlone) return aloneWords(sight, document, document.weatherAlone);
  return 'No window in this forecast.';
}

function windowWords(sight: Sight, document: VerdictDocument, window: VerdictDocument['windows'][number]) {
  const open = document.verdict === 'go' ? 'Open now' : 'By this forecast open now';
  const closes = window.closes === null ? 'open to the end of the forecast' : `closes: ${window.closes}`;
  const work = document.weatherAlone?.startWorkBy ? [workWords(sight, document)] : [];
  return sentence([`${opensWords(sight, window, 'Opens', open)}`, closes, ...work].join('; '));
}

/** The weather would do, the boat would not: what must be done by then, and when to start. */
function aloneWords(
  sight: Sight,
  document: VerdictDocument,
  alone: NonNullable<VerdictDocument['weatherAlone']>,
) {
  const opens = opensWords(sight, alone, 'The weather alone opens', 'The weather alone is open now');
  if (document.toGetReady.length > 0) return sentence(`${opens}; ${workWords(sight, document)}`);
  const waits = enduranceWords(sight);
  if (document.verdict !== 'not ready' && waits !== '') return sentence(`${opens}; but ${waits}`);
  return sentence(`${opens}; no work known here makes her ready by then`);
}

function opensWords(
  { at, model }: Sight,
  { at: from, until }: { at: string; until: string },
  opens: string,
  open: string,
): string {
  const hours = (Date.parse(from) - at) / HOUR_MS;
  const length = durationWords((Date.parse(until) - Date.parse(from)) / HOUR_MS);
  if (hours <= 0) return `${open}, for ${length}`;
  return `${opens} in ${durationWords(hours)}, ${soonWords(Date.parse(from), at, model.zone)}, for ${length}`;
}

/** `by then: top up Gear oil, renew Pencil, 1 h 20 min; start by Thu 04:40`. */
function workWords(sight: Sight, { toGetReady, toGetReadySuffices, weatherAlone }: VerdictDocument): string {
  const { at, model } = sight;
  const shown = toGetReady.slice(0, MOST_WORK).map((action) => actionWords(sight, action).text);
  const left = toGetReady.length - shown.length;
  const minutes = toGetReady.reduce((sum, action) => sum + action.minutes, 0);
  const work = [...shown, ...(left > 0 ? [`${left} more`] : [])].join(', ');
  const start = weatherAlone?.startWorkBy ? Date.parse(weatherAlone.startWorkBy) : null;
  const by =
    start === null ? [] : [start <= at ? 'start now' : `start by ${soonWords(start, at, model.zone)}`];
  const short = toGetReadySuffices ? [] : ['and that is not enough'];
  return [`by then: ${work}, ${durationWords(minutes / 60)}`, ...short, ...by].join('; ');
}

/** How long she can wait, and how long where she lies is tenable, where that is not said above all else; nothing where nothing ends. */
export function waitsWords(sight: Sight): string {
  const { document, at, model } = sight;
  const waits = enduranceWords(sight);
  if (!document?.staying || stayingPresses(document)) return waits;
  const here = `this anchorage until ${soonWords(Date.parse(document.staying.until), at, model.zone)}`;
  return waits === '' ? here : `${waits}; ${here}`;
}

/** How long she can wait, and what runs out then; nothing where nothing does. */
function enduranceWords(sight: Sight): string {
  const { document, at, model } = sight;
  if (!document?.endurance) return '';
  const { until, item } = document.endurance;
  return `she can wait until ${soonWords(Date.parse(until), at, model.zone)}; then ${nameOf(sight, item)} runs short`;
}
