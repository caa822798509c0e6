import { conditionAt } from '../condition/condition-at.ts';
import type { Draft } from '../logbook/entries.ts';
import type { LoadedBoat } from '../outside.ts';
import { momentFrom } from '../words/moments.ts';
import { answerFor, type Question } from './answer-for.ts';

type Passages = Pick<Question, 'seed' | 'simulations'>;

/** With every leaving the decision it is: to go, beside what the model said at that moment. Leaving that has its decision with it, or is said under way, gets none. */
export function withDecisions(
  drafts: readonly Draft[],
  loaded: LoadedBoat,
  passages: Passages,
): readonly Draft[] {
  const decided = new Set(drafts.flatMap(({ kind, at }) => (kind === 'decision' ? [at] : [])));
  return drafts.flatMap((draft) => {
    if (draft.kind !== 'left' || decided.has(draft.at)) return [draft];
    const at = Date.parse(draft.at);
    if (conditionAt(loaded.boat, loaded.entries, at).underWay !== null) return [draft];
    const { by } = draft;
    const decision: Draft = {
      kind: 'decision',
      at: draft.at,
      ...verdictAt(loaded, at, passages),
      choice: 'go',
      ...(by === undefined ? {} : { by }),
    };
    return [decision, draft];
  });
}

/** A decision as typed, `decision choice=stay text="..."`, with the verdict and the score it stands beside, where they are not typed as well. */
export function withVerdict(
  words: readonly string[],
  { loaded, now, zone }: { loaded: LoadedBoat; now: number; zone: string },
  passages: Passages,
): readonly string[] {
  const has = (field: string) => words.some((word) => word.startsWith(`${field}=`));
  if (words[0] !== 'decision' || !has('choice') || (has('verdict') && has('score'))) return words;
  const typedAt = words.find((word) => word.startsWith('at='))?.slice('at='.length);
  const at = typedAt === undefined ? now : momentFrom(typedAt, now, zone);
  if (at === null) return words;
  const { verdict, score } = verdictAt(loaded, at, passages);
  return [
    ...words,
    ...(has('verdict') ? [] : [`verdict=${verdict}`]),
    ...(has('score') ? [] : [`score=${score ?? 'none'}`]),
  ];
}

function verdictAt(loaded: LoadedBoat, at: number, { seed, simulations }: Passages) {
  const { verdict, score } = answerFor(loaded, { at, seed, simulations }).document;
  return { verdict, score: score.now };
}
