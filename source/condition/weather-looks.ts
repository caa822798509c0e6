import type { Boat } from '../boat/boat.ts';
import type { WeatherLook } from './condition.ts';
import { merged, type Past, type Timed } from './past.ts';
import { planOf } from './plan.ts';
import { anchorageOf } from './spans.ts';

/** Every look at the weather with where she then was: at anchor, or so many hours out on the passage that was planned when she left. */
export function weatherLooks(boat: Boat, past: Past): readonly WeatherLook[] {
  const told = merged<Timed<'left'> | Timed<'arrived'> | Timed<'plan'> | Timed<'weather'>>([
    past.of('left'),
    past.of('arrived'),
    past.of('plan'),
    past.of('weather'),
  ]);
  const looks: WeatherLook[] = [];
  const plans: Timed<'plan'>[] = [];
  let left: { at: number; passage: string | null } | null = null;
  let anchorage = boat.anchorage ?? null;
  for (const one of told) {
    const { at, entry } = one;
    switch (entry.kind) {
      case 'plan':
        plans.push(one as Timed<'plan'>);
        break;
      case 'left':
        left ??= { at, passage: planOf(boat, plans).passage?.id ?? null };
        break;
      case 'arrived':
        left = null;
        anchorage = anchorageOf(boat, entry);
        break;
      case 'weather':
        looks.push({
          at,
          entry,
          where: left ? underWay(left, at) : anchorage === null ? null : { anchorage },
        });
    }
  }
  return looks;
}

function underWay(left: { at: number; passage: string | null }, at: number): WeatherLook['where'] {
  return left.passage === null ? null : { passage: left.passage, hours: (at - left.at) / 3_600_000 };
}
