import type { Boat } from '../boat/boat.ts';
import type { Entry } from '../logbook/entries.ts';
import type { Trouble } from '../trouble.ts';
import { anodeRecords } from './anodes.ts';
import { checkRecords } from './checks.ts';
import type { Condition } from './condition.ts';
import { datedRecords } from './dated.ts';
import { engineRecords } from './engines.ts';
import { fluidRecords } from './fluids.ts';
import { futureTroubles } from './future.ts';
import { unknownNames } from './names.ts';
import { type Past, pastOf } from './past.ts';
import { planOf } from './plan.ts';
import { serviceRecords } from './services.ts';
import { whereaboutsOf } from './spans.ts';
import { spareRecords } from './spares.ts';
import { weatherLooks } from './weather-looks.ts';

/**
 * All that is known of the boat at a moment (ms since 1970 UTC) from her boat file and her log, strikes already applied. Entries may
 * stand in any order; those that happened after the moment are not seen. What cannot be true is left out of the sums and told in `troubles`.
 */
export function conditionAt(boat: Boat, entries: readonly Entry[], at: number): Condition {
  const past = pastOf(entries, at);
  const doubts: Trouble[] = [];
  const whereabouts = whereaboutsOf(boat, past);
  const engines = engineRecords(boat, past, whereabouts.spans, doubts);
  const { spans } = whereabouts;
  return {
    at,
    lastEntryAt: past.last?.at ?? null,
    ...whereabouts,
    ...planOf(boat, past.of('plan')),
    engines,
    fluids: fluidRecords(boat, past, { engines, spans, at }, doubts),
    anodes: anodeRecords(boat, past, doubts),
    spares: spareRecords(boat, past, { engines, at }, doubts),
    services: serviceRecords(boat, past, engines),
    checks: checkRecords(boat, past),
    dated: datedRecords(boat, past),
    weather: weatherLooks(boat, past),
    forecastChoice: choiceOf(past),
    decision: past.of('decision').at(-1)?.entry ?? null,
    gates: past.of('gate').map(({ entry }) => entry),
    clues: past.of('clue').map(({ entry }) => entry),
    jobs: past.of('job').map(({ entry }) => entry),
    troubles: [...futureTroubles(entries, at), ...unknownNames(boat, past), ...doubts],
  };
}

function choiceOf(past: Past): Condition['forecastChoice'] {
  const last = past.of('forecast').at(-1);
  return last && last.entry.counts !== 'newest' ? { counts: last.entry.counts, at: last.at } : null;
}
