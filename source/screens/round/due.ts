import type { Condition } from '../../condition/condition.ts';
import { conditionAt } from '../../condition/condition-at.ts';
import type { VerdictDocument } from '../../words/document.ts';
import { type LookDocument, roundOf } from '../../words/round-document.ts';
import type { Loaded } from '../model.ts';
import { type RoundPage, type RoundRow, type Same, UNTYPED } from './round.ts';

/** Everything due a look, in walking order, with what was found last. Without an answer yet, by the intervals alone. */
export function dueRows(
  { boat, condition }: Pick<Loaded, 'boat' | 'condition'>,
  document: VerdictDocument | null,
): readonly RoundRow[] {
  return roundOf(boat, condition, document ?? { items: [] }).passes.flatMap(({ when, looks }) =>
    looks
      .filter(({ due }) => due)
      .map((look) => ({ ...UNTYPED, pass: when, look, same: sameOf(look, condition) })),
  );
}

/** A round opened before there was an answer: with it come the rows it alone makes due, and the score to begin from. */
export function withAnswer(page: RoundPage, loaded: Loaded, document: VerdictDocument): RoundPage {
  if (page.before !== null) return page;
  const own = new Map(page.rows.map((row) => [row.look.id, row]));
  const due = dueRows(loaded, document).filter(({ look }) => !own.has(look.id));
  const order = roundOf(loaded.boat, loaded.condition, document).passes.flatMap(({ looks }) => looks);
  const place = new Map(order.map(({ id }, index) => [id, index]));
  const rows = [...page.rows, ...due].sort(
    (a, b) => (place.get(a.look.id) ?? 0) - (place.get(b.look.id) ?? 0),
  );
  const hand = page.rows[page.at - 1];
  const before = page.saves.length === 0 ? document.score.boat : null;
  return { ...page, rows, at: hand ? 1 + rows.indexOf(hand) : 0, before };
}

/** The rows with what had been found last at a moment: a round read off paper goes by what was known then. */
export function rowsAsOf(rows: readonly RoundRow[], { boat, entries }: Loaded, moment: number) {
  const condition = conditionAt(boat, entries, moment);
  const looks = new Map(
    roundOf(boat, condition, { items: [] })
      .passes.flatMap((pass) => pass.looks)
      .map((look) => [look.id, look]),
  );
  return rows.map((row) => {
    const look = looks.get(row.look.id);
    return look ? { ...row, look, same: sameOf(look, condition) } : row;
  });
}

const NEVER: Same = { not: 'never looked at before: type what it reads' };

function sameOf({ kind, id }: LookDocument, condition: Condition): Same {
  switch (kind) {
    case 'engine': {
      const reading = condition.engines.get(id)?.readings.at(-1)?.reading;
      return reading === undefined ? NEVER : { found: { kind: 'hours', engine: id, reading } };
    }
    case 'fluid':
      return sameLevel(id, condition);
    case 'anode': {
      const fitting = condition.anodes.get(id)?.fittings.at(-1);
      return fitting
        ? { found: { kind: 'anode', anode: id, share: fitting.looks.at(-1)?.share ?? 1 } }
        : NEVER;
    }
    case 'check': {
      const answer = condition.checks.get(id)?.answers.at(-1);
      if (answer?.value != null) return { found: { kind: 'check', check: id, value: answer.value } };
      return answer?.ok == null ? NEVER : { found: { kind: 'check', check: id, ok: answer.ok } };
    }
  }
}

/** What was poured in since the last reading makes "the same" two things, so it must be read. */
function sameLevel(id: string, { fluids }: Condition): Same {
  const events = fluids.get(id)?.events ?? [];
  const at = events.findLastIndex(({ kind }) => kind === 'reading');
  const reading = events[at];
  if (reading?.kind !== 'reading') return NEVER;
  if (events.slice(at).some(({ kind }) => kind === 'topup'))
    return { not: 'topped up since it was read: type what it reads' };
  const level = reading.off === 'on' ? { level: reading.levelL } : { off: reading.off };
  return { found: { kind: 'dip', fluid: id, ...level } };
}
