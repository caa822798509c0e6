import type { Boat } from '../boat/boat.ts';
import type { Check } from '../boat/check.ts';
import type { Condition } from './condition.ts';
import { MS_A_DAY } from './time.ts';

/** The three passes of a round: with the engine stopped, with it running, and before leaving. */
export const passes = ['stopped', 'running', 'leaving'] as const;
export type Pass = (typeof passes)[number];

/** One look of the round. */
export interface Look {
  readonly kind: 'engine' | 'fluid' | 'anode' | 'check';
  readonly id: string;
  readonly due: boolean;
  /** Null where there is no interval, or none that counts: engine hours each round, leaving checks each departure. */
  readonly nextDue: number | null;
  readonly lookedAt: number | null;
}

/** Every look there is, due or not, by pass, in walking order: the meters, then the boat file's order. */
export function roundAt(boat: Boat, condition: Condition): { readonly [P in Pass]: readonly Look[] } {
  const { at } = condition;
  const meters = boat.engines.map(({ id }): Look => {
    const lookedAt = condition.engines.get(id)?.readAt ?? null;
    return { kind: 'engine', id, due: true, nextDue: null, lookedAt };
  });
  const fluids = (hot: boolean) =>
    boat.fluids
      .filter(({ how }) => (how === 'running-hot') === hot)
      .map(({ id, everyDays }) =>
        lookOf('fluid', id, everyDays, condition.fluids.get(id)?.lookedAt ?? null, at),
      );
  const anodes = boat.anodes.map(({ id, everyDays }) =>
    lookOf('anode', id, everyDays, condition.anodes.get(id)?.lookedAt ?? null, at),
  );
  const checks = (when: Pass) =>
    boat.checks.filter((check) => check.when === when).map((check) => checkLook(check, condition));
  return {
    stopped: [...meters, ...fluids(false), ...anodes, ...checks('stopped')],
    running: [...fluids(true), ...checks('running')],
    leaving: checks('leaving'),
  };
}

/** A look that falls due within the day belongs to this morning's round. Judgement, no source. */
const AHEAD_MS = MS_A_DAY / 2;

function lookOf(
  kind: Look['kind'],
  id: string,
  everyDays: number | undefined,
  lookedAt: number | null,
  at: number,
): Look {
  if (lookedAt === null) return { kind, id, due: true, nextDue: null, lookedAt };
  const nextDue = everyDays === undefined ? null : lookedAt + everyDays * MS_A_DAY;
  return { kind, id, due: nextDue !== null && nextDue <= at + AHEAD_MS, nextDue, lookedAt };
}

function checkLook({ id, everyDays, when }: Check, { checks, at }: Condition): Look {
  const record = checks.get(id);
  const look = lookOf('check', id, everyDays, record?.lookedAt ?? null, at);
  const unsettled = record !== undefined && record.unsettledBy !== null;
  if (when !== 'leaving') return { ...look, due: look.due || unsettled };
  return { ...look, due: unsettled || record?.madeSinceArrival !== true, nextDue: null };
}
