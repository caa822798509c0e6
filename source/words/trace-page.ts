import { wrapped } from './lines.ts';
import { capital } from './say.ts';
import type { TraceDocument } from './trace-document.ts';
import {
  CHANCES_ONLY,
  causeWords,
  jobWords,
  liveWords,
  lookWords,
  repairWords,
  stateWords,
  unknownClueWords,
} from './trace-parts.ts';

/** A trace as a page of words: what can be lived with, the causes with their chances and clues, the next best look, the order of repairs. */
export function tracePage(trace: TraceDocument, columns: number): string {
  const lines = [
    `${capital(trace.item.name)}: ${trace.table.title}`,
    ...liveWords(trace),
    ...trace.warnings,
    '',
    stateWords(trace),
    ...causeWords(trace).flatMap(({ chance, name, clues }) => [
      `  ${chance}  ${name}`,
      ...clues.map((clue) => `      ${clue}`),
    ]),
    '',
    ...nextLines(trace),
    ...repairLines(trace),
    ...jobLines(trace),
    ...unknownClueWords(trace),
    '',
    CHANCES_ONLY,
  ];
  return `${lines.flatMap((line) => (line === '' ? [''] : wrapped(line.trimStart(), columns, line.length - line.trimStart().length, 2))).join('\n')}\n`;
}

function nextLines(trace: TraceDocument): string[] {
  const look = lookWords(trace);
  if (!look || !trace.next) return trace.state === 'hunting' ? [] : ['Nothing more to look for now.'];
  const record = `hoveshort record clue item=${trace.item.id} clue=${trace.next.clue} seen=yes`;
  return [
    `${look.title}  ${look.ask}`,
    ...look.cautions.map((caution) => `  ${caution}`),
    `  ${look.outcome}`,
    `  Then: ${record}   (or seen=no, seen="cannot tell")`,
  ];
}

function repairLines(trace: TraceDocument): string[] {
  const words = repairWords(trace);
  const [first] = trace.repairs;
  if (!words || !first) return [];
  return [
    '',
    words.title,
    ...words.lines.map((text) => `  ${text}`),
    `  Once done: hoveshort record job item=${trace.item.id} cause=${first.cause} text="..."`,
  ];
}

function jobLines(trace: TraceDocument): string[] {
  const { open, closed } = jobWords(trace);
  const answer = `or hoveshort record clue item=${trace.item.id} clue=helped seen=yes`;
  return [...open.map((text) => `${text}, ${answer}`), ...closed];
}
