import type { ActionDocument } from './action-document.ts';
import { chanceWords } from './chances.ts';
import { cleaned } from './cleaned.ts';
import type { VerdictDocument } from './document.ts';
import { sourceWords } from './forecast-source.ts';
import { decisionSentence, nowSentence } from './forecasts-lines.ts';
import { wrapped } from './lines.ts';
import { nothingLookedAt, takenForGood } from './not-looked-at.ts';
import { itemSections } from './page-items.ts';
import { amountWords, capital, counted, durationWords, hundred, lengthWords, momentWords } from './say.ts';
import { stayingPresses } from './staying.ts';

/** Said under every verdict (model 9). */
export const AID =
  "This is an aid: it knows the log, not the boat. The skipper decides. Makers' manuals, local rules and licensed people come first.";

/** More troubles than this are counted; `inspect` has them all. */
const MOST_TROUBLES = 5;

/** How wide the page is and in which zone (an IANA name) its moments are given. */
interface Sheet {
  readonly columns: number;
  readonly zone: string;
}

/** The plain verdict, as printed off a terminal: in the skipper's reading order, as sentences and aligned columns, no line of words longer than `columns`, moments in `zone` (an IANA name). Ends with a line feed. */
export function verdictPage(answer: VerdictDocument, columns: number, zone: string): string {
  const document = cleaned(answer, ['trouble']);
  const sheet = { columns, zone };
  const sections = [
    header(document, sheet),
    stayingPresses(document) ? wrapped(`STAYING: ${stayingSentences(document, zone)}`, columns) : [],
    verdict(document, sheet),
    leaving(document, sheet),
    toGetReady(document, sheet),
    document.whileHeld.length > 0 ? work('WORTH DOING WHILE HELD', document.whileHeld, document, sheet) : [],
    beforeLeaving(document, sheet),
    ...itemSections(document, columns, zone),
    trouble(document),
    wrapped(AID, columns),
  ];
  const shown = sections.filter((section) => section.length > 0);
  return `${shown.map((section) => section.join('\n')).join('\n\n')}\n`;
}

function header(document: VerdictDocument, { columns, zone }: Sheet): string[] {
  const at = Date.parse(document.at);
  const forecast = document.forecast
    ? `The forecast, ${sourceWords(document.forecast)}${document.forecast.chosen ? ', by your choice' : ''}, is ${durationWords(document.forecast.ageHours)} old.`
    : 'No forecast.';
  return [
    ...wrapped(`${document.boat.toUpperCase()}, ${whereabouts(document, at)}`, columns),
    ...wrapped(`As of ${momentWords(at, zone)} (${zone}). ${forecast}`, columns),
  ];
}

function whereabouts(document: VerdictDocument, at: number): string {
  if (document.underWaySince !== null)
    return `under way for ${durationWords((at - Date.parse(document.underWaySince)) / 3_600_000)}`;
  if (!document.anchorage) return 'lying';
  const { name, since } = document.anchorage;
  if (since === null) return `lying at ${name}`;
  return `lying at ${name}, day ${Math.floor((at - Date.parse(since)) / 86_400_000) + 1}`;
}

function stayingSentences({ staying, at }: VerdictDocument, zone: string): string {
  if (!staying) return '';
  const from = momentWords(Date.parse(staying.until), zone, Date.parse(at));
  return `untenable from ${from}. ${capital(staying.why)}.`;
}

function verdict(document: VerdictDocument, { columns }: Sheet): string[] {
  const { verdict, reasons } = document;
  return [
    verdict.toUpperCase(),
    ...wrapped(scoreSentence(document), columns, 2, 2),
    ...reasons.flatMap((reason) => wrapped(reason, columns, 2, 2)),
  ];
}

function scoreSentence(document: VerdictDocument): string {
  const { score, threshold } = document;
  const from = `she is ready from ${threshold.boat}`;
  if (nothingLookedAt(document)) {
    const alone = score.weather === null ? '' : `; the weather alone ${hundred(score.weather)}`;
    return `No boat score yet, since nothing vital was looked at; ${from}${alone}.`;
  }
  const weather = score.weather === null ? '' : `; with the weather ${hundred(score.now ?? 0)}`;
  const taken = takenForGood(document);
  return `Boat score ${chanceWords(score.boat / 100)} (${hundred(score.boat)})${taken === '' ? '' : `, where ${taken}`}; ${from}${weather}.`;
}

