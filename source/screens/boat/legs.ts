import type { Setting } from '../../boat/change.ts';
import { legField, type PartField } from '../../boat/part-fields.ts';
import { valueAt } from '../../boat/parts.ts';
import type { Leg } from '../../words/typed-leg.ts';
import { EMPTY, type Field } from '../field.ts';
import { ownFields, withOwn } from './own-fields.ts';
import type { BoatItemPage, Read } from './part.ts';

/** The rows of a passage: each of its legs is where it ends, and its sectors. */
type Rows = Pick<BoatItemPage, 'rows' | 'fields' | 'before' | 'at'>;

/** With a further leg at the end once the last one is filled in, so that one can go on typing. */
export function withRoomForLeg<P extends Rows>(page: P): P {
  const last = page.rows.findLastIndex(({ holds }) => holds.is === 'leg');
  if (last < 0 || page.fields[last]!.text.trim() === '') return page;
  const [leg, sectors] = legField(null);
  const hasSectors = page.rows[last + 1]?.holds.is === 'leg sectors';
  return hasSectors ? withRows(page, last + 2, [leg]) : withRows(page, last + 1, [sectors, leg]);
}

/** With an empty leg before the one that is typed in, to be filled in there; as it was on any other row. */
export function withLegBefore<P extends Rows>(page: P): P {
  const here = page.rows[page.at]?.holds.is;
  if (here !== 'leg' && here !== 'leg sectors') return page;
  const at = here === 'leg' ? page.at : page.at - 1;
  if (page.fields[at]!.text.trim() === '') return { ...page, at };
  return { ...withRows(page, at, [...legField(null)]), at };
}

function withRows<P extends Rows>(page: P, at: number, put: readonly PartField[]): P {
  const empty: readonly Field[] = put.map(() => EMPTY);
  return {
    ...page,
    rows: page.rows.toSpliced(at, 0, ...put),
    fields: page.fields.toSpliced(at, 0, ...empty),
    before: page.before.toSpliced(at, 0, ...put.map(() => '')),
  };
}

/** The number of the leg a row is of, from 1. */
export function legNumber(rows: readonly PartField[], at: number): number {
  return rows.slice(0, at + 1).filter(({ holds }) => holds.is === 'leg').length;
}

interface NewLeg {
  readonly was: number | null;
  readonly to: Read;
  readonly sectors: Read | undefined;
}

/** What was typed of the legs, one change after the other; each begins where the one before ends. None where they stand as they were. `whole`: all of them anew. */
export function legSettings(reads: readonly Read[], stood: unknown, whole: boolean): readonly Setting[] {
  const [from, ...rest] = reads;
  if (!from || !reads.some(({ changed }) => changed)) return [];
  const old: readonly unknown[] = Array.isArray(stood) ? stood : [];
  const legs = rest.flatMap((to, at): NewLeg[] => {
    const { holds } = to.row;
    if (holds.is !== 'leg' || (to.value === undefined && !to.trouble)) return [];
    const next = rest[at + 1];
    return [{ was: holds.was, to, sectors: next?.row.holds.is === 'leg sectors' ? next : undefined }];
  });
  const kept = new Set(legs.map(({ was }) => was));
  const gone = old.map((_, at) => at).filter((at) => !kept.has(at));
  const out = gone.reverse().map((at): Setting => ({ path: ['legs', at], value: undefined }));
  if (whole || old.length === 0)
    return [
      {
        path: ['legs'],
        value: legs.map(({ was }, at) => ({
          ...ownFields(old[was ?? -1], LEG),
          ...wholeLeg(legs, at, from),
        })),
      },
    ];
  return [...out, ...legs.flatMap((_, at) => settingsOf(legs, at, from, old))];
}

const LEG = ['from', 'to', 'nm', 'place', 'sectors'];

function settingsOf(
  legs: readonly NewLeg[],
  at: number,
  from: Read,
  old: readonly unknown[],
): readonly Setting[] {
  const { was, to, sectors } = legs[at]!;
  if (was === null) return [{ path: ['legs', at], value: wholeLeg(legs, at, from), insert: true }];
  const before = old[was];
  const parts: readonly Setting[] = [
    ...(follows(legs, at, from, old) ? [] : [{ path: ['from'], value: beginning(legs, at, from) }]),
    ...(to.changed && to.value !== undefined
      ? (['to', 'nm', 'place'] as const).map((path) => ({ path: [path], value: (to.value as Leg)[path] }))
      : []),
    ...(sectors?.changed && !sectors.trouble
      ? [
          {
            path: ['sectors'],
            value: withOwn(sectors.value, valueAt(before, ['sectors']), sectors.row.holds),
          },
        ]
      : []),
  ];
  return parts
    .filter(({ path, value }) => JSON.stringify(valueAt(before, path)) !== JSON.stringify(value))
    .map(({ path, value }) => ({ path: ['legs', at, ...path], value }));
}

/** Whether it begins where it did: after the leg it came after, and that one ends where it did. */
function follows(legs: readonly NewLeg[], at: number, from: Read, old: readonly unknown[]): boolean {
  const { was } = legs[at]!;
  if (at === 0) return was === 0 && !from.changed;
  const { was: before, to } = legs[at - 1]!;
  if (before === null || before + 1 !== was) return false;
  return JSON.stringify(valueAt(to.value, ['to'])) === JSON.stringify(valueAt(old[before], ['to']));
}

function beginning(legs: readonly NewLeg[], at: number, from: Read): unknown {
  return at === 0 ? from.value : (legs[at - 1]!.to.value as Leg | undefined)?.to;
}

function wholeLeg(legs: readonly NewLeg[], at: number, from: Read): object {
  const { to, sectors } = legs[at]!;
  const { to: end, nm, place } = (to.value ?? {}) as Partial<Leg>;
  const sides = Array.isArray(sectors?.value) && sectors.value.length > 0 ? { sectors: sectors.value } : {};
  return { from: beginning(legs, at, from), to: end, nm, place, ...sides };
}
