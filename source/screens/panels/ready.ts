import type { ActionDocument } from '../../words/action-document.ts';
import { counted, durationWords } from '../../words/say.ts';
import { type ActionWords, actionWords } from '../action-words.ts';
import { exactly, type Line, line, paragraph, type Stop, say } from '../lines.ts';
import type { Sight } from '../sight.ts';
import { cut, pad, widthOf } from '../width.ts';

const LABEL = 15;

/** What to do to get ready, what is worth doing while held, what to look at before leaving: `most` actions of each at most. */
export function readyLines(sight: Sight, columns: number, most: number): Line[] {
  const { document } = sight;
  if (!document) return [];
  const { toGetReady, whileHeld } = document;
  const ready =
    toGetReady.length > 0
      ? actionLines(sight, 'TO GET READY', toGetReady, columns, most)
      : [labelled('TO GET READY', [say(nothingMore(document.verdict))])];
  return [
    ...ready,
    ...(whileHeld.length > 0 ? actionLines(sight, 'WHILE HELD', whileHeld, columns, most) : []),
    ...looksLines(sight),
  ];
}

/** The first thing to do, where there is no room for a list. */
export function firstThingLines(sight: Sight, columns: number): Line[] {
  const { document } = sight;
  const [first] = document?.toGetReady ?? [];
  if (!document || !first) return [];
  const left = document.toGetReady.length - 1;
  const more = left > 0 ? `, and ${left} more` : '';
  const text = `first: ${actionWords(sight, first).text}, ${durationWords(first.minutes / 60)}${more}`;
  return paragraph(text, columns - 2, { indent: 2, tone: 'title' });
}

/** Said where the list of work is empty. */
export function nothingMore(verdict: string): string {
  return verdict === 'not ready' ? 'no list of work known here is enough' : 'nothing more';
}

function actionLines(
  sight: Sight,
  label: string,
  actions: readonly ActionDocument[],
  columns: number,
  most: number,
): Line[] {
  const shown = actions.slice(0, actions.length <= most ? most : Math.max(1, most - 1));
  const words = shown.map((action) => actionWords(sight, action));
  const texts = Math.max(...words.map(({ text }) => widthOf(text)));
  const room = columns - LABEL - 5;
  const lines = shown.map((action, index): Line => {
    const key = `${label}:${index}:${action.item}`;
    const stop: Stop = { key, part: label, opens: { open: 'item', id: action.item } };
    const said = fitting(words[index]!, durationWords(action.minutes / 60), texts, room);
    return labelled(index === 0 ? label : '', [say(said, tone(sight, stop))], stop, sight);
  });
  const left = actions.length - shown.length;
  if (left === 0) return lines.map((one) => exactly(one, columns));
  const stop: Stop = { key: `${label}:more`, part: label, opens: { open: 'answer' } };
  const more = labelled('', [say(`and ${left} more`, tone(sight, stop))], stop, sight);
  return [...lines, more].map((one) => exactly(one, columns));
}

function looksLines(sight: Sight): Line[] {
  const told = looksWords(sight);
  if (told === '') return [];
  const stop: Stop = { key: 'looks', part: 'looks', opens: { open: 'answer' } };
  return [labelled('BEFORE LEAVING', [say(told, tone(sight, stop))], stop, sight)];
}

/** As much of an action as there is room for, its minutes always. */
function fitting({ text, takes, after }: ActionWords, minutes: string, texts: number, room: number): string {
  const joined = (...parts: string[]) => parts.filter((part) => part !== '').join('   ');
  const ways = [joined(pad(text, texts), takes, after), joined(text, takes, after), joined(text, after)];
  const fits = ways.find((way) => widthOf(way) <= room);
  return fits ?? `${cut(text, room - minutes.length - 2)}, ${minutes}`;
}

/** `9 looks, 2 made, 8 min`; nothing where none are asked for. */
export function looksWords({ document }: Sight): string {
  const looks = document?.beforeLeaving ?? [];
  if (looks.length === 0) return '';
  const minutes = looks.reduce((sum, look) => sum + (look.made ? 0 : look.minutes), 0);
  const made = looks.filter((look) => look.made).length;
  return [
    counted(looks.length, 'look', 'looks'),
    ...(made > 0 ? [`${made} made`] : []),
    ...(minutes > 0 ? [durationWords(minutes / 60)] : []),
  ].join(', ');
}

function labelled(label: string, spans: Line['spans'], stop?: Stop, sight?: Sight): Line {
  const pointer = say(stop && sight?.model.chosen === stop.key ? '> ' : '  ', 'chosen');
  const whole = line(pointer, say(pad(label, LABEL), 'title'), say(' '), ...spans);
  return stop ? { ...whole, stop } : whole;
}

function tone({ model }: Sight, stop: Stop) {
  return model.chosen === stop.key ? 'chosen' : 'plain';
}
