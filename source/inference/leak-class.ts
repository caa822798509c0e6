import type { Fluid } from '../boat/fluid.ts';
import type { FluidEvent } from '../condition/condition.ts';
import type { FluidBelief } from './belief.ts';

type Leak = FluidEvent & { readonly kind: 'leak' };

/** A leak seen makes either loss a leak with this chance, until a job or a dry look: model 3.2. */
const CHANCE_ONCE_SEEN = 0.9;
/** One drop, L: model 3.7. */
const DROP_L = 0.05e-3;
const MINUTES_A_DAY = 1440;

/** The class that holds up to an instant: the last one seen since the last job. On a fuel one that was not dry holds until both a job and a new look (model 3.7). */
export function leakClassAt(
  fluid: Fluid,
  events: readonly FluidEvent[],
  at: number,
): FluidBelief['leakClass'] {
  return leakAt(fluid, events, at)?.class ?? null;
}

/** The chance that a loss is a leak: what the boat file says, or more once drops were seen. */
export function leakChanceAt(fluid: Fluid, events: readonly FluidEvent[], at: number): number {
  const seen = lastSinceJob(events, at)?.class;
  const { leakChance } = fluid.loss;
  return seen === 'drops' || seen === 'falls' ? Math.max(leakChance, CHANCE_ONCE_SEEN) : leakChance;
}

/** Where drops fall, the least an oil or coolant then loses, L a day; one drop a minute at least, that is what `falls` means. 0 otherwise. */
export function leastLossLPerDay(fluid: Fluid, events: readonly FluidEvent[], at: number): number {
  const seen = lastSinceJob(events, at);
  if (fluid.fuel || seen?.class !== 'falls') return 0;
  return Math.max(1, seen.dropsPerMinute ?? 1) * DROP_L * MINUTES_A_DAY;
}

function leakAt(fluid: Fluid, events: readonly FluidEvent[], at: number): Leak | null {
  if (!fluid.fuel) return lastSinceJob(events, at);
  let standing: Leak | null = null;
  let worked = false;
  for (const event of events) {
    if (event.at > at) break;
    if (event.kind === 'job') worked = true;
    if (event.kind !== 'leak') continue;
    const bars = standing !== null && standing.class !== 'dry' && !worked;
    if (!bars || event.class !== 'dry') standing = event;
    if (!bars) worked = false;
  }
  return standing;
}

function lastSinceJob(events: readonly FluidEvent[], at: number): Leak | null {
  for (let i = events.length - 1; i >= 0; i -= 1) {
    const event = events[i]!;
    if (event.at > at) continue;
    if (event.kind === 'job') return null;
    if (event.kind === 'leak') return event;
  }
  return null;
}
