import type { ActionDocument } from './action-document.ts';
import type { VerdictDocument } from './document.ts';
import { sourceWords } from './forecast-source.ts';
import type { ItemDocument } from './item-document.ts';
import { nothingLookedAt, takenForGood } from './not-looked-at.ts';
import { AID } from './page.ts';
import { capital, counted, durationWords, hundred, lengthWords, momentWords, sentence } from './say.ts';
import { stayingPresses } from './staying.ts';

/** Half a page is for what decides; the verdict has the rest. */
const MOST_REASONS = 4;
const MOST_ACTIONS = 4;
const MOST_WATCHED = 3;

/** The answer in paragraphs of whole sentences, to be read aloud or copied into a log book: the danger of staying, the verdict and why, what first, what to keep an eye on, the weather. Moments in `zone`, an IANA name. The document is clean already. */
export function briefOf(document: VerdictDocument, zone: string): string[] {
  const at = Date.parse(document.at);
  const moment = (instant: string) => momentWords(Date.parse(instant), zone, at);
  const presses = stayingPresses(document);
  const paragraphs = [
    [
      `${document.boat}, ${momentWords(at, zone)} (${zone}).`,
      ...(presses ? stayingSentences(document, moment) : []),
    ],
    verdictSentences(document),
    workSentences(document, moment),
    watchSentences(document),
    [...weatherSentences(document, moment), ...(presses ? [] : stayingSentences(document, moment))],
    [AID],
  ];
  return paragraphs.filter((sentences) => sentences.length > 0).map((sentences) => sentences.join(' '));
}

type Moment = (instant: string) => string;

function stayingSentences({ staying }: VerdictDocument, moment: Moment): string[] {
  if (!staying) return [];
  return [`Where she lies is untenable from ${moment(staying.until)}.`, sentence(staying.why)];
}

const VERDICTS = {
  go: 'Go.',
  hold: 'Hold: she is fit, the weather is not, or is not known.',
  'not ready': 'Not ready.',
};

function verdictSentences(document: VerdictDocument): string[] {
  const { verdict, reasons } = document;
  const more = reasons.length - MOST_REASONS;
  return [
    `${VERDICTS[verdict]} ${scoreSentence(document)}`,
    ...reasons.slice(0, MOST_REASONS),
    ...(more > 0 ? [`And ${counted(more, 'more reason', 'more reasons')}.`] : []),
  ];
}

function scoreSentence(document: VerdictDocument): string {
  const { score } = document;
  if (nothingLookedAt(document)) return 'There is no score yet, since nothing vital was looked at.';
  const taken = takenForGood(document);
  return `The boat is at ${hundred(score.boat)}${taken === '' ? '' : `, where ${taken}`}${score.now === null ? '' : `, with the weather at ${hundred(score.now)}`}.`;
}

function workSentences(document: VerdictDocument, moment: Moment): string[] {
  const { toGetReady, toGetReadySuffices, whileHeld, beforeLeaving, threshold, weatherAlone } = document;
  const open = beforeLeaving.filter(({ made }) => !made).length;
  const sentences: string[] = [];
  if (toGetReady.length > 0) sentences.push(...listed('First', toGetReady, document));
  if (!toGetReadySuffices) {
    const later = weatherAlone !== null && weatherAlone.at > document.at;
    const when = later ? ` by ${moment(weatherAlone.at)}, when the weather alone opens` : '';
    const short = `othing known here brings her to ${threshold.boat}${when}.`;
    sentences.push(toGetReady.length > 0 ? `That is not enough: n${short}` : `N${short}`);
  }
  if (whileHeld.length > 0) sentences.push(...listed('Worth doing while held', whileHeld, document));
  if (open > 0)
    sentences.push(
      `Before the anchor comes up there ${open === 1 ? 'is' : 'are'} ${counted(open, 'look', 'looks')} to make.`,
    );
  return sentences;
}

/** Where the bare word would not read as something to do. */
const VERBS: { readonly [action: string]: string } = {
  look: 'look at',
  service: 'do',
  'stop the leak': 'stop the leak of',
};

function listed(title: string, actions: readonly ActionDocument[], document: VerdictDocument): string[] {
  const minutes = actions.reduce((sum, action) => sum + action.minutes, 0);
  const time = minutes === 0 ? '' : `, ${durationWords(minutes / 60)} in all`;
  const shown = actions.slice(0, MOST_ACTIONS);
  const more = actions.length - shown.length;
  const names = shown.map((action) => `${VERBS[action.do] ?? action.do} ${nameOf(document, action.item)}`);
  if (more > 0) names.push(`${more} more`);
  return [`${title}${time}: ${names.join('; ')}.`];
}

function watchSentences({ items }: VerdictDocument): string[] {
  const watched = items.filter(({ state }) => state === 'watch');
  if (watched.length === 0) return [];
  const shown = watched.slice(0, MOST_WATCHED).map(watchPhrase);
  const more = watched.length - shown.length;
  return [
    `Keep an eye on ${counted(watched.length, 'thing', 'things')}.`,
    ...shown,
    ...(more > 0 ? [`And ${more} more.`] : []),
  ];
}

function watchPhrase({ name, reason }: ItemDocument): string {
  return reason === null
    ? sentence(name)
    : `${capital(name)}: ${reason.slice(0, 1).toLowerCase()}${reason.slice(1)}`;
}

function weatherSentences(document: VerdictDocument, moment: Moment): string[] {
  const { forecast, windows, weatherAlone, endurance, passage } = document;
  if (passage === null) return [];
  const [window] = windows;
  const sentences = forecast
    ? [`The forecast, ${sourceWords(forecast)}, is ${durationWords(forecast.ageHours)} old.`]
    : ['No forecast is aboard, so when to leave is not known.'];
  if (window) {
    const closes = window.closes === null ? '' : `, when ${window.closes}`;
    sentences.push(
      `For ${passage.name} the first window is from ${moment(window.at)} until ${moment(window.until)}${closes}: ${hundred(window.score)} end well.`,
    );
  } else if (passage.toGo) sentences.push(`Under way for ${passage.name}, ${lengthWords(passage)}.`);
  else if (forecast) sentences.push(`For ${passage.name} there is no window in it.`);
  if (weatherAlone?.startWorkBy)
    sentences.push(
      `The weather alone opens ${moment(weatherAlone.at)}; to be ready then, start the work by ${moment(weatherAlone.startWorkBy)}.`,
    );
  if (endurance)
    sentences.push(
      `She can wait until ${moment(endurance.until)}; then ${nameOf(document, endurance.item)} runs short.`,
    );
  return sentences;
}

function nameOf({ items }: VerdictDocument, id: string): string {
  return items.find((item) => item.id === id)?.name ?? id;
}
