import type { Condition } from '../../condition/condition.ts';
import type { VerdictDocument } from '../../words/document.ts';
import { type LookDocument, roundOf } from '../../words/round-document.ts';
import { amountWords } from '../../words/say.ts';
import type { Loaded } from '../model.ts';
import type { Last, RoundRow } from './round.ts';

/** Everything due a look, in walking order, with what it would be unchanged from. */
export function roundRows(loaded: Loaded, document: VerdictDocument | null): readonly RoundRow[] {
  const { passes } = roundOf(loaded.boat, loaded.condition, { items: document?.items ?? [] });
  return passes.flatMap(({ when, looks }) =>
    looks
      .filter(({ due }) => due)
      .map((look) => ({ pass: when, ...withLast(look, lastOf(look, loaded.condition)) })),
  );
}

/** A level is shown with what was poured in after it was read: that is what it is unchanged from. */
function withLast(look: LookDocument, last: Last | null): Pick<RoundRow, 'look' | 'last'> {
  if (look.kind !== 'fluid' || look.last === null || last?.is !== 'amount' || last.off) return { look, last };
  return { look: { ...look, last: { ...look.last, found: amountWords(last.value, 'L') } }, last };
}

function lastOf({ kind, id }: LookDocument, condition: Condition): Last | null {
  switch (kind) {
    case 'engine':
      return amount(condition.engines.get(id)?.readings.at(-1)?.reading);
    case 'fluid':
      return levelOf(condition.fluids.get(id)?.events ?? []);
    case 'anode': {
      const fitting = condition.anodes.get(id)?.fittings.at(-1);
      return amount(fitting && (fitting.looks.at(-1)?.share ?? 1));
    }
    case 'check': {
      const answer = condition.checks.get(id)?.answers.at(-1);
      if (answer?.value != null) return amount(answer.value);
      return answer?.ok == null ? null : { is: 'answer', ok: answer.ok };
    }
  }
}

type FluidEvents = NonNullable<ReturnType<Condition['fluids']['get']>>['events'];

function levelOf(events: FluidEvents): Last | null {
  const at = events.findLastIndex(({ kind }) => kind === 'reading');
  const reading = events[at];
  if (reading?.kind !== 'reading') return null;
  const poured = events
    .slice(at + 1)
    .reduce((sum, event) => sum + (event.kind === 'topup' ? event.amountL : 0), 0);
  if (poured > 0 || reading.off === 'on') return amount(reading.levelL + poured);
  return { is: 'amount', value: reading.levelL, off: reading.off };
}

/** Without the dust of sums. */
function amount(value: number | undefined): Last | null {
  return value === undefined ? null : { is: 'amount', value: Number(value.toPrecision(12)) };
}
