import type { State } from '../readiness/answer.ts';
import { STATE_WORDS } from '../words/reasons.ts';
import { exactly, type Line, line, paragraph, type Stop, say } from './lines.ts';
import type { ShownItem } from './shown-item.ts';
import type { Sight } from './sight.ts';
import { cut, onThePoint, pad, widthOf } from './width.ts';

/** One panel of the board: a title, heads over its columns, a row an item. */
export interface Panel<I extends ShownItem = ShownItem> {
  readonly part: string;
  readonly title: string;
  readonly heads: readonly string[];
  readonly items: readonly I[];
  readonly cells: (item: I) => readonly string[];
  /** Columns whose figures stand under one another on the decimal point. */
  readonly onPoint: readonly number[];
  /** Columns that go where the page is narrow, the first to go first. */
  readonly mayGo: readonly number[];
  /** What a row is called: `fluid`, `fluids`. */
  readonly one: string;
  readonly many: string;
  /** Lines above the rows that are not items. */
  readonly lead?: readonly Line[];
}

/** The mark of a state, in the margin. */
export const MARKS: Readonly<Record<State, string>> = { fit: '·', watch: '~', unfit: '!', unseen: '?' };

const GAP = 2;
const MARGIN = 4;
/** Names keep this much before a column goes. */
const NAME_LEAST = 18;
const NAME_MOST = 28;
const REASON_MOST = 2;

type Group = 'out' | 'fit' | 'absent' | 'leaving';

/** The panel as lines of at most `width`. With `folding`, rows that are fit are said in one line. */
export function panelLines<I extends ShownItem>(
  sight: Sight,
  panel: Panel<I>,
  width: number,
): (folding: boolean) => Line[] {
  const lead = panel.lead ?? [];
  if (panel.items.length === 0 && lead.length === 0) return () => [];
  const table = tableOf(panel, width);
  const groups = Map.groupBy(panel.items, groupOf);
  const of = (group: Group) => groups.get(group) ?? [];
  const drawn = new Map<I, Line[]>();
  const row = (item: I) => {
    const lines = drawn.get(item) ?? rowLines(sight, panel, table, item, width);
    drawn.set(item, lines);
    return lines;
  };
  const rows = (items: readonly I[]) => items.flatMap(row);
  return (folding) => {
    const folded = folding && of('fit').length > 1;
    const inOrder = panel.items.filter((item) => ['out', ...(folded ? [] : ['fit'])].includes(groupOf(item)));
    const body = [
      ...rows(inOrder),
      ...(folded ? foldLines(sight, panel, 'fit', of('fit'), rows) : []),
      ...foldLines(sight, panel, 'absent', of('absent'), rows),
      ...foldLines(sight, panel, 'leaving', of('leaving'), rows),
    ];
    const hasRows = body.some(({ stop }) => stop?.opens.open === 'item');
    return [hasRows ? table.head : table.title, ...lead, ...body];
  };
}

function groupOf(item: ShownItem): Group {
  if (item.state === null) return 'fit';
  if (isAbsent(item)) return 'absent';
  if (item.kind === 'check' && item.when === 'leaving' && item.state !== 'unfit') return 'leaving';
  return item.state === 'fit' ? 'fit' : 'out';
}

/** Not entered yet: nobody has counted, dated or done it on record. It bars nothing, so it shares a line. */
function isAbsent(item: ShownItem): boolean {
  if (item.state === 'unfit') return false;
  if (item.kind === 'spare') return item.count === null;
  if (item.kind === 'dated') return item.expires === null;
  return item.kind === 'service' && item.dueHours === null && item.dueOn === null;
}

interface Table {
  /** The panel's title, with its columns' heads beside it. */
  readonly head: Line;
  /** The title alone, where every row is folded away. */
  readonly title: Line;
  readonly name: number;
  readonly cells: ReadonlyMap<ShownItem, readonly string[]>;
}

/** Every row's cells at the width of their column; what may go goes until the names have room. */
function tableOf<I extends ShownItem>(panel: Panel<I>, width: number): Table {
  const rows = panel.items.map((item) => [...panel.cells(item), stateCell(item)]);
  const heads = [...panel.heads, ''];
  const columns = heads.map((head, column) => {
    const texts = rows.map((row) => row[column] ?? '');
    const set = panel.onPoint.includes(column) ? onThePoint(texts) : texts;
    const wide = Math.max(widthOf(head), ...set.map(widthOf));
    return { wide, head: pad(head, wide), cells: set.map((text) => pad(text, wide)) };
  });
  const kept = new Set(columns.keys());
  const taken = () => [...kept].reduce((sum, column) => sum + columns[column]!.wide + GAP, MARGIN);
  const longest = Math.max(widthOf(panel.title), ...panel.items.map(({ name }) => widthOf(name)));
  for (const column of panel.mayGo) {
    if (width - taken() < Math.min(longest, NAME_LEAST)) kept.delete(column);
  }
  const name = Math.max(8, Math.min(longest, NAME_MOST, width - taken()));
  const shown = [...kept];
  const title = pad(panel.title, name + MARGIN - 2);
  const headed = shown.map((column) => `${' '.repeat(GAP)}${columns[column]!.head}`).join('');
  return {
    head: exactly(line(say('  '), say(title, 'title'), say(headed)), width),
    title: line(say('  '), say(panel.title, 'title')),
    name,
    cells: new Map(
      panel.items.map((item, row) => [item, shown.map((column) => columns[column]!.cells[row]!)]),
    ),
  };
}

