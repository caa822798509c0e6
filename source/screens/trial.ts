import type { Boat } from '../boat/boat.ts';
import { conditionAt } from '../condition/condition-at.ts';
import type { VerdictDocument } from '../words/document.ts';
import { amountWords } from '../words/say.ts';
import type { Loaded } from './model.ts';

/** What is tried in place of the boat file's: kn, m, the id of a passage. Absent: as the boat file has it. */
export interface Trial {
  readonly wind?: number;
  readonly gust?: number;
  readonly seas?: number;
  readonly headwind?: number;
  readonly speed?: number;
  readonly passage?: string;
}

export type TrialField = keyof Trial;

/** What can be tried, in the order offered: the step of a key, and where a limit begins that the boat file does not set. */
const FIGURES = {
  wind: { name: 'wind', unit: 'kn', step: 1, start: 20 },
  gust: { name: 'gusts', unit: 'kn', step: 1, start: 28 },
  seas: { name: 'seas', unit: 'm', step: 0.1, start: 2 },
  headwind: { name: 'headwind', unit: 'kn', step: 1, start: 15 },
  speed: { name: 'speed', unit: 'kn', step: 0.2, start: 5 },
} as const;
export const TRIAL_FIELDS: readonly TrialField[] = ['wind', 'gust', 'seas', 'headwind', 'speed', 'passage'];

/** What a trial stands on: the boat as read, and her own answer. */
export interface TrialGround {
  readonly loaded: Loaded;
  readonly document: VerdictDocument;
}

export function isTrial(trial: Trial): boolean {
  return Object.keys(trial).length > 0;
}

/** One step up or down; a figure that is the boat file's own again is no trial of it. */
export function stepped(trial: Trial, field: TrialField, by: 1 | -1, ground: TrialGround): Trial {
  const others = without(trial, field);
  if (field === 'passage') {
    const own = ground.loaded.condition.passage?.id;
    const ids = ground.loaded.boat.passages.map(({ id }) => id);
    const at = ids.indexOf(trial.passage ?? own ?? '');
    const passage = ids[(at + by + ids.length) % ids.length];
    // Another passage has a speed of its own.
    const rest = without(others, 'speed');
    return passage === undefined || passage === own ? rest : { ...rest, passage };
  }
  const { step, start } = FIGURES[field];
  const own = ownFigure(trial, field, ground);
  const now = trial[field] ?? own;
  const next = now === null ? start : Number((Math.round(now / step + by) * step).toFixed(2));
  const kept = Math.max(field === 'speed' ? step : 0, next);
  return kept === own ? others : { ...others, [field]: kept };
}

/** The boat as read with what is tried in place of her own, to be judged in the same way. Nothing is written. */
export function boatOnTrial(loaded: Loaded, trial: Trial): Loaded {
  const { speed, passage, ...limits } = trial;
  const { boat, entries, condition } = loaded;
  const planned = passage ?? condition.passage?.id;
  const changed: Boat = {
    ...boat,
    limits: {
      ...boat.limits,
      ...limits,
      ...(boat.limits.alone === undefined ? {} : { alone: { ...boat.limits.alone, ...limits } }),
    },
    passages: boat.passages.map((one) =>
      one.id === planned && speed !== undefined ? { ...one, speed: { ...one.speed, mean: speed } } : one,
    ),
  };
  if (passage === undefined) return { ...loaded, ...seenAs(changed, entries, condition.at) };
  const unplanned = entries.filter(({ kind }) => kind !== 'plan');
  return { ...loaded, ...seenAs({ ...changed, crew: condition.crew, passage }, unplanned, condition.at) };
}

function seenAs(boat: Boat, entries: Loaded['entries'], at: number) {
  return { boat, entries, condition: conditionAt(boat, entries, at) };
}

/** `gusts 34 kn`, or the passage by its name. */
export function triedWords(trial: Trial, field: TrialField, ground: TrialGround): string {
  if (field === 'passage') {
    const id = trial.passage ?? ground.loaded.condition.passage?.id;
    const named = ground.loaded.boat.passages.find((one) => one.id === id);
    return named ? `passage ${named.name}` : 'no passage';
  }
  const { name, unit } = FIGURES[field];
  const figure = trial[field] ?? ownFigure(trial, field, ground);
  return figure === null ? `${name} no limit` : `${name} ${amountWords(figure, unit)}`;
}

/** `gusts 34 kn (boat file 30 kn)` for all that differs. */
export function differences(trial: Trial, ground: TrialGround): string {
  return TRIAL_FIELDS.filter((field) => trial[field] !== undefined)
    .map((field) => {
      const own = triedWords(without(trial, field), field, ground).replace(
        /^(wind|gusts|seas|headwind|speed|passage) /u,
        '',
      );
      return `${triedWords(trial, field, ground)} (boat file: ${own})`;
    })
    .join(', ');
}

function without(trial: Trial, field: TrialField): Trial {
  return Object.fromEntries(Object.entries(trial).filter(([name]) => name !== field));
}

/** The boat file's own figure; null where it sets no limit. */
function ownFigure(trial: Trial, field: Exclude<TrialField, 'passage'>, { loaded, document }: TrialGround) {
  if (field !== 'speed') return document.weather?.limits[field] ?? null;
  const planned = trial.passage ?? loaded.condition.passage?.id;
  return loaded.boat.passages.find(({ id }) => id === planned)?.speed.mean ?? null;
}
