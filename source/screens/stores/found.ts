import { takersOf } from '../../words/stores-document.ts';
import type { ShownItem } from '../shown-item.ts';
import { itemsOfKind, type Sight } from '../sight.ts';
import type { StoresPage } from './stores-page.ts';

export type Spare = Extract<ShownItem, { kind: 'spare' }>;

/** Spares under one heading. */
export interface Shelf {
  readonly title: string;
  /** The title is the place all of them lie in. */
  readonly isPlace: boolean;
  readonly spares: readonly Spare[];
}

/** What is found by what was typed, the best first; with nothing typed all there is: short and to buy, then locker by locker, then what was never counted. */
export function shelvesOf(sight: Sight, { find }: Pick<StoresPage, 'find'>): readonly Shelf[] {
  const spares = itemsOfKind(sight, 'spare');
  const words = find.text
    .toLocaleLowerCase()
    .split(/\s+/u)
    .filter((word) => word !== '');
  const shelves =
    words.length > 0
      ? [{ title: 'FOUND', isPlace: false, spares: foundBy(words, spares, sight) }]
      : all(spares);
  return shelves.filter((shelf) => shelf.spares.length > 0);
}

/** The spare the choice rests on: the first until it is moved. */
export function chosenSpare(sight: Sight, page: StoresPage): Spare | null {
  const spares = shelvesOf(sight, page).flatMap((shelf) => shelf.spares);
  return spares.find(({ id }) => id === page.chosen) ?? spares[0] ?? null;
}

function all(spares: readonly Spare[]): Shelf[] {
  const counted = spares.filter(({ count }) => count !== null);
  const short = counted.filter(isShort);
  const rest = counted.filter((spare) => !isShort(spare));
  const lockers = [...new Set(rest.map(({ locker }) => locker ?? ''))].toSorted(byName);
  return [
    { title: 'SHORT OR TO BUY', isPlace: false, spares: short.toSorted((a, b) => worse(a) - worse(b)) },
    ...lockers.map((locker) => ({
      title: locker === '' ? 'NO PLACE NAMED' : locker.toLocaleUpperCase(),
      isPlace: true,
      spares: rest.filter((spare) => (spare.locker ?? '') === locker),
    })),
    { title: 'NOT ENTERED YET', isPlace: false, spares: spares.filter(({ count }) => count === null) },
  ];
}

function isShort({ state, buy }: Spare): boolean {
  return buy > 0 || state === 'unfit' || state === 'watch';
}

const WORST_FIRST = { unfit: 0, watch: 1, unseen: 2, fit: 3 };

function worse({ state }: Spare): number {
  return WORST_FIRST[state ?? 'fit'];
}

/** Lockers by name, those without one last. */
function byName(a: string, b: string): number {
  if (a === '' || b === '') return a === b ? 0 : a === '' ? 1 : -1;
  return a.localeCompare(b);
}

/** Those that hold every word: first where words of the name begin so, then anywhere in the name, then by the locker and by what takes them. */
function foundBy(words: readonly string[], spares: readonly Spare[], sight: Sight): readonly Spare[] {
  const ranked = spares.map((spare) => ({ spare, rank: rankOf(words, spare, sight) }));
  return [0, 1, 2].flatMap((rank) => ranked.filter((one) => one.rank === rank).map(({ spare }) => spare));
}

function rankOf(words: readonly string[], { id, name, locker }: Spare, sight: Sight): number | null {
  const own = name.toLocaleLowerCase();
  const begins = own.split(/[\s-]+/u);
  if (words.every((word) => own.startsWith(word) || begins.some((begun) => begun.startsWith(word)))) return 0;
  if (words.every((word) => own.includes(word))) return 1;
  const takers = takersOf(sight.boat.loaded.boat, id).map((taker) => taker.name);
  const wider = [name, id, locker ?? '', ...takers].join(' ').toLocaleLowerCase();
  return words.every((word) => wider.includes(word)) ? 2 : null;
}
