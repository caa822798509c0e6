import type { Problem, ProblemKind, Step } from './forecast.ts';

/** Beyond these a figure is shown and asked to be looked at again (common practice, no source). */
const MOST_KN = 100;
const MOST_M = 15;
const MOST_CHANGE_KN = 25;
/** As many of one kind are shown; more of the same say nothing new. */
const MOST_OF_A_KIND = 5;

/**
 * Length of a wave of period T seconds in deep water is 1.56 T² metres. Seas are no steeper than 1 in 15 by their peak period and 1 in 10 by their mean one
 * (DNV-RP-C205, limits of steepness of sea states, from memory): what is, was rather given in feet.
 */
const METRES_PER_SECOND_SQUARED = 1.56;
const STEEPEST = { peak: 1 / 15, mean: 1 / 10 };
/** Below a strong breeze, seas this high without a period are rather feet (judgement): at 21 knots a fully grown sea has 2.6 m (Pierson-Moskowitz). */
const HIGH_M = 4;
const STRONG_BREEZE_KN = 22;

/** What in the figures of a forecast the skipper should see: contradictions, the implausible, what is missing. `heightsNamed`: the source says itself what its heights are in. */
export function oddities(steps: readonly Step[], heightsNamed: boolean): readonly Problem[] {
  const problems = steps.flatMap((step, i) => [
    ...odditiesOf(step, heightsNamed),
    ...changeFrom(steps[i - 1], step),
  ]);
  const counts = new Map<ProblemKind, number>();
  return [
    ...problems.filter(({ kind }) => {
      counts.set(kind, (counts.get(kind) ?? 0) + 1);
      return (counts.get(kind) ?? 0) <= MOST_OF_A_KIND;
    }),
    ...(steps.length > 0 && steps.every(({ gust }) => gust === null)
      ? [{ kind: 'no gusts', where: '' } as const]
      : []),
  ];
}

function odditiesOf(step: Step, heightsNamed: boolean): readonly Problem[] {
  const { wind, gust, seas } = step;
  const where = nameOf(step);
  const found: Problem[] = [];
  if (wind === null) found.push({ kind: 'no wind', where });
  if (seas === null) found.push({ kind: 'no seas', where });
  if (wind && gust !== null && gust < wind[1])
    found.push({ kind: 'gust below wind', where, value: gust, than: wind[1] });
  const strongest = Math.max(wind?.[1] ?? 0, gust ?? 0);
  if (strongest > MOST_KN) found.push({ kind: 'very strong wind', where, value: strongest });
  if (seas && seas[1] > MOST_M) found.push({ kind: 'very high seas', where, value: seas[1] });
  else if (seas && !heightsNamed && isPerhapsFeet(step, seas[1]))
    found.push({ kind: 'perhaps feet', where, value: seas[1] });
  return found;
}

function isPerhapsFeet({ wind, period, periodKind }: Step, heightM: number): boolean {
  if (period === null) return heightM >= HIGH_M && wind !== null && wind[1] < STRONG_BREEZE_KN;
  const isMean = periodKind === 'mean' || periodKind === 'zero crossing';
  return heightM > (isMean ? STEEPEST.mean : STEEPEST.peak) * METRES_PER_SECOND_SQUARED * period ** 2;
}

function changeFrom(before: Step | undefined, step: Step): readonly Problem[] {
  if (!before?.wind || !step.wind) return [];
  const [was, is] = [before.wind, step.wind].map(([low, high]) => (low + high) / 2);
  return Math.abs(is! - was!) > MOST_CHANGE_KN
    ? [{ kind: 'sudden change', where: nameOf(step), value: is!, than: was! }]
    : [];
}

/** A step as problems name it: by its label, else by when it begins. */
function nameOf({ label, from }: Step): string {
  return label ?? from;
}
