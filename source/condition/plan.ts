import type { Boat } from '../boat/boat.ts';
import type { Condition } from './condition.ts';
import type { Timed } from './past.ts';

/** The passage planned, by how many, with what in reserve: the last plan that names a passage the boat has, else the boat file. */
export function planOf(
  boat: Boat,
  plans: readonly Timed<'plan'>[],
): Pick<Condition, 'passage' | 'crew' | 'reserveDays'> {
  const passageNamed = (id: string | undefined) => boat.passages.find((passage) => passage.id === id) ?? null;
  const plan = plans.findLast(({ entry }) => passageNamed(entry.passage) !== null)?.entry;
  const passage = passageNamed(plan?.passage ?? boat.passage);
  return {
    passage,
    crew: plan?.crew ?? boat.crew,
    reserveDays: plan?.reserveDays ?? passage?.reserveDays ?? 0,
  };
}
