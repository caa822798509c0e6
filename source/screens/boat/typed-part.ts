import type { BoatChange, Setting } from '../../boat/change.ts';
import type { Holds, PartField } from '../../boat/part-fields.ts';
import { idsIn, isList, valueAt } from '../../boat/parts.ts';
import type { Path } from '../../boat/positions.ts';
import { wouldBe } from '../../boat/would-be.ts';
import { bad, good, type Result, type Trouble } from '../../trouble.ts';
import { plainly, valueFrom } from '../../words/part-texts.ts';
import { positionWords } from '../../words/positions.ts';
import type { Leg } from '../../words/typed-leg.ts';
import { legSettings } from './legs.ts';
import { withOwn } from './own-fields.ts';
import { BAD_DAY_SDS, type BoatItemPage, figureOf, itemIn, type Read, samePath, type Wrong } from './part.ts';

/** A part as far as it is typed. */
export type Draft = Pick<BoatItemPage, 'kind' | 'id' | 'how' | 'of' | 'rows' | 'before' | 'fields'>;

/** The change that was typed, and what is wrong with it: row by row, and with the boat file it would make. `over`: whatever stands in the file now. */
export function typedPart(draft: Draft, over = false): { change: BoatChange; wrong: readonly Wrong[] } {
  const reads = readRows(draft);
  const change = changeOf(draft, reads, over);
  const own = reads.flatMap(({ trouble }, at): Wrong[] =>
    trouble ? [{ at, trouble, missing: trouble.kind === 'field missing', crosses: false }] : [],
  );
  return { change, wrong: [...own, ...crossing(draft, change, own)] };
}

/** The id of one that is added, made of its name. */
export function idFor({ kind, id, how, of, rows, fields }: Draft): string | null {
  if (how === 'change' || !isList(kind)) return id;
  const name = fields[rows.findIndex(({ path }) => path[0] === 'name')]?.text ?? '';
  return freeId(name, idsIn(of));
}

/** The rows as they were typed; one that was not is what stood there, however roughly its text says it. */
export function readRows(draft: Draft): readonly Read[] {
  const { kind, id, of, rows, before, fields } = draft;
  const item = itemIn(of, kind, id);
  const first = rows.map((row, at): Read => {
    const text = fields[at]!.text.trim();
    const stood = figureOf(item, row);
    const changed = text !== before[at]!.trim();
    if (!changed && item !== undefined) return { row, changed, value: stood, trouble: null };
    if (text === '') return { row, changed, value: undefined, trouble: row.wanted ? missing(row) : null };
    const read = valueFrom(text, row, of, typeof stood === 'number' ? stood : fullOf(item));
    return read.ok
      ? {
          row,
          changed,
          value: row.holds.is === 'leg' ? atItsEnd(read.value, stood) : read.value,
          trouble: null,
        }
      : { row, changed, value: undefined, trouble: read.troubles[0]! };
  });
  return first.map((read) =>
    read.row.holds.is === 'bad day' ? withSpread(read, read.row.holds, first, item) : read,
  );
}

/** A leg whose end is typed as it was shown ends where it did, not where that is rounded to. */
function atItsEnd(typed: unknown, stood: unknown): unknown {
  const [leg, before] = [typed as Leg, stood as Leg | undefined];
  return before && positionWords(leg.to) === positionWords(before.to) ? { ...leg, to: before.to } : leg;
}

/** A figure on a bad day becomes the spread of its usual one; it is typed anew with either. */
function withSpread(
  read: Read,
  holds: Extract<Holds, { is: 'bad day' }>,
  all: readonly Read[],
  item: unknown,
): Read {
  const mean = holds.usual;
  const usual = mean === null ? undefined : all.find(({ row }) => samePath(row.path, mean));
  const changed = read.changed || usual?.changed === true;
  if (read.value === undefined || usual?.trouble) return { ...read, changed };
  if (!changed) return { ...read, value: valueAt(item, read.row.path) };
  const spread = spreadFrom(read.row, holds, read.value as number, mean === null ? 0 : usual?.value);
  return spread.ok
    ? { ...read, changed, value: spread.value }
    : { ...read, changed, value: undefined, trouble: spread.troubles[0]! };
}

function spreadFrom(
  row: PartField,
  { way, unit }: Extract<Holds, { is: 'bad day' }>,
  figure: number,
  usual: unknown,
): Result<number> {
  const refused = (expected: string) =>
    bad({ kind: 'not understood', field: row.path.join('.'), text: String(figure), expected });
  if (typeof usual !== 'number') return refused('a figure once the usual one stands above it');
  const sd = Number(((way * (figure - usual)) / BAD_DAY_SDS).toPrecision(4));
  const side = way === 1 ? 'no less' : 'no more';
  if (sd < 0)
    return refused(`a number${unit === null ? '' : ` of ${unit}`}, ${side} than the usual ${usual}`);
  const expected = row.expects(sd);
  return expected === null ? good(sd) : refused(`a figure whose spread is ${plainly(expected)}`);
}

