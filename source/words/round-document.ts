import type { Boat } from '../boat/boat.ts';
import { COMMON_PRACTICE } from '../boat/template-answers.ts';
import type { Condition } from '../condition/condition.ts';
import { type Look, type Pass, passes, roundAt } from '../condition/round.ts';
import type { VerdictDocument } from './document.ts';
import { instant } from './figures.ts';
import type { ItemDocument } from './item-document.ts';
import { shownUnit } from './preferred.ts';
import { amountWords } from './say.ts';

/** The document of `round --json`: every look there is, in walking order, with what was found last. */
export interface RoundDocument {
  format: 1;
  boat: string;
  at: string;
  passes: { when: Pass; looks: LookDocument[] }[];
}

export interface LookDocument {
  id: string;
  kind: Look['kind'];
  name: string;
  due: boolean;
  nextDue: string | null;
  /** What was found last, in words; null where nobody looked yet. */
  last: { at: string; found: string } | null;
  /** What it should be, in words. */
  wants: string | null;
  /** The unit of what is to be written; null where it is yes or no. */
  unit: string | null;
  minutes: number | null;
  note: string | null;
}

/** The round from the boat file, the condition and the answer: a fluid that may reach its low mark within a day is due whatever its interval. */
export function roundOf(
  boat: Boat,
  condition: Condition,
  { items }: Pick<VerdictDocument, 'items'>,
): RoundDocument {
  const looks = roundAt(boat, condition);
  const pressing = new Set(items.filter(isPressing).map(({ id }) => id));
  return {
    format: 1,
    boat: boat.name,
    at: instant(condition.at),
    passes: passes.map((when) => ({
      when,
      looks: looks[when].map((look) => lookDocument(look, boat, condition, pressing.has(look.id))),
    })),
  };
}

/** A chance in ten of reaching the low mark within a day, lying or under way (model 3.8). */
function isPressing(item: ItemDocument): boolean {
  if (item.kind !== 'fluid' || item.lookAgain === null) return false;
  const { lookAgain } = item;
  return 'days' in lookAgain ? lookAgain.days < 1 : lookAgain.engineHours < 24;
}

function lookDocument(look: Look, boat: Boat, condition: Condition, pressing: boolean): LookDocument {
  const { id, kind, due, nextDue, lookedAt } = look;
  const { found, ...facts } = factsOf(look, boat, condition);
  return {
    id,
    kind,
    due: due || pressing,
    nextDue: nextDue === null ? null : instant(nextDue),
    last: found === null || lookedAt === null ? null : { at: instant(lookedAt), found },
    ...facts,
  };
}

type Facts = Pick<LookDocument, 'name' | 'wants' | 'unit' | 'minutes' | 'note'> & { found: string | null };

function factsOf({ kind, id }: Look, boat: Boat, condition: Condition): Facts {
  switch (kind) {
    case 'engine':
      return engineFacts(id, boat, condition);
    case 'fluid':
      return fluidFacts(id, boat, condition);
    case 'anode':
      return anodeFacts(id, boat, condition);
    case 'check':
      return checkFacts(id, boat, condition);
  }
}

function engineFacts(id: string, { engines }: Boat, condition: Condition): Facts {
  const reading = condition.engines.get(id)?.readings.at(-1)?.reading;
  const found = reading === undefined ? null : `${reading} h`;
  const name = `${nameIn(engines, id)}, hours by the meter`;
  return { name, found, wants: null, unit: 'h', minutes: null, note: null };
}

function fluidFacts(id: string, { fluids }: Boat, condition: Condition): Facts {
  const fluid = fluids.find((one) => one.id === id);
  const reading = condition.fluids.get(id)?.events.findLast((event) => event.kind === 'reading');
  const level = reading?.kind === 'reading' ? reading : null;
  const off = { on: null, below: 'off the stick', above: 'over the full mark' };
  const marks =
    fluid === undefined || fluid.low === 0
      ? `holds ${amountWords(fluid?.full ?? 0, 'L')}`
      : `low ${amountWords(fluid.low, 'L', fluid.full)}, full ${amountWords(fluid.full, 'L')}`;
  return {
    ...common(fluid),
    found: level && (off[level.off] ?? amountWords(level.levelL, 'L', fluid?.full)),
    wants: marks,
    unit: shownUnit('L', fluid?.full ?? 0).name,
  };
}

function anodeFacts(id: string, { anodes }: Boat, condition: Condition): Facts {
  const anode = anodes.find((one) => one.id === id);
  const fitting = condition.anodes.get(id)?.fittings.at(-1);
  const look = fitting?.looks.at(-1);
  const found = look ? `${amountWords(look.share, 'share')} left` : fitting ? 'new' : null;
  const wants = anode ? `finished at ${amountWords(anode.limit, 'share')}` : null;
  return { ...common(anode), found, wants, unit: 'share' };
}

function checkFacts(id: string, { checks }: Boat, condition: Condition): Facts {
  const check = checks.find((one) => one.id === id);
  const answer = condition.checks.get(id)?.answers.at(-1);
  const unit = check?.unit ?? null;
  const yesNo = answer?.ok === false ? 'not well' : answer ? 'well' : null;
  const wants = [
    ...(check?.atLeast === undefined ? [] : [`at least ${amountWords(check.atLeast, unit)}`]),
    ...(check?.atMost === undefined ? [] : [`at most ${amountWords(check.atMost, unit)}`]),
  ];
  return {
    ...common(check),
    found: answer?.value == null ? yesNo : amountWords(answer.value, unit),
    wants: wants.length === 0 ? null : wants.join(', '),
    unit: check?.ask === 'number' ? (unit ?? '') : null,
  };
}

/** The note without where its figures come from: on a round it is read for what to mind. */
function common(
  item:
    | { readonly name: string; readonly minutes?: number | undefined; readonly note?: string | undefined }
    | undefined,
) {
  const note = item?.note?.replace(COMMON_PRACTICE, '').trim() ?? '';
  return { name: item?.name ?? '', minutes: item?.minutes ?? null, note: note === '' ? null : note };
}

function nameIn(list: readonly { readonly id: string; readonly name: string }[], id: string): string {
  return list.find((one) => one.id === id)?.name ?? id;
}
