import type { Boat } from '../boat/boat.ts';
import { nearest } from '../boat/nearest.ts';
import type { Entry, EntryKind } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import { itemOf, type Past, sparesTakenBy } from './past.ts';

/** A trouble for every name in an entry that the boat does not have, with the nearest one that would fit. */
export function unknownNames(boat: Boat, past: Past): readonly Trouble[] {
  const names = namesOf(boat);
  const near = new Map<string, string | undefined>();
  const troubles: Trouble[] = [];
  const expect = (entry: Entry, what: keyof typeof names, name: string | undefined) => {
    if (name === undefined || names[what].has(name)) return;
    const key = `${what} ${name}`;
    if (!near.has(key)) near.set(key, nearest(name, names[what]));
    const found = near.get(key);
    const facts = { entry: entry.id, at: entry.at, item: name };
    troubles.push({ kind: 'unknown item', ...facts, ...(found === undefined ? {} : { near: found }) });
  };
  for (const { entry } of past.all) {
    const what = itemKinds[entry.kind];
    if (what !== undefined) expect(entry, what, itemOf(entry));
    for (const spare of sparesTakenBy(entry)) expect(entry, 'spares', spare);
    if (entry.kind === 'plan') expect(entry, 'passages', entry.passage);
    if (entry.kind === 'gate') expect(entry, 'passages', entry.passage);
    if (entry.kind === 'left' || entry.kind === 'arrived') expect(entry, 'anchorages', entry.anchorage);
  }
  return troubles;
}

const itemKinds: { readonly [K in EntryKind]?: keyof ReturnType<typeof namesOf> } = {
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

function namesOf(boat: Boat) {
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
