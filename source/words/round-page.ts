import { passCaution } from './cautions.ts';
import { wrapped } from './lines.ts';
import { AID } from './page.ts';
import type { LookDocument, RoundDocument } from './round-document.ts';
import { counted, dayWords, durationWords, momentWords } from './say.ts';

/** As wide as paper takes it. */
const MOST_COLUMNS = 80;
const TITLES = { stopped: 'ENGINE STOPPED', running: 'ENGINE RUNNING', leaving: 'BEFORE LEAVING' };

/** The round as a page to take along and write on: what is due a look in three passes, what was found last, and room for what is found now. The document is clean already. */
export function roundPage(document: RoundDocument, columns: number, zone: string): string {
  const width = Math.min(columns, MOST_COLUMNS);
  const at = momentWords(Date.parse(document.at), zone);
  const sections = [
    wrapped(`${document.boat.toUpperCase()}: ROUND, drawn up ${at} (${zone})`, width),
    wrapped([room('By', 24), room('on', 12), room('at', 8)].join(' '), width),
    ...document.passes.map((pass, index) => passLines(pass, index + 1, width, zone)),
    HOW_TO.flatMap((line) => wrapped(line, width)),
    wrapped(AID, width),
  ];
  return `${sections.map((section) => section.join('\n')).join('\n\n')}\n`;
}

const HOW_TO = [
  'Level: in the unit beside it, 1/2, full, or off (the stick). Drip: dry, wet, drops, falls. Left empty is not looked at, which is not the same as unchanged.',
  'To enter it afterwards, with the time of the round: hoveshort record dip fluid=<id> level=full at="today 07:40"',
];

function passLines(
  { when, looks }: RoundDocument['passes'][number],
  number: number,
  width: number,
  zone: string,
): string[] {
  const due = looks.filter((look) => look.due);
  const minutes = due.reduce((sum, look) => sum + (look.minutes ?? 0), 0);
  const time = minutes === 0 ? '' : `, ${durationWords(minutes / 60)}`;
  const title = `${number}. ${TITLES[when]}: ${due.length === 0 ? 'nothing due' : counted(due.length, 'look', 'looks')}${time}`;
  const others = looks.filter((look) => !look.due).map((look) => laterWords(look, zone));
  const caution = due.length === 0 ? null : passCaution(when);
  return [
    title,
    ...(caution === null ? [] : wrapped(caution, width, 3)),
    ...due.flatMap((look) => lookLines(look, width, zone)),
    ...(others.length === 0 ? [] : ['', ...wrapped(`not due: ${others.join(', ')}`, width, 3, 2)]),
  ];
}

function lookLines(
  { name, id, last, wants, unit, kind, note }: LookDocument,
  width: number,
  zone: string,
): string[] {
  const found =
    last === null ? 'not looked at yet' : `last ${last.found}, ${dayWords(Date.parse(last.at), zone)}`;
  return [
    '',
    ...wrapped(`[ ] ${[name, ...(wants === null ? [] : [wants]), found].join('; ')}  (${id})`, width, 3, 4),
    ...(note === null ? [] : wrapped(note, width, 7)),
    ...wrapped(rooms(kind, unit).join(' '), width, 7),
  ];
}

/** Room to write what is found. */
function rooms(kind: LookDocument['kind'], unit: string | null): string[] {
  switch (kind) {
    case 'engine':
      return [room('hours', 12)];
    case 'fluid':
      return [room('level', 10, unit ?? ''), room('added', 10, unit ?? ''), room('drip', 10)];
    case 'anode':
      return [room('left', 10, '%'), room('flakes', 6)];
    case 'check':
      return [unit === null ? room('well', 10) : room('reads', 10, unit)];
  }
}

function room(what: string, letters: number, unit = ''): string {
  return `${what} ${'_'.repeat(letters)} ${unit}`.trimEnd();
}

function laterWords({ name, nextDue }: LookDocument, zone: string): string {
  return nextDue === null ? name : `${name} (next ${dayWords(Date.parse(nextDue), zone)})`;
}
