import type { ActionDocument } from '../../words/document.ts';
import { amountWords, counted, durationWords, hundred } from '../../words/say.ts';
import { exactly, type Line, line, type Stop, say } from '../lines.ts';
import { nameOf, type Sight } from '../sight.ts';
import { pad } from '../width.ts';

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

/** An action as a person says it: `top up gear oil`, what it takes, how long, what the boat stands at then. */
export function actionWords(
  sight: Sight,
  action: ActionDocument,
): { text: string; takes: string; after: string } {
  const takes = action.takes.map(({ spare, count }) => {
    const item = sight.items.find(({ id }) => id === spare);
    const unit = item?.kind === 'spare' ? item.unit : 'each';
    return `${amountWords(count, unit)} ${unit === 'each' ? 'x ' : ''}${nameOf(sight, spare)}`;
  });
  return {
    text: `${action.do} ${nameOf(sight, action.item)}`,
    takes: takes.length === 0 ? '' : `takes ${takes.join(', ')}`,
    after: `${durationWords(action.minutes / 60)}, then the boat ${hundred(action.boatScoreAfter)}`,
  };
}

function nothingMore(verdict: string): string {
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
  const texts = Math.max(...words.map(({ text }) => text.length));
  const lines = shown.map((action, index): Line => {
    const { text, takes, after } = words[index]!;
    const stop: Stop = {
      key: `${label}:${action.item}`,
      part: label,
      opens: { open: 'item', id: action.item },
    };
    const wide = [pad(text, texts), takes, after].filter((part) => part !== '').join('   ');
    const fits = LABEL + 2 + wide.length <= columns;
    const said = fits ? wide : `${text}, ${durationWords(action.minutes / 60)}`;
    return labelled(index === 0 ? label : '', [say(said, tone(sight, stop))], stop, sight);
  });
  const left = actions.length - shown.length;
  if (left === 0) return lines.map((one) => exactly(one, columns));
  const stop: Stop = { key: `${label}:more`, part: label, opens: { open: 'answer' } };
  const more = labelled('', [say(`and ${left} more`, tone(sight, stop))], stop, sight);
  return [...lines, more].map((one) => exactly(one, columns));
}

function looksLines(sight: Sight): Line[] {
  const looks = sight.document?.beforeLeaving ?? [];
  if (looks.length === 0) return [];
  const stop: Stop = { key: 'looks', part: 'looks', opens: { open: 'answer' } };
  const minutes = looks.reduce((sum, look) => sum + (look.made ? 0 : look.minutes), 0);
  const made = looks.filter((look) => look.made).length;
  const told = [
    counted(looks.length, 'look', 'looks'),
    ...(made > 0 ? [`${made} made`] : []),
    ...(minutes > 0 ? [durationWords(minutes / 60)] : []),
  ];
  return [labelled('BEFORE LEAVING', [say(told.join(', '), tone(sight, stop))], stop, sight)];
}

function labelled(label: string, spans: Line['spans'], stop?: Stop, sight?: Sight): Line {
  const pointer = say(stop && sight?.model.chosen === stop.key ? '> ' : '  ', 'chosen');
  const whole = line(pointer, say(pad(label, LABEL), 'title'), say(' '), ...spans);
  return stop ? { ...whole, stop } : whole;
}

function tone({ model }: Sight, stop: Stop) {
  return model.chosen === stop.key ? 'chosen' : 'plain';
}