/** A row that is not fit says its state and why on a line of its own. */
function stateCell({ state }: ShownItem): string {
  if (state === null) return 'working';
  return state === 'fit' ? STATE_WORDS.fit : '';
}

function rowLines<I extends ShownItem>(
  sight: Sight,
  panel: Panel<I>,
  table: Table,
  item: I,
  width: number,
): Line[] {
  const stop: Stop = { key: `item:${item.id}`, part: panel.part, opens: { open: 'item', id: item.id } };
  const cells = table.cells.get(item)!.map((cell) => say(' '.repeat(GAP) + cell));
  const row = line(
    ...margin(sight, stop, item.state),
    named(sight, stop, pad(item.name, table.name)),
    ...cells,
  );
  const lines = [{ ...exactly(row, width), stop }];
  return item.state === null || item.state === 'fit' ? lines : [...lines, ...reasonLines(sight, item, width)];
}

function reasonLines(sight: Sight, { id, state, reason }: ShownItem, width: number): Line[] {
  const word = STATE_WORDS[state!];
  const why = phrase(reason ?? '');
  const said = why.startsWith(word) ? why : [word, why].filter((part) => part !== '').join(': ');
  const fresh = sight.model.fresh.has(id) ? 'NEW, ' : '';
  const lines = paragraph(fresh + said, width, { indent: MARGIN, tone: state! });
  if (lines.length <= REASON_MOST) return lines;
  const last = lines[REASON_MOST - 1]!.spans[0]!;
  return [...lines.slice(0, REASON_MOST - 1), line({ ...last, text: `${cut(last.text, width - 2)} …` })];
}

/** A sentence as it stands after a colon. */
function phrase(of: string): string {
  const bare = of.replace(/\.$/u, '');
  return /^[A-Z][a-z ]/u.test(bare) ? bare.charAt(0).toLowerCase() + bare.slice(1) : bare;
}

function foldLines<I extends ShownItem>(
  sight: Sight,
  panel: Panel<I>,
  group: Exclude<Group, 'out'>,
  items: readonly I[],
  rows: (items: readonly I[]) => Line[],
): Line[] {
  if (items.length === 0) return [];
  const fold = `${panel.part}:${group}`;
  const stop: Stop = { key: `fold:${fold}`, part: panel.part, opens: { open: 'fold', fold } };
  const opened = sight.model.unfolded.has(fold);
  const state = group === 'fit' ? (items[0]!.state ?? null) : group === 'absent' ? null : leavingState(items);
  const text = `${foldText(panel, group, items)}${opened ? ':' : ''}`;
  const row = { ...line(...margin(sight, stop, state), named(sight, stop, text)), stop };
  return opened ? [row, ...rows(items)] : [row];
}

function foldText<I extends ShownItem>(panel: Panel<I>, group: Group, items: readonly I[]): string {
  const count = items.length;
  if (group === 'absent') return `${count} not entered yet`;
  if (group === 'leaving') {
    const made = items.filter(({ state }) => state === 'fit').length;
    return `${count} ${count === 1 ? 'look' : 'looks'} before leaving, ${made} made`;
  }
  const what = count === 1 ? panel.one : panel.many;
  if (items.some(({ state }) => state === null)) return `${count} ${what}, working`;
  return count === panel.items.length ? `${count} ${what}, all fit` : `${count} more ${what} fit`;
}

function leavingState(items: readonly ShownItem[]): State {
  return items.every(({ state }) => state === 'fit') ? 'fit' : 'unseen';
}

/** The left margin: what is chosen, then the mark of the state. */
export function margin(sight: Sight, stop: Stop, state: State | null) {
  const pointer = say(sight.model.chosen === stop.key ? '> ' : '  ', 'chosen');
  return [pointer, state === null ? say('  ') : say(`${MARKS[state]} `, state)];
}

/** The words a stop is known by: strong when it is chosen. */
export function named(sight: Sight, stop: Stop, text: string) {
  return say(text, sight.model.chosen === stop.key ? 'chosen' : 'plain');
}
