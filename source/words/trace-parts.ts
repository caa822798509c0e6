import {
  amountWords,
  badHundred,
  capital,
  counted,
  dayHere,
  durationWords,
  goodHundred,
  sentence,
} from './say.ts';
import { SOMETHING_ELSE, type TraceDocument } from './trace-document.ts';

/** So many causes and repairs are told; the rest are in --json. */
const MOST_CAUSES = 5;
const MOST_REPAIRS = 4;

/** What every trace ends with. */
export const CHANCES_ONLY =
  'Chances, not findings: the log knows what was written down, not the boat. Makers\u2019 manuals and licensed people come first.';

/** A trace in words, for a page of any kind to lay out. */
export function traceParts(document: TraceDocument) {
  return {
    live: liveWords(document),
    state: stateWords(document),
    causes: causeWords(document),
    together:
      document.together > 0 ? ['Two of them may stand at once, so these may make more than 100.'] : [],
    look: lookWords(document),
    repairs: repairWords(document),
    jobs: jobWords(document),
    unknown: unknownClueWords(document),
  };
}

export type TraceParts = ReturnType<typeof traceParts>;

/** What can be lived with and what cannot, how often the pump works, what an opening lets in. */
function liveWords({ liveWith, pump, flooding }: TraceDocument): string[] {
  const lines = (liveWith?.bars ?? []).map((bar) => BARS[bar] ?? bar);
  if (liveWith && lines.length === 0) {
    const { lostADayL, lastsDays, aboardL } = liveWith;
    const seen = liveWith.class === null ? '' : ` Seen of it: ${CLASSES[liveWith.class]}.`;
    const rate = lostADayL === null ? '' : ` It loses about ${amountWords(lostADayL, 'L')} on a usual day`;
    const aboard = aboardL === null ? '' : ` with ${amountWords(aboardL, 'L')} aboard`;
    const lasts =
      lastsDays === null
        ? ''
        : `: enough for about ${counted(Math.floor(lastsDays), 'day', 'days')}${aboard}`;
    lines.push(
      `Can be lived with as far as the log tells, if the level is looked at more often.${seen}${rate === '' ? '' : `${rate}${lasts}.`}`,
    );
  }
  if (pump) lines.push(pumpWords(pump));
  if (flooding) lines.push(floodingWords(flooding));
  return lines;
}

function pumpWords({ perDay, p10, p90, since, before, beforeRange }: NonNullable<TraceDocument['pump']>) {
  const times = (value: number) => amountWords(Number(value.toPrecision(2)), null);
  const range = (from: number, to: number) => `8 chances in 10 between ${times(from)} and ${times(to)}`;
  const now = `The bilge pump cuts in about ${times(perDay)} times a day (${range(p10, p90)})`;
  return before === null || beforeRange === null
    ? `${now}, and that has not changed.`
    : `${now} since ${dayHere(Date.parse(since))}; before, about ${times(before)} (${range(...beforeRange)}).`;
}

function floodingWords({
  inflowLPerMinute,
  pumpedLPerMinute,
  keepsUp,
  risesLPerMinute,
}: NonNullable<TraceDocument['flooding']>) {
  const inflow = `Such an opening lets in about ${amountWords(inflowLPerMinute, 'L')} a minute.`;
  if (pumpedLPerMinute === null || risesLPerMinute === null) return inflow;
  const pumped = `The pump, at the half of its label it does at work, moves ${amountWords(pumpedLPerMinute, 'L')}`;
  return keepsUp
    ? `${inflow} ${pumped}: it keeps up.`
    : `${inflow} ${pumped}: it does not keep up, ${amountWords(risesLPerMinute, 'L')} a minute stays in; close or plug the opening first.`;
}

const BARS: { readonly [bar: string]: string } = {
  'fuel leak':
    'A fuel leak cannot be lived with: no engine, no flame, until it is put right and looked at again.',
  rising:
    'A level that rises with nothing poured in cannot be lived with: water or fuel is getting in. Do not run.',
  falls: 'Drops that fall cannot be left: put it right before she runs.',
};

