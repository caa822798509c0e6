import type { Stream } from '../../source/maths/stream.ts';
import { stream } from '../../source/maths/stream.ts';
import { type Chances, updated } from '../../source/tracing/beliefs.ts';
import {
  causeChances,
  elseChance,
  type Hunt,
  huntOf,
  looksLeft,
  nextAct,
} from '../../source/tracing/hunt.ts';
import type { Table } from '../../source/tracing/table.ts';

/** How the next look is chosen: the best for its minutes, any of those left, or the one that tells most of the cause likeliest beforehand. */
type Asking = 'next best' | 'random' | 'by prior';

/** Hunts over invented faults drawn from a table: looks each way of asking needed on average, and how the chance told of the leading cause came true. */
export function huntInvented(table: Table, count: number, seed: number) {
  const hunt = huntOf(table);
  const looks = { 'next best': 0, random: 0, 'by prior': 0 };
  const right = { 'next best': 0, random: 0, 'by prior': 0 };
  const told: { readonly chance: number; readonly right: boolean }[] = [];
  for (let i = 0; i < count; i += 1) {
    const fault = inventedFault(hunt, stream(seed, `${table.id} fault ${i}`));
    for (const asking of ['next best', 'random', 'by prior'] as const) {
      const ended = play(hunt, fault, asking, stream(seed, `${table.id} order ${i}`));
      looks[asking] += ended.looks / count;
      const lead = leading(hunt, ended.beliefs, fault.standing);
      if (asking === 'next best') told.push(lead);
      right[asking] += Number(lead.right) / count;
    }
  }
  return { looks, right, told };
}

interface Fault {
  readonly standing: readonly number[];
  readonly shows: ReadonlyMap<string, boolean>;
}

function inventedFault({ hypotheses, prior, shown }: Hunt, chance: Stream): Fault {
  let drawn = chance.uniform();
  const h = Math.max(
    0,
    prior.findIndex((one) => {
      drawn -= one;
      return drawn < 0;
    }),
  );
  return {
    standing: hypotheses[h]!,
    shows: new Map([...shown].map(([clue, chances]) => [clue, chance.uniform() < chances[h]!])),
  };
}

/** What the log answers is known beforehand, to each way of asking alike. Each goes on until a cause stands or its looks are spent; the next best look knows none that can change nothing. */
function play(hunt: Hunt, { shows }: Fault, asking: Asking, chance: Stream) {
  const answered = new Set<string>();
  let beliefs: Chances = hunt.prior;
  const answer = (id: string) => {
    answered.add(id);
    beliefs = updated(beliefs, hunt.shown.get(id)!, shows.get(id)!);
  };
  for (const { id, log } of hunt.table.clues) if (log !== undefined) answer(id);
  const order = asking === 'random' ? shuffled(hunt, chance) : byPrior(hunt);
  let looks = 0;
  for (;;) {
    const next =
      asking === 'next best'
        ? looksLeft(hunt, beliefs, answered)[0]?.clue.id
        : nextAct(hunt, beliefs).startsWith('stands')
          ? undefined
          : order.find((id) => !answered.has(id));
    if (next === undefined) return { looks, beliefs };
    answer(next);
    looks += 1;
  }
}

function shuffled({ table }: Hunt, chance: Stream): readonly string[] {
  return table.clues
    .map(({ id }) => ({ id, at: chance.uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ id }) => id);
}

/** Cause by cause from the likeliest beforehand: the clue it shows most, against how often the others do. */
function byPrior({ table, hypotheses, prior, shown }: Hunt): readonly string[] {
  const all = causeChances({ table, hypotheses }, prior);
  const causes = table.causes.map((_, i) => i).sort((a, b) => all[b]! - all[a]!);
  const telling = (cause: number, id: string) => {
    const chances = shown.get(id)!;
    const usual = chances.reduce((sum, chance, h) => sum + prior[h]! * chance, 0);
    return Math.log(chances[cause]! / usual);
  };
  const ids = table.clues.map(({ id }) => id);
  const asked: string[] = [];
  while (asked.length < ids.length)
    for (const cause of causes) {
      const best = ids
        .filter((id) => !asked.includes(id))
        .sort((a, b) => telling(cause, b) - telling(cause, a))[0];
      if (best !== undefined) asked.push(best);
    }
  return asked;
}

function leading(hunt: Hunt, beliefs: Chances, standing: readonly number[]) {
  const chances = [...causeChances(hunt, beliefs), elseChance(hunt, beliefs)];
  const most = chances.indexOf(Math.max(...chances));
  const right = most === hunt.table.causes.length ? standing.length === 0 : standing.includes(most);
  return { chance: chances[most]!, right };
}
