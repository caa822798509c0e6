import type { Stream } from '../../source/maths/stream.ts';
import { type Binding, bindingsOn } from '../../source/screens/bindings.ts';
import type { Message, PageName } from '../../source/screens/model.ts';

/** A key as a terminal sends it, in one piece. */
export type Key = string;

/** Keys by the name the key table has for them, as an xterm sends them; all others are their own letter. */
const SENT = {
  up: '\u001b[A',
  down: '\u001b[B',
  right: '\u001b[C',
  left: '\u001b[D',
  home: '\u001b[H',
  end: '\u001b[F',
  'page up': '\u001b[5~',
  'page down': '\u001b[6~',
  delete: '\u001b[3~',
  'back tab': '\u001b[Z',
  tab: '\t',
  enter: '\r',
  escape: '\u001b',
  backspace: '\u007f',
  space: ' ',
  'ctrl a': '\u0001',
  'ctrl e': '\u0005',
  'ctrl k': '\u000b',
  'ctrl l': '\u000c',
  'ctrl o': '\u000f',
  'ctrl u': '\u0015',
  'ctrl w': '\u0017',
} as const;
const sentAs = new Map<string, Key>(Object.entries(SENT));
const nameOf = new Map<Key, string>(Object.entries(SENT).map(([name, sent]) => [sent, name]));
const { enter: ENTER, escape: ESCAPE, tab: TAB, down: DOWN } = SENT;

/** What ends the program, stops it, or gives the terminal to another: nothing can be compared after it. */
const LEAVING: readonly Binding['act'][] = ['quit', 'suspend', 'edit boat', 'leave unmade'];

/** The keys that lead to each page from the board; `*` is some way down it. */
const WAYS: readonly (readonly [page: PageName, keys: string])[] = [
  ['board', ''],
  ['item', '*\r'],
  ['item', '*\r'],
  ['answer', '\r'],
  ['weather', 'w'],
  ['forecasts', 'wf'],
  ['heard', 'wt'],
  ['heard', 'wft'],
  ['stores', 's'],
  ['log', 'L'],
  ['round', 'r'],
  ['round', 'r'],
  ['boat', 'b'],
  ['boat item', 'b*\r'],
  ['preferences', ','],
  ['trouble', '!'],
  ['keys', '?'],
  ['trace', 'jjjj\rf'],
  ['form', '*\rd'],
  ['form', 'jjjj\rt'],
  ['form', '*\rn'],
  ['form', '*\re'],
  ['form', '*\ro'],
  ['form', '*\rm'],
  ['form', 'i'],
  ['form', 'm'],
  ['form', 'A'],
  ['form', 'P'],
  ['form', 'S'],
  ['form', 's\u001b[B\r'],
  ['form', 's+'],
  ['form', 's='],
  ['form', 'Ljx'],
];

/** What is typed into fields. Without the letters of `LEAVING`, since it may fall on a page that has no field. */
const TEXTS: readonly string[] = [
  '1/2',
  '+.2',
  '-.1',
  '3/4',
  '300 ml',
  '2,5',
  '0.4 l',
  'full',
  'off',
  'no',
  'y',
  'wet',
  'drops',
  '60%',
  '3 h ago',
  'yesterday 18:00',
  'f5',
  'sw 4-5 / 6, 1.5 m',
  'gear',
  'imp',
  'new seal',
  '1e9',
  '-1',
  '12.7',
  '=',
  'caf\u00e9',
  'cafe\u0301',
  '\u71c8\u53f0',
  '\u05e9\u05dc\u05d5\u05dd',
  '\ud83d\udc69\u200d\ud83d\udd27',
];
const PASTED: readonly string[] = [
  'new seal\nfitted\r\nat anchor',
  '\u001b[2J\u0007 1/2',
  '0.5',
  'line upon line\n'.repeat(8),
  '\u202eabc \u6f22\u5b57',
];
const EDITING: readonly Key[] = (
  ['backspace', 'delete', 'left', 'right', 'home', 'end', 'ctrl a', 'ctrl u', 'ctrl w'] as const
).map((name) => SENT[name]);

/** A script by chance: page after page, on each the keys it offers, texts, and keys that do nothing there. */
export function keyScript({ uniform }: Stream): Key[] {
  const keys: Key[] = [];
  const parts = 1 + Math.floor(uniform() * 4);
  for (let part = 0; part < parts; part += 1) {
    const backs = part === 0 ? 0 : Math.floor(uniform() * 7);
    keys.push(...Array.from({ length: backs }, () => ESCAPE));
    const [page, way] = one(WAYS);
    for (const letter of way.match(/\u001b\[B|./gsu) ?? [])
      keys.push(
        ...(letter === '*' ? Array.from({ length: 1 + Math.floor(uniform() * 24) }, () => 'j') : [letter]),
      );
    const offered = offeredOn(page);
    const length = 2 + Math.floor(uniform() * 10);
    for (let n = 0; n < length; n += 1) keys.push(...some(offered));
  }
  return keys;

  function some(offered: readonly Key[]): readonly Key[] {
    const chance = uniform();
    if (chance < 0.5) return [one(offered)];
    if (chance < 0.72) return [...typed(one(TEXTS)), one([ENTER, ENTER, TAB, DOWN])];
    if (chance < 0.8) return typed(one(TEXTS));
    if (chance < 0.88) return [one(EDITING)];
    if (chance < 0.93) return [`\u001b[200~${one(PASTED)}\u001b[201~`];
    if (chance < 0.97) return [ENTER];
    return [one(offeredOn('board'))];
  }

  function one<T>(of: readonly T[]): T {
    return of[Math.floor(uniform() * of.length)]!;
  }
}

/** What the board is told by a key of a script. */
export function messageOf(key: Key): Message {
  const pasted = /^\u001b\[200~(.*)\u001b\[201~$/su.exec(key);
  return pasted ? { is: 'pasted', text: pasted[1]! } : { is: 'key', key: nameOf.get(key) ?? key };
}

/** Every key of the table that works on the page, but those that leave. */
function offeredOn(page: PageName): Key[] {
  return bindingsOn(page)
    .filter(({ act }) => !LEAVING.includes(act))
    .flatMap(({ keys }) => keys.map((key) => sentAs.get(key) ?? key));
}

/** As fingers and input methods send it: letter by letter, what is joined in one piece. */
function typed(text: string): Key[] {
  return [...new Intl.Segmenter().segment(text)].map(({ segment }) => segment);
}

/** The same keys in chunks by chance, cut between keys: from one or two at a time to all at once. */
export function inChunks(keys: readonly Key[], { uniform }: Stream): Key[][] {
  const mean = [2, 4, 8, Number.POSITIVE_INFINITY][Math.floor(uniform() * 4)]!;
  const chunks: Key[][] = [[]];
  for (const [index, key] of keys.entries()) {
    chunks.at(-1)!.push(key);
    if (uniform() < 1 / mean && index < keys.length - 1) chunks.push([]);
  }
  return chunks;
}
