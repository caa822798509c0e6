import type { VerdictDocument } from '../words/document.ts';
import { STATE_WORDS } from '../words/reasons.ts';
import { capital, sentence } from '../words/say.ts';
import { stayingPresses } from '../words/staying.ts';
import { actionPhrase } from './action-words.ts';
import { bindingsAt } from './bindings.ts';
import { boardPlaces } from './board.ts';
import { curveSentence, skySentence } from './charts/curve.ts';
import { CARET } from './field.ts';
import { figuresOf } from './item-figures.ts';
import { type Line, line, paragraph, say, textOf } from './lines.ts';
import { type Model, pageOf } from './model.ts';
import { headingLine } from './panels/heading.ts';
import { countdown, passageWords, waitsWords } from './panels/leaving.ts';
import { looksWords, nothingMore } from './panels/ready.ts';
import { scoreWords, stayingWords } from './panels/verdict.ts';
import { type Sight, sightOf } from './sight.ts';
import { troublePageLines } from './trouble-page.ts';
import { turnedPage } from './turned.ts';

/** Wide enough that no sentence is broken: the reader does that. */
const WIDE = 1000;

/** The page for a screen reader: sentences one under the other, no pictures, no columns, nothing out of sight but what is moved to. */
export function spokenLines(model: Model): Line[] {
  const wide: Model = { ...model, arrows: false, size: { ...model.size, columns: WIDE } };
  const page = pageOf(wide);
  const turned = page.page === 'board' ? null : turnedPage(wide, page);
  const lines = turned ? [turned.title, ...turned.lines] : boardSentences(wide);
  const worded = lines.filter(({ spans }) => !spans.some(({ tone }) => tone === 'chart'));
  const told = worded
    .filter((_, at) => !isOverNothing(worded, at))
    .map(heardOf)
    .filter((text) => text !== '');
  return [...told, ...(model.notice === null ? [] : [capital(model.notice)]), keysSentence(model)].map(
    (text) => line(say(text)),
  );
}

function heardOf(one: Line): string {
  return (one.heard ?? textOf(one)).replace(CARET, '').replace(/\s+/gu, ' ').trim();
}

/** A heading under which nothing is heard: what is there is in sight alone. */
function isOverNothing(lines: readonly Line[], at: number): boolean {
  if (!isHeading(lines[at]!)) return false;
  const after = lines.slice(at + 1);
  const end = after.findIndex((one) => isHeading(one) || textOf(one).trim() === '');
  const under = end < 0 ? after : after.slice(0, end);
  return under.length > 0 && under.every((one) => heardOf(one) === '');
}

function isHeading({ spans }: Line): boolean {
  const said = spans.filter(({ text }) => text.trim() !== '');
  return said.length > 0 && said.every(({ tone }) => tone === 'title');
}

/** The answer, then the one place the choice rests on: the rest is a key away, and is not read out again at each. */
function boardSentences(model: Model): Line[] {
  const sight = sightOf(model);
  if (!sight) {
    return model.boat.is === 'loading'
      ? paragraph('The boat folder is being read.', WIDE)
      : [line(say('This boat cannot be opened.')), ...troublePageLines(model)];
  }
  const { document } = sight;
  const told = document ? answerSentences(sight, document) : ['The answer is being worked out.'];
  return [headingLine(sight, WIDE), ...[...told, placeSentence(sight)].map((text) => line(say(text)))];
}

function answerSentences(sight: Sight, document: VerdictDocument): string[] {
  const actions = (label: string, list: VerdictDocument['toGetReady']) =>
    list.map((action, index) =>
      sentence(`${label}, ${index + 1} of ${list.length}: ${actionPhrase(sight, action)}`),
    );
  return [
    ...(stayingPresses(document) ? stayingWords(sight) : []),
    `Verdict: ${document.verdict}. ${capital(scoreWords(document, sight.boat.working))}.`,
    ...document.reasons,
    sentence(`leaving ${passageWords(document)}`),
    countdown(sight),
    ...[waitsWords(sight)].filter((words) => words !== '').map(sentence),
    curveSentence(document, sight.model.zone),
    skySentence(document, sight.model.zone),
    ...(document.toGetReady.length === 0 ? [sentence(`to get ready: ${nothingMore(document.verdict)}`)] : []),
    ...actions('to get ready', document.toGetReady),
    ...actions('while held', document.whileHeld),
    ...[looksWords(sight)]
      .filter((words) => words !== '')
      .map((words) => sentence(`before leaving: ${words}`)),
  ];
}

function placeSentence(sight: Sight): string {
  const places = boardPlaces(sight.model).filter(({ stop }) => stop);
  const at = places.findIndex(({ stop }) => stop?.key === sight.model.chosen);
  const place = places[at];
  if (!place?.stop) return `${places.length} places on the board; down goes to the first.`;
  const where = `${at + 1} of ${places.length}`;
  const { opens } = place.stop;
  const item = opens.open === 'item' ? sight.items.find(({ id }) => id === opens.id) : undefined;
  if (!item) return `${where}: ${textOf(place).replace(/^[>\s]+/u, '')}`;
  const state = item.state === null ? 'working' : STATE_WORDS[item.state];
  const figures = figuresOf(sight, item)
    .slice(0, 3)
    .map(([label, text]) => `${label} ${text}`);
  const why = item.reason === null ? '' : ` ${sentence(item.reason)}`;
  return `${where}: ${item.name}, ${state}.${why} ${capital(figures.join('; '))}.`;
}

function keysSentence(model: Model): string {
  const shorts = bindingsAt(model).flatMap(({ short }) => (short === undefined ? [] : [short]));
  return `Keys: ${shorts.join(', ').replace('↑↓', 'up and down').replace('←→', 'left and right').replace('→', 'right').replace('↓', 'down')}.`;
}
