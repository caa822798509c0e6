import type { Pass } from '../condition/round.ts';
import type { ItemKind } from '../readiness/answer.ts';

/** What is said before anybody lays hands on it. The maker's manual, local rules and licensed people come first. */
const CAUTIONS: { readonly [K in ItemKind]: string | null } = {
  // Hot parts, shafts and belts: engine-room guidance and repair-safety pages; oil overboard: 40 CFR 110 (US), local rules elsewhere.
  fluid:
    'Before work: engine stopped, key out, clear of shaft and belts, and let it cool; no cap comes off a hot cooling system. Fuel: no flame, open up, mind the fumes. Oily waste and pads are sealed and go ashore, never overboard.',
  // Common practice, no source.
  anode:
    'Before work: engine stopped and cold, and where it sits in the raw water its seacock shut, then open again and seen to flow. Soft threads, aluminium above all: start by hand, stop when it resists.',
  service:
    'Before work: engine stopped, key out, clear of shaft and belts, and let it cool; let pressure off before a line is opened. Fuel: no flame, open up, mind the fumes. Seacocks shut for the work are open again after it; oily waste is sealed and goes ashore.',
  spare: null,
  check: null,
  dated: null,
};

/** The cautions that belong to work on that kind of item; none where it takes no tools. */
export function cautionsFor(kind: ItemKind): readonly string[] {
  const caution = CAUTIONS[kind];
  return caution === null ? [] : [`${caution} The maker's manual comes first.`];
}

/** What hands are laid on for; short, to be said beside what is typed. Sources as above; hot parts and oil overboard as for fluids, the rest common practice. */
const BY_ACT = {
  look: 'Engine stopped for a look by hand, clear of shaft and belts; no cap comes off a hot cooling system.',
  pour: 'Engine stopped and let cool; no cap comes off a hot cooling system. Fuel: no flame, open up, mind the fumes. What is spilt goes into a pad and ashore.',
  drain:
    'Engine stopped, key out. Hot oil and coolant burn: let it cool to warm. Old oil, filters and pads are sealed and go ashore, never overboard.',
  anode:
    'Engine stopped and cold; where it sits in the raw water, seacock shut, then open again and seen to flow. Soft threads, aluminium above all: start by hand, stop when it resists.',
  running:
    'Engine running: hands, hair and loose clothes clear of shaft and belts; pipes, exhaust and coolant are hot.',
  work: 'Engine stopped, key out, clear of shaft and belts, let cool; pressure let off before a line is opened. Fuel: no flame, open up, mind the fumes. Seacocks shut for the work are open again after it; oily waste is sealed and goes ashore.',
} as const;

export type Act = keyof typeof BY_ACT;

/** What belongs to the looks of a pass of the round; null where none is at the engine. */
export function passCaution(pass: Pass): string | null {
  if (pass === 'leaving') return null;
  return cautionOf(pass === 'running' ? 'running' : 'look');
}

/** The caution that belongs to what is done, not to the thing it is done to. */
export function cautionOf(act: Act): string {
  return `${BY_ACT[act]} The maker's manual comes first.`;
}
