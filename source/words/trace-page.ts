import { wrapped } from './lines.ts';
import { amountWords, badHundred, capital, counted, dayWords, durationWords, sentence } from './say.ts';
import { SOMETHING_ELSE, type TraceDocument } from './trace-document.ts';

/** So many causes and repairs are told; the rest are in --json. */
const MOST_CAUSES = 5;
const MOST_REPAIRS = 4;

/** A trace as a page of words: what can be lived with, the causes with their chances and clues, the next best look, the order of repairs. */
export function tracePage(trace: TraceDocument, columns: number): string {
  const lines = [
    `${capital(trace.item.name)}: ${trace.table.title}`,
    ...liveLines(trace),
    '',
    stateLine(trace),
    ...causeLines(trace),
    '',
    ...nextLines(trace),
    ...repairLines(trace),
    ...jobLines(trace),
    ...trace.unknownClues.map((clue) => `The log has a clue "${clue}" this table does not know: left out.`),
    '',
    'Chances, not findings: the log knows what was written down, not the boat. Makers\u2019 manuals and licensed people come first.',
  ];
  return `${lines.flatMap((line) => (line === '' ? [''] : wrapped(line.trimStart(), columns, line.length - line.trimStart().length, 2))).join('\n')}\n`;
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

function liveLines({ liveWith, warnings, pump, flooding }: TraceDocument): string[] {
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
  if (pump)
    lines.push(
      pump.before === null
        ? `The bilge pump cuts in ${amountWords(pump.perDay, null)} times a day, and has not changed.`
        : `The bilge pump cuts in ${amountWords(pump.perDay, null)} times a day since ${dayWords(Date.parse(pump.since), 'UTC')}; before, ${amountWords(pump.before, null)}.`,
    );
  if (flooding)
    lines.push(
      `Such an opening lets in about ${amountWords(flooding.inflowLPerMinute, 'L')} a minute.${
        flooding.pumpedLPerMinute === null
          ? ''
          : ` The pump, at the half of its label it does at work, moves ${amountWords(flooding.pumpedLPerMinute, 'L')}: ${flooding.keepsUp ? 'it keeps up' : 'it does not keep up; close or plug the opening first'}.`
      }`,
    );
  return [...lines, ...warnings];
}

function stateLine({ state, causes, somethingElse }: TraceDocument): string {
  const lead = causes[0];
  if (state === 'something else' || !lead)
    return `The clues fit nothing in this table: something else, ${badHundred(somethingElse)}.`;
  const leads = `${lead.name}, ${badHundred(lead.chance)}`;
  if (state === 'stands') return `Likeliest by far: ${leads}.`;
  return state === 'spent'
    ? `Likeliest: ${leads}. No look is left that would change what to do first.`
    : `Likeliest so far: ${leads}.`;
}

function causeLines({ causes, somethingElse, clues }: TraceDocument): string[] {
  const says = new Map(clues.map((clue) => [clue.id, clue.says]));
  const told = (ids: readonly string[]) => ids.map((id) => says.get(id)).join('; ');
  return [
    ...causes
      .slice(0, MOST_CAUSES)
      .flatMap((cause) => [
        `  ${badHundred(cause.chance)}  ${cause.name}`,
        ...(cause.speaksFor.length === 0 ? [] : [`      for: ${told(cause.speaksFor)}`]),
        ...(cause.against.length === 0 ? [] : [`      against: ${told(cause.against)}`]),
      ]),
    `  ${badHundred(somethingElse)}  something else`,
  ];
}

function nextLines({ next, causes, item, state }: TraceDocument): string[] {
  if (!next)
    return [state === 'hunting' ? '' : 'Nothing more to look for now.'].filter((line) => line !== '');
  const name = (id: string) =>
    id === SOMETHING_ELSE ? 'something else' : (causes.find((cause) => cause.id === id)?.name ?? id);
  const record = `hoveshort record clue item=${item.id} clue=${next.clue} seen=yes`;
  return [
    `LOOK NEXT (${durationWords(next.minutes / 60)})  ${next.ask}`,
    ...next.cautions.map((caution) => `  ${caution}`),
    `  If so: ${name(next.ifSeen.cause)}, ${badHundred(next.ifSeen.chance)}. If not: ${name(next.ifNot.cause)}, ${badHundred(next.ifNot.chance)}.`,
    `  Then: ${record}   (or seen=no, seen="cannot tell")`,
  ];
}

function repairLines({ repairs, state, item }: TraceDocument): string[] {
  const first = repairs[0];
  if (!first) return [];
  return [
    '',
    state === 'hunting' ? 'IF IT MUST BE PUT RIGHT NOW, in this order' : 'TO PUT RIGHT, in this order',
    ...repairs
      .slice(0, MOST_REPAIRS)
      .map(
        ({ do: what, chance, minutes, parts, atAnchor }) =>
          `  ${sentence(what)} ${capital(badHundred(chance))}; ${durationWords(minutes / 60)}${parts === null ? '' : `; takes ${parts}`}${atAnchor ? '' : '; not at anchor'}.`,
      ),
    `  Once done: hoveshort record job item=${item.id} cause=${first.cause} text="..."`,
  ];
}

function jobLines({ jobs, before, causes, item }: TraceDocument): string[] {
  const name = (id: string) => causes.find((cause) => cause.id === id)?.name ?? id;
  const day = (at: string) => dayWords(Date.parse(at), 'UTC');
  return [
    ...jobs.map(
      ({ at, text, cause, helped }) =>
        `Work on ${day(at)} for ${name(cause)} (${text}): ${badHundred(helped)} that it helped; the next readings tell, or hoveshort record clue item=${item.id} clue=helped seen=yes`,
    ),
    ...before.map(
      ({ at, text, cause, helped }) =>
        `Closed by the work of ${day(at)} (${text}): ${name(cause)}, ${badHundred(helped)} that it helped. It counts from now on.`,
    ),
  ];
}
