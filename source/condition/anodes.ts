import type { Anode } from '../boat/anode.ts';
import type { Boat } from '../boat/boat.ts';
import type { EntryOf } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import type { AnodeRecord, Fitting } from './condition.ts';
import type { Past } from './past.ts';

type Look = Fitting['looks'][number];

/** How far a look strays by the way it was measured, as a share of a new anode: model 4. */
const SD_BY_EYE = 0.08;
const SD_BY_WEIGHT = 0.02;
const SD_BY_SIZE = 0.04;

/** No anode is more than new; the log takes this much for a look's doubt. */
const MOST_SHARE = 1.2;

/** Each anode place's fittings with their looks. Looks that give no share, or more than a new anode, go to `doubts` and are left out. */
export function anodeRecords(boat: Boat, past: Past, doubts: Trouble[]): ReadonlyMap<string, AnodeRecord> {
  return new Map(boat.anodes.map((anode) => [anode.id, anodeRecord(anode, past, doubts)]));
}

function anodeRecord(anode: Anode, past: Past, doubts: Trouble[]): AnodeRecord {
  const fittings: { fittedAt: number | null; looks: Look[] }[] = [];
  let lookedAt: number | null = null;
  for (const { at, entry } of past.about(anode.id)) {
    if (entry.kind === 'renew') {
      fittings.push({ fittedAt: at, looks: [] });
      lookedAt = at;
    }
    if (entry.kind === 'anode') {
      const measured = measuredShare(anode, entry, doubts);
      if (measured === null) continue;
      if (fittings.length === 0) fittings.push({ fittedAt: null, looks: [] });
      fittings.at(-1)!.looks.push({ at, ...measured, flakes: entry.flakes ?? false });
      lookedAt = at;
    }
  }
  return { fittings, lookedAt };
}

function measuredShare(
  anode: Anode,
  entry: EntryOf<'anode'>,
  doubts: Trouble[],
): { share: number; sd: number } | null {
  const measured = shareOf(anode, entry);
  const { id, at } = entry;
  if (typeof measured === 'string') {
    doubts.push({ kind: 'new size unknown', entry: id, at, item: anode.id, field: measured });
    return null;
  }
  if (measured.share > MOST_SHARE) {
    const value = measured.share;
    doubts.push({
      kind: 'odd reading',
      entry: id,
      at,
      item: anode.id,
      value,
      unit: '',
      than: 1,
      why: 'more than new',
    });
    return null;
  }
  return measured;
}

/** The share left with its sd, or the field of the boat file that is missing to tell it. Mass goes with diameter squared times length. */
function shareOf(
  anode: Anode,
  { share, massKg, diameterMm, lengthMm }: EntryOf<'anode'>,
): { share: number; sd: number } | 'massKg' | 'diameterMm' | 'lengthMm' {
  if (share !== undefined) return { share, sd: SD_BY_EYE };
  if (massKg !== undefined) {
    return anode.massKg === undefined ? 'massKg' : { share: massKg / anode.massKg, sd: SD_BY_WEIGHT };
  }
  let size = 1;
  if (diameterMm !== undefined) {
    if (anode.diameterMm === undefined) return 'diameterMm';
    size *= (diameterMm / anode.diameterMm) ** 2;
  }
  if (lengthMm !== undefined) {
    if (anode.lengthMm === undefined) return 'lengthMm';
    size *= lengthMm / anode.lengthMm;
  }
  return { share: size, sd: SD_BY_SIZE };
}
