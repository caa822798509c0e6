import type { VerdictDocument } from '../../words/document.ts';
import { durationWords } from '../../words/say.ts';
import { curveLines } from '../charts/curve.ts';
import { apart, type Line, line, paragraph, type Stop, say } from '../lines.ts';
import { nameOf, type Sight } from '../sight.ts';
import { soonWords } from '../when.ts';

const STOP: Stop = { key: 'leaving', part: 'leaving', opens: { open: 'answer' } };
const HOUR_MS = 3_600_000;

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
  const title = [pointer, say('LEAVING', 'title'), say(` ${passageWords(document)}`)];
  const waits = enduranceWords(sight);
  if (waits === '') return [{ ...line(...title), stop: STOP }];
  const both = apart(title, [say(`${waits}  `)], columns);
  if (both.spans.length > title.length) return [{ ...both, stop: STOP }];
  return [{ ...line(...title), stop: STOP }, ...paragraph(waits, columns - 2, { indent: 2 })];
}

export function passageWords({ passage }: VerdictDocument): string {
  if (!passage) return 'with no passage planned';
  const { name, nm, hours } = passage;
  return `for ${name}, ${Math.round(nm)} nm, about ${durationWords(Math.round(hours))}`;
}

export function countdownLines(sight: Sight, columns: number): Line[] {
  return paragraph(countdown(sight), columns - 2, { indent: 2 });
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

/** How long she can wait, and what runs out then; nothing where nothing does. */
export function enduranceWords(sight: Sight): string {
  const { document, at, model } = sight;
  if (!document?.endurance) return '';
  const { until, item } = document.endurance;
  return `she can wait until ${soonWords(Date.parse(until), at, model.zone)}; then ${nameOf(sight, item)} runs short`;
}
