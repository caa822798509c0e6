import type { Member, PlaceForecast, Position, Step } from '../forecast.ts';
import type { Field } from './field.ts';
import type { DecodeJpeg2000 } from './jpeg2000.ts';
import { layersOf } from './layers.ts';
import type { GribFile } from './read.ts';
import { type Sampled, sample } from './sampling.ts';
import { stepsOf } from './steps.ts';

/** Places, members and hours multiplied stay below: the file kept aboard is then some megabytes (judgement). */
const MOST_CELLS = 250_000;
/** As the one shape of a forecast allows. */
const MOST_MEMBERS = 200;

/** What an ensemble adds to places made of its common fields. */
export interface Ensemble extends Pick<Sampled, 'odd' | 'damaged'> {
  /** One list a place, all of the same members in the same order; empty where there is no ensemble. */
  readonly members: readonly (readonly Member[])[];
  /** So many members were more than is kept. */
  readonly leftOut: number;
}

/** The members of an ensemble in a file, the control first; empty where there is none. */
export function membersIn({ messages }: Pick<GribFile, 'messages'>): readonly number[] {
  const members = messages.flatMap(({ quantity, member }) => (quantity && member !== null ? [member] : []));
  return [...new Set(members)].sort((a, b) => Math.abs(a) - Math.abs(b) || b - a);
}

/** The fields a forecast's steps are made of: what comes without members, and what only members have from the first of them. */
export function commonFields({ messages }: Pick<GribFile, 'messages'>): readonly Field[] {
  const used = messages.filter(({ quantity }) => quantity !== null);
  const [control] = membersIn({ messages });
  const plain = new Set(used.filter(({ member }) => member === null).map(({ quantity }) => quantity));
  return used.filter(
    ({ member, quantity }) => member === null || (member === control && !plain.has(quantity)),
  );
}

/** Reads every member at the places, for their steps. One member alone is no ensemble. */
export async function ensembleAt(
  { messages }: Pick<GribFile, 'messages'>,
  places: readonly (Pick<PlaceForecast, 'steps'> & { readonly at: Position })[],
  decodeJpeg?: DecodeJpeg2000,
): Promise<Ensemble> {
  const all = membersIn({ messages });
  const members = places.map((): Member[] => []);
  if (all.length < 2) return { members, odd: [], damaged: [], leftOut: 0 };
  const steps = places.reduce((sum, place) => sum + place.steps.length, 0);
  const kept = all.slice(0, Math.min(MOST_MEMBERS, Math.floor(MOST_CELLS / steps)));
  const odd: Sampled['odd'][number][] = [];
  const damaged: Field[] = [];
  for (const member of kept) {
    const layers = layersOf(messages.filter((field) => field.member === member));
    const positions = places.map(({ at }) => at);
    const sampled = await sample(layers, positions, decodeJpeg);
    odd.push(...sampled.odd);
    damaged.push(...sampled.damaged);
    const kinds = new Set(layers.map(({ kind }) => kind));
    const own = {
      wind: kinds.has('wind'),
      gust: kinds.has('gust'),
      seas: kinds.has('seas') || (kinds.has('wind waves') && kinds.has('swell')),
      period: [...kinds].some((kind) => kind.endsWith('period')),
    };
    for (const [i, place] of places.entries())
      members[i]!.push(columns(member, own, place.steps, stepsOf(sampled.places[i]!).steps));
  }
  return { members, odd, damaged, leftOut: all.length - kept.length };
}

/** A member's figures laid beside the steps of its place. */
function columns(
  member: number,
  own: { readonly wind: boolean; readonly gust: boolean; readonly seas: boolean; readonly period: boolean },
  steps: readonly Step[],
  said: readonly Step[],
): Member {
  const byTime = new Map(said.map((step) => [step.from, step]));
  const column = (of: (step: Step) => number | null) =>
    steps.map(({ from }) => {
      const step = byTime.get(from);
      return step === undefined ? null : of(step);
    });
  return {
    member,
    ...(own.wind ? { wind: column(({ wind }) => wind?.[0] ?? null), dir: column(({ dir }) => dir) } : {}),
    ...(own.gust ? { gust: column(({ gust }) => gust) } : {}),
    ...(own.seas ? { seas: column(({ seas }) => seas?.[0] ?? null) } : {}),
    ...(own.period ? { period: column(({ period }) => period) } : {}),
  };
}
