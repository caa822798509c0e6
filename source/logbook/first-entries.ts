import type { BoatFile } from '../boat/boat.ts';
import type { Draft } from './entries.ts';

/** What was read and remembered when a boat was entered; by id of engine, fluid or check. What nobody looked at is absent. */
export interface FirstReadings {
  /** Engine hours by the meter. */
  readonly hours: ById<number>;
  /** In litres, as a share from low to full, or off the stick. */
  readonly levels: ById<{ level: number } | { share: number } | { off: 'below' | 'above' }>;
  readonly checks: ById<boolean | number>;
  /** The last change of engine oil: when (ms since 1970 UTC), and each engine's hours then, where known. */
  readonly oilChange: { readonly at: number; readonly hours: ById<number> } | null;
}

type ById<T> = { readonly [id: string]: T };

/** The first entries of a new boat's log, oldest first: only what was looked at or remembered. `at`: when the readings were taken, UTC. */
export function firstEntries(
  boat: BoatFile,
  { hours, levels, checks, oilChange }: FirstReadings,
  { at, by }: { readonly at: string; readonly by: string | null },
): readonly Draft[] {
  const drafts: readonly Draft[] = [
    ...(oilChange === null ? [] : oilEntries(boat, oilChange)),
    ...Object.entries(hours).map(([engine, reading]): Draft => ({ kind: 'hours', at, engine, reading })),
    ...Object.entries(levels).map(([fluid, level]): Draft => ({ kind: 'dip', at, fluid, ...level })),
    ...Object.entries(checks).map(
      ([check, answer]): Draft =>
        typeof answer === 'boolean'
          ? { kind: 'check', at, check, ok: answer }
          : { kind: 'check', at, check, value: answer },
    ),
  ];
  return drafts.map((draft) => (by === null ? draft : { ...draft, by }));
}

/** The meter as it stood then comes first, so that the service falls due by hours too. */
function oilEntries(boat: BoatFile, { at, hours }: NonNullable<FirstReadings['oilChange']>): Draft[] {
  const then = new Date(at).toISOString();
  const services = (boat.services ?? []).filter(({ id }) => id.startsWith('oil-and-filter'));
  return [
    ...Object.entries(hours).map(
      ([engine, reading]): Draft => ({ kind: 'hours', at: then, engine, reading }),
    ),
    ...services.map(({ id }): Draft => ({ kind: 'service', at: then, service: id })),
  ];
}