function changeOf(draft: Draft, reads: readonly Read[], over: boolean): BoatChange {
  const { kind, how, of, id } = draft;
  const item = itemIn(of, kind, id);
  const isAdd = how === 'add';
  const plain = reads.filter(({ row }) => row.path[0] !== 'legs');
  const legs = reads.filter(({ row }) => row.path[0] === 'legs');
  const set = [...plainSettings(plain, item, isAdd), ...legSettings(legs, valueAt(item, ['legs']), over)];
  const whole: readonly Setting[] = isAdd && kind === 'passages' ? [{ path: ['motoring'], value: {} }] : [];
  const was = isAdd || over ? [] : touched(reads).map((path) => ({ path, value: valueAt(item, path) }));
  return { kind, id: idFor(draft), how, set: [...whole, ...set], was };
}

/** What was typed anew, path by path; the legs as one, since they hang together. */
function touched(reads: readonly Read[]): readonly Path[] {
  const changed = reads.filter((read) => read.changed);
  const legs = changed.some(({ row }) => row.path[0] === 'legs') ? [['legs']] : [];
  return [...changed.filter(({ row }) => row.path[0] !== 'legs').map(({ row }) => row.path), ...legs];
}

function plainSettings(reads: readonly Read[], item: unknown, isAdd: boolean): readonly Setting[] {
  const emptied = isAdd ? [] : emptiedGroups(reads, item);
  const isInEmptied = ({ path }: PartField) => emptied.some((group) => samePath(group, path.slice(0, -1)));
  return [
    ...emptied.map((path) => ({ path, value: undefined })),
    ...reads.flatMap(({ row, changed, value, trouble }): Setting[] => {
      if (!changed || trouble || isInEmptied(row)) return [];
      if (value === undefined && (isAdd || valueAt(item, row.path) === undefined)) return [];
      return [{ path: row.path, value: withOwn(value, valueAt(item, row.path), row.holds) }];
    }),
  ];
}

/** Groups of which nothing is left: a loss without its figures would be half of one. */
function emptiedGroups(reads: readonly Read[], item: unknown): readonly Path[] {
  const groups = new Map<string, Path>();
  for (const { row } of reads)
    if (row.path.length > 1) groups.set(row.path.slice(0, -1).join('/'), row.path.slice(0, -1));
  return [...groups.values()].filter((group) => {
    const inside = reads.filter(({ row }) => group.every((step, at) => row.path[at] === step));
    return (
      valueAt(item, group) !== undefined &&
      inside.every(({ row }) => row.path.length === group.length + 1) &&
      inside.some(({ changed }) => changed) &&
      inside.every(({ row, value, trouble }) => !trouble && (value === undefined || value === row.usual))
    );
  });
}

function crossing(draft: Draft, change: BoatChange, own: readonly Wrong[]): readonly Wrong[] {
  if (change.set.length === 0) return [];
  return wouldBe(draft.of, change).flatMap(({ trouble, at: path }): Wrong[] => {
    const at = path === null ? -1 : rowOf(draft, path);
    if (own.some((one) => one.at === at)) return [];
    const isElsewhere = at < 0;
    const missing = !isElsewhere && trouble.kind === 'field missing';
    return [{ at: isElsewhere ? null : at, trouble, missing, crosses: true }];
  });
}

/** The row a path inside the part is typed in: its own, that of the list it lies in, or the first of its group. */
function rowOf({ rows, fields }: Draft, path: Path): number {
  const [list, number, field] = path;
  if (list === 'legs' && typeof number === 'number' && !(number === 0 && field === 'from')) {
    const legs = rows.flatMap(({ holds }, at) =>
      holds.is === 'leg' && fields[at]!.text.trim() !== '' ? [at] : [],
    );
    return (legs[number] ?? -1) + (field === 'sectors' ? 1 : 0);
  }
  const begins = (a: Path, b: Path) => a.length <= b.length && a.every((step, at) => step === b[at]);
  const holding = rows.findIndex((row) => begins(row.path, path));
  return holding >= 0 ? holding : rows.findIndex((row) => begins(path, row.path));
}

function missing({ path, expects }: PartField): Trouble {
  const place = { file: 'boat.json' };
  return {
    kind: 'field missing',
    place,
    field: path.join('.'),
    expected: plainly(expects(undefined) ?? 'a value'),
  };
}

/** A tank's bare numbers are of the unit its full mark is in. */
function fullOf(item: unknown): number {
  const full = valueAt(item, ['full']);
  return typeof full === 'number' ? full : 0;
}

function freeId(name: string, taken: ReadonlySet<string>): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .slice(0, 50)
    .replace(/^-+|-+$/gu, '');
  const base = plain || 'item';
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!taken.has(id)) return id;
  }
}
