import { wrapped } from './lines.ts';
import { capital } from './say.ts';
import type { TraceDocument } from './trace-document.ts';
import { CHANCES_ONLY, type TraceParts, traceParts } from './trace-parts.ts';

/** A trace as a page of words: what can be lived with, the causes with their chances and clues, the next best look, the order of repairs. */
export function tracePage(trace: TraceDocument, columns: number): string {
  const parts = traceParts(trace);
  const lines = [
    `${capital(trace.item.name)}: ${trace.table.title}`,
    ...parts.live,
    ...trace.warnings,
    '',
    parts.state,
    ...parts.causes.flatMap(({ chance, name, clues }) => [
      `  ${chance}  ${name}`,
      ...clues.map((clue) => `      ${clue}`),
    ]),
    ...parts.together.map((text) => `  ${text}`),
    '',
    ...nextLines(trace, parts),
    ...repairLines(trace, parts),
    ...jobLines(trace, parts),
    ...parts.unknown,
    '',
    CHANCES_ONLY,
  ];
  return `${lines.flatMap((line) => (line === '' ? [''] : wrapped(line.trimStart(), columns, line.length - line.trimStart().length, 2))).join('\n')}\n`;
}

function nextLines(trace: TraceDocument, { look }: TraceParts): string[] {
  if (!look || !trace.next) return trace.state === 'hunting' ? [] : ['Nothing more to look for now.'];
  const record = `hoveshort record clue item=${trace.item.id} clue=${trace.next.clue} seen=yes`;
  return [
    `${look.title}  ${look.ask}`,
    ...look.cautions.map((caution) => `  ${caution}`),
    `  ${look.outcome}`,
    `  Then: ${record}   (or seen=no, seen="cannot tell")`,
  ];
}

function repairLines(trace: TraceDocument, { repairs }: TraceParts): string[] {
  const [first] = trace.repairs;
  if (!repairs || !first) return [];
  return [
    '',
    repairs.title,
    ...repairs.lines.map((text) => `  ${text}`),
    `  Once done: hoveshort record job item=${trace.item.id} cause=${first.cause} text="..."`,
  ];
}

function jobLines({ item, before }: TraceDocument, { jobs: { open, closed } }: TraceParts): string[] {
  const answer = `or hoveshort record clue item=${item.id} clue=helped seen=yes`;
  const whole = before.length > 0 ? [`  The whole of it: hoveshort trace ${item.id} found=newest`] : [];
  return [...open.map((text) => `${text}, ${answer}`), ...closed, ...whole];
}
