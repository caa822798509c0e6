import type { VerdictDocument } from './document.ts';
import { hoursAway } from './engine-item.ts';
import type { ItemDocument } from './item-document.ts';
import { aligned, wrapped } from './lines.ts';
import { STATE_WORDS } from './reasons.ts';
import { amountWords, badHundred, dayHere, dayWords, momentWords, sentence } from './say.ts';
import { BEFORE_LEAVING } from './why.ts';

type Of<K extends ItemDocument['kind']> = Extract<ItemDocument, { kind: K }>;
type Moment = (instant: string) => string;

/** The engine hours and the items kind by kind, a section each: its title, then aligned rows that begin with the state in words; under a row that is not fit, its reason. */
export function itemSections(document: VerdictDocument, columns: number, zone: string): string[][] {
  const at = Date.parse(document.at);
  const moment = (instant: string) => momentWords(Date.parse(instant), zone, at);
  const of = <K extends ItemDocument['kind']>(kind: K) =>
    document.items.filter((item): item is Of<K> => item.kind === kind);
  return [
    engines(document, moment),
    section('FLUIDS', of('fluid'), ['now', 'low', 'full', 'good until'], fluidCells(moment), columns),
    section('ANODES', of('anode'), ['left', 'reaches its limit', ''], anodeCells, columns),
    section('STORES', of('spare'), ['aboard', 'short this passage', ''], spareCells, columns),
    section('SERVICES', of('service'), ['due'], serviceCells, columns),
    checks(of('check'), columns, zone),
    section('DATES', of('dated'), ['good until'], datedCells, columns),
  ];
}

function engines({ engines }: VerdictDocument, moment: Moment): string[] {
  if (engines.length === 0) return [];
  const rows = engines.map(({ name, hours, readAt, perDay }) => [
    `  ${name}`,
    hours === null ? 'not read yet' : `${hours.toFixed(1)} h`,
    readAt === null ? '' : `read ${moment(readAt)}`,
    `${Math.round(perDay * 10) / 10} h a day lying`,
  ]);
  return ['ENGINE HOURS', ...aligned(rows, new Set([1]))];
}

function section<I extends ItemDocument>(
  title: string,
  items: readonly I[],
  headings: readonly string[],
  cells: (item: I) => readonly string[],
  columns: number,
): string[] {
  if (items.length === 0) return [];
  const unentered = items.filter(notEntered);
  const shown = items.filter((item) => !notEntered(item));
  const table = aligned([
    [title, '', ...headings],
    ...shown.map((item) => [`  ${STATE_WORDS[item.state]}`, item.name, ...cells(item)]),
  ]);
  const lines = [shown.length === 0 ? title : table[0]!];
  for (const [index, item] of shown.entries()) {
    lines.push(table[index + 1]!);
    if (item.state !== 'fit' && item.reason !== null) lines.push(...wrapped(item.reason, columns, 6));
  }
  if (unentered.length > 0) {
    const names = unentered.map(({ name }) => name).join(', ');
    lines.push(...wrapped(`not entered yet (${unentered.length}): ${names}`, columns, 2, 4));
  }
  return lines;
}

/** What nobody has counted, dated or done on record never bars leaving; such things share one line. */
function notEntered(item: ItemDocument): boolean {
  if (item.kind === 'spare') return item.count === null;
  if (item.kind === 'service') return item.lookedAt === null;
  return item.kind === 'dated' && item.expires === null;
}

function fluidCells(moment: Moment) {
  return ({ now, low, full, goodUntil }: Of<'fluid'>) => [
    now ? amountWords(now.value, now.unit, full) : '-',
    amountWords(low, 'L', full),
    amountWords(full, 'L'),
    now ? untilWords(goodUntil, moment) : '-',
  ];
}

function anodeCells({ now, reachesLimit }: Of<'anode'>): string[] {
  if (!now || !reachesLimit) return ['-', '-', ''];
  const day = (instant: string) => dayHere(Date.parse(instant));
  return [
    amountWords(now.value, now.unit),
    `about ${day(reachesLimit.p50)}`,
    `(${day(reachesLimit.p10)} to ${day(reachesLimit.p90)})`,
  ];
}

function spareCells({ count, unit, shortChance, buy }: Of<'spare'>): string[] {
  return [
    count === null ? '-' : amountWords(count, unit),
    shortChance === null ? '-' : badHundred(shortChance),
    buy > 0 ? `buy ${amountWords(buy, unit)}` : '',
  ];
}

function serviceCells({ dueInHours, dueOn }: Of<'service'>): string[] {
  const hours = dueInHours === null ? null : hoursAway(dueInHours);
  const on = dueOn === null ? null : dayHere(Date.parse(dueOn));
  return [[hours, on].filter((one) => one !== null).join(' or ') || '-'];
}

/** Those to be made before leaving have a list of their own, above; here they are only counted, unless something is the matter with them. */
function checks(all: readonly Of<'check'>[], columns: number, zone: string): string[] {
  const shown = all.filter(({ reason }) => reason !== sentence(BEFORE_LEAVING));
  const cells = ({ now, ok, lookedAt }: Of<'check'>) => [
    now ? amountWords(now.value, now.unit) : ok === null ? '-' : ok ? 'yes' : 'no',
    lookedAt === null ? 'never' : dayWords(Date.parse(lookedAt), zone),
  ];
  const lines = section('CHECKS', shown, ['answer', 'looked at'], cells, columns);
  const left = all.length - shown.length;
  return left === 0 ? lines : [...lines, `  before leaving: ${left}, listed above`];
}

function datedCells({ expires }: Of<'dated'>): string[] {
  return [expires === null ? '-' : dayWords(Date.parse(expires), 'UTC')];
}

function untilWords(until: string | null, moment: Moment): string {
  if (until === null) return 'not now';
  return until === 'beyond' ? 'beyond' : moment(until);
}