const CLASSES = {
  dry: 'dry',
  wet: 'wet to the touch, no drop forms',
  drops: 'drops form',
  falls: 'drops fall',
};

/** How far the hunt is. */
function stateWords({ state, causes, somethingElse }: TraceDocument): string {
  const lead = causes[0];
  if (state === 'something else' || !lead)
    return `The clues fit nothing in this table: something else, ${badHundred(somethingElse)}.`;
  const leads = `${lead.name}, ${badHundred(lead.chance)}`;
  if (state === 'stands') return `Likeliest by far: ${leads}.`;
  return state === 'spent'
    ? `Likeliest: ${leads}. No look is left that would change what to do first.`
    : `Likeliest so far: ${leads}.`;
}

/** A cause with its chance, then what speaks for it and against it. */
interface CauseWords {
  readonly chance: string;
  readonly name: string;
  readonly clues: readonly string[];
}

/** The likeliest causes, the likeliest first, and something else at the end. */
function causeWords({ causes, somethingElse, clues }: TraceDocument): CauseWords[] {
  const says = new Map(clues.map((clue) => [clue.id, clue.says]));
  const told = (label: string, ids: readonly string[]) =>
    ids.length === 0 ? [] : [`${label}: ${ids.map((id) => says.get(id)).join('; ')}`];
  return [
    ...causes.slice(0, MOST_CAUSES).map((cause) => ({
      chance: badHundred(cause.chance),
      name: cause.name,
      clues: [...told('for', cause.speaksFor), ...told('against', cause.against)],
    })),
    { chance: badHundred(somethingElse), name: 'something else', clues: [] },
  ];
}

/** The next best look: what it is and how long it takes, what to mind, what either answer would say. Null where nothing is left to look for. */
function lookWords({ next, causes }: TraceDocument) {
  if (!next) return null;
  const likeliest = ({ cause, chance }: typeof next.ifSeen) =>
    `${cause === SOMETHING_ELSE ? 'something else' : causeName(causes, cause)}, ${badHundred(chance)}`;
  return {
    title: `LOOK NEXT (${durationWords(next.minutes / 60)})`,
    ask: next.ask,
    cautions: next.cautions,
    outcome: `If so: ${likeliest(next.ifSeen)}. If not: ${likeliest(next.ifNot)}.`,
  };
}

/** What to put right, in order; null where there is nothing. */
function repairWords({ repairs, state }: TraceDocument) {
  if (repairs.length === 0) return null;
  return {
    title: state === 'hunting' ? 'IF IT MUST BE PUT RIGHT NOW, in this order' : 'TO PUT RIGHT, in this order',
    lines: repairs
      .slice(0, MOST_REPAIRS)
      .map(
        ({ do: what, chance, minutes, parts, atAnchor }) =>
          `${sentence(what)} ${capital(badHundred(chance))}; ${durationWords(minutes / 60)}${parts === null ? '' : `; takes ${parts}`}${atAnchor ? '' : '; not at anchor'}.`,
      ),
  };
}

/** Work for a cause that has not closed the hunt yet, each without its full stop; and that which closed one before. */
function jobWords({ jobs, before, causes }: TraceDocument) {
  const day = (at: string) => dayHere(Date.parse(at));
  return {
    open: jobs.map(
      ({ at, text, cause, helped }) =>
        `Work on ${day(at)} for ${causeName(causes, cause)} (${text}): ${goodHundred(helped)} that it helped; the next readings tell`,
    ),
    closed: before
      .map(
        ({ at, text, cause, helped }) =>
          `Closed by the work of ${day(at)} (${text}): ${causeName(causes, cause)}, ${goodHundred(helped)} that it helped. It counts from now on.`,
      )
      .reverse(),
  };
}

function unknownClueWords({ unknownClues }: TraceDocument): string[] {
  return unknownClues.map((clue) => `The log has a clue "${clue}" this table does not know: left out.`);
}

function causeName(causes: TraceDocument['causes'], id: string): string {
  return causes.find((cause) => cause.id === id)?.name ?? id;
}
