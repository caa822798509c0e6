import type { Boat } from '../boat/boat.ts';
import { nearest } from '../boat/nearest.ts';
import type { Entry, EntryKind } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import type { Past } from './past.ts';

type Names = Readonly<Record<What, ReadonlySet<string>>>;
type What =
  | 'engines'
  | 'fluids'
  | 'anodes'
  | 'spares'
  | 'services'
  | 'checks'
  | 'dated'
  | 'passages'
  | 'anchorages'
  | 'anything';

/** A trouble for every name in an entry that the boat does not have, with the nearest one that would fit. */
export function unknownNames(boat: Boat, past: Past): readonly Trouble[] {
  const names = namesOf(boat);
  const items = [...past.items].flatMap(([id, kinds]) =>
    [...kinds].flatMap(([kind, told]) => unknown(names[itemKinds[kind] ?? 'anything'], id, told)),
  );
  const spares = [...past.takenFrom].flatMap(([id, told]) => unknown(names.spares, id, told));
  const passages = [...past.of('plan'), ...past.of('gate')].flatMap(({ entry }) =>
    unknown(names.passages, entry.passage, [{ entry }]),
  );
  const anchorages = [...past.of('left'), ...past.of('arrived')].flatMap(({ entry }) =>
    unknown(names.anchorages, entry.anchorage, [{ entry }]),
  );
  const legs = past.of('gate').flatMap(({ entry }) => {
    const passage = boat.passages.find(({ id }) => id === entry.passage);
    const known = passage === undefined || entry.leg < passage.legs.length;
    return unknown(new Set<string>(), known ? undefined : `leg ${entry.leg + 1} of ${entry.passage}`, [
      { entry },
    ]);
  });
  return [...items, ...spares, ...passages, ...anchorages, ...legs];
}

function unknown(
  names: ReadonlySet<string>,
  name: string | undefined,
  told: readonly { readonly entry: Pick<Entry, 'id' | 'at'> }[],
): readonly Trouble[] {
  if (name === undefined || names.has(name)) return [];
  const near = nearest(name, names);
  return told.map(({ entry: { id, at } }) => ({
    kind: 'unknown item',
    entry: id,
    at,
    item: name,
    ...(near === undefined ? {} : { near }),
  }));
}

const itemKinds: { readonly [K in EntryKind]?: What } = {
  hours: 'engines',
  dip: 'fluids',
  topup: 'fluids',
  change: 'fluids',
  job: 'anything',
  leak: 'anything',
  anode: 'anodes',
  renew: 'anodes',
  use: 'spares',
  stow: 'spares',
  count: 'spares',
  service: 'services',
  check: 'checks',
  dated: 'dated',
  clue: 'anything',
  remark: 'anything',
};

function namesOf(boat: Boat): Names {
  const ids = (things: readonly { readonly id: string }[]) => new Set(things.map(({ id }) => id));
  const { engines, fluids, anodes, spares, services, checks, dated, passages, anchorages } = boat;
  return {
    engines: ids(engines),
    fluids: ids(fluids),
    anodes: ids(anodes),
    spares: ids(spares),
    services: ids(services),
    checks: ids(checks),
    dated: ids(dated),
    passages: ids(passages),
    anchorages: ids(anchorages),
    anything: ids([...engines, ...fluids, ...anodes, ...spares, ...services, ...checks, ...dated]),
  };
}
