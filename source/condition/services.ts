import { type Boat, engineOf } from '../boat/boat.ts';
import type { EngineRecord, ServiceRecord } from './condition.ts';
import type { Past } from './past.ts';

/** When each service was done, and at what hours of its engine. */
export function serviceRecords(
  boat: Boat,
  past: Past,
  engines: ReadonlyMap<string, EngineRecord>,
): ReadonlyMap<string, ServiceRecord> {
  return new Map(
    boat.services.map((service) => {
      const id = engineOf(boat, service.engine);
      const engine = id === null ? undefined : engines.get(id);
      const metered = engine !== undefined && engine.hours !== null;
      const done = past
        .of('service', service.id)
        .map(({ at }) => ({ at, hours: metered ? engine.hoursAt(at) : null }));
      return [service.id, { done }];
    }),
  );
}
