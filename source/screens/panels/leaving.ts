import { durationWords } from '../../words/say.ts';
import { curveLines } from '../charts/curve.ts';
import { apart, type Line, line, paragraph, type Stop, say } from '../lines.ts';
import { nameOf, type Sight } from '../sight.ts';
import { soonWords } from '../when.ts';

const STOP: Stop = { key: 'leaving', part: 'leaving', opens: { open: 'answer' } };
const HOUR_MS = 3_600_000;

/** When to leave: the countdown, how long she can wait, and the curve in `rows` lines, none where 0. */
export function leavingLines(sight: Sight, columns: number, rows: number): Line[] {
  const { document, model } = sight;
  const pointer = say(model.chosen === STOP.key ? '> ' : '  ', 'chosen');
  if (!document) return [{ ...line(pointer, say('LEAVING', 'title'), say('  working')), stop: STOP }];
  const { passage } = document;
  const to = passage
    ? ` for ${passage.name}, ${Math.round(passage.nm)} nm, about ${durationWords(Math.round(passage.hours))}`
    : '  no passage is planned';
  const title = [pointer, say('LEAVING', 'title'), say(to)];
  const waits = endurance(sight);
  const first = apart(title, waits === '' ? [] : [say(`${waits}  `)], columns);
  const lost = waits !== '' && first.spans.length === title.length;
  const curve = rows > 0 ? (curveLines(document, model.zone, columns - 4, rows) ?? []) : [];
  return [
    { ...first, stop: STOP },
    ...paragraph(countdown(sight), columns - 2, { indent: 2 }),
    ...(lost ? paragraph(waits, columns - 2, { indent: 2 }) : []),
    ...curve.map((text) => line(say(`  ${text}`))),
  ];
}

/** `opens in 1 d 22 h, Thu 06:00, for 9 h; closes: ...`, or what stands in the way of a countdown. */
export function countdown({ document, at, model }: Sight): string {
  if (!document) return '';
  const moment = (instant: string) => soonWords(Date.parse(instant), at, model.zone);
  const [window] = document.windows;
  if (window) {
    const wait = (Date.parse(window.at) - at) / HOUR_MS;
    const length = durationWords((Date.parse(window.until) - Date.parse(window.at)) / HOUR_MS);
    const opens = wait <= 0 ? 'open now' : `opens in ${durationWords(wait)}, ${moment(window.at)}`;
    return `${opens}, for ${length}${window.closes === null ? '' : `; closes: ${window.closes}`}`;
  }
  if (document.weatherAlone) {
    const { at: opens, startWorkBy } = document.weatherAlone;
    const work = startWorkBy === null ? '' : `; start the work by ${moment(startWorkBy)}`;
    return `the weather alone opens ${moment(opens)}${work}`;
  }
  return document.forecast ? 'no window in this forecast' : 'no forecast: no window can be told';
}

function endurance({ document, at, model, ...rest }: Sight): string {
  if (!document?.endurance) return '';
  const { until, item } = document.endurance;
  const name = nameOf({ document, at, model, ...rest }, item);
  return `she can wait until ${soonWords(Date.parse(until), at, model.zone)}; then ${name}`;
}