function leaving(document: VerdictDocument, { columns, zone }: Sheet): string[] {
  const { passage, windows, weatherAlone, endurance } = document;
  const at = Date.parse(document.at);
  const moment = (instant: string) => momentWords(Date.parse(instant), zone, at);
  const lines: string[] = document.forecast ? [] : ['When to leave is not known: no forecast.'];
  for (const window of windows) {
    const hours = (Date.parse(window.until) - Date.parse(window.at)) / 3_600_000;
    lines.push(
      `Window: ${moment(window.at)}, for ${durationWords(hours)}, ${hundred(window.score)}.`,
      ...(window.closes === null ? [] : [`It closes: ${window.closes}.`]),
    );
  }
  if (weatherAlone?.startWorkBy)
    lines.push(
      `The weather alone opens ${moment(weatherAlone.at)}: start the work by ${moment(weatherAlone.startWorkBy)}.`,
    );
  if (endurance)
    lines.push(
      `She can wait until ${moment(endurance.until)}; then ${nameOf(document, endurance.item)} runs short.`,
    );
  if (document.staying && !stayingPresses(document))
    lines.push(`Where she lies is ${stayingSentences(document, zone)}`);
  for (const { name, verdict, score } of document.shelter)
    lines.push(`Shelter: ${name}: ${verdict}${score === null ? '' : `, ${hundred(score)}`}.`);
  for (const said of [nowSentence(document, zone), decisionSentence(document, zone)])
    if (said !== null) lines.push(said);
  const title = passage
    ? `${passage.toGo ? 'UNDER WAY' : 'LEAVING'}: ${passage.name}, ${lengthWords(passage)}`
    : 'LEAVING';
  return [...wrapped(title, columns, 0, 2), ...lines.flatMap((line) => wrapped(line, columns, 2, 2))];
}

function toGetReady(document: VerdictDocument, sheet: Sheet): string[] {
  const { toGetReady: actions, toGetReadySuffices, threshold } = document;
  if (toGetReadySuffices) return work('TO GET READY', actions, document, sheet);
  const short = `othing known here brings her to ${threshold.boat}.`;
  if (actions.length === 0) return ['TO GET READY', ...wrapped(`N${short}`, sheet.columns, 2, 2)];
  return [
    ...work('TO GET READY', actions, document, sheet),
    ...wrapped(`That is not enough: n${short}`, sheet.columns, 2, 2),
  ];
}

function work(
  title: string,
  actions: readonly ActionDocument[],
  document: VerdictDocument,
  { columns }: Sheet,
): string[] {
  const minutes = actions.reduce((sum, action) => sum + action.minutes, 0);
  const total = actions.length === 0 ? 'nothing' : durationWords(minutes / 60);
  return [
    ...wrapped(`${title}: ${total}`, columns, 0, 2),
    ...actions.flatMap((action, index) =>
      wrapped(`${index + 1}. ${actionWords(action, document)}`, columns, 2, 3),
    ),
  ];
}

/** Where the bare word would not read as something to do. */
const VERBS: { readonly [action: string]: string } = { look: 'Look at', service: 'Do' };

function actionWords(action: ActionDocument, document: VerdictDocument): string {
  const some = (spare: string, count: number) => {
    const item = document.items.find(({ id }) => id === spare);
    const unit = item?.kind === 'spare' ? item.unit : 'each';
    const amount = amountWords(count, unit);
    return `${unit === 'each' ? `${amount} x` : amount} ${nameOf(document, spare)}`;
  };
  const takes = action.takes.map(({ spare, count }) => some(spare, count));
  const what = action.buys === null ? nameOf(document, action.item) : some(action.item, action.buys);
  const words = [
    `${VERBS[action.do] ?? capital(action.do)}: ${what}`,
    durationWords(action.minutes / 60),
    ...(takes.length === 0 ? [] : [`takes ${takes.join(', ')}`]),
  ];
  const then = action.do === 'look' ? 'if found well the boat is' : 'then the boat is';
  return `${words.join(', ')}; ${then} ${hundred(action.boatScoreAfter)}.`;
}

function beforeLeaving(document: VerdictDocument, { columns }: Sheet): string[] {
  const looks = document.beforeLeaving;
  if (looks.length === 0) return [];
  const minutes = looks.reduce((sum, look) => sum + (look.made ? 0 : look.minutes), 0);
  const open = looks.filter(({ made }) => !made).length;
  const left = open === 0 ? 'all made' : `${counted(open, 'look', 'looks')}, ${durationWords(minutes / 60)}`;
  return [
    ...wrapped(`BEFORE THE ANCHOR COMES UP: ${left}`, columns, 0, 2),
    ...looks.flatMap(({ check, made }) =>
      wrapped(`${made ? 'made' : 'to do'}: ${nameOf(document, check)}`, columns, 2, 2),
    ),
  ];
}

function trouble({ trouble }: VerdictDocument): string[] {
  if (trouble.length === 0) return [];
  const more = trouble.length - MOST_TROUBLES;
  return [
    'TROUBLE',
    ...trouble
      .slice(0, MOST_TROUBLES)
      .flatMap((one) => one.split('\n').map((line, index) => `${index === 0 ? '  ' : '    '}${line}`)),
    ...(more > 0 ? [`  and ${more} more: hoveshort inspect`] : []),
  ];
}

function nameOf(document: VerdictDocument, id: string): string {
  return document.items.find((item) => item.id === id)?.name ?? id;
}
