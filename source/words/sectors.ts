import { bad, good, type Result } from '../trouble.ts';
import { amountFrom } from './amounts.ts';
import { directionFrom } from './directions.ts';
import { shownUnit } from './preferred.ts';

/** Degrees true, clockwise; knots and metres. */
export interface Sector {
  readonly from: number;
  readonly to: number;
  readonly wind?: number | undefined;
  readonly seas?: number | undefined;
}

/** `120-230 wind 24 kn seas 1.5 m; 300-60 wind 15 kn`. */
export function sectorsText(sectors: readonly Sector[]): string {
  return sectors
    .map(({ from, to, wind, seas }) =>
      [
        `${from}-${to}`,
        ...(wind === undefined ? [] : [`wind ${shown(wind, 'kn')}`]),
        ...(seas === undefined ? [] : [`seas ${shown(seas, 'm')}`]),
      ].join(' '),
    )
    .join('; ');
}

/** Sectors as typed, semicolons between them: degrees or compass letters clockwise from and to, then wind and seas, named, with a unit, or in this order. */
export function sectorsFrom(typed: string, field: string): Result<readonly Sector[]> {
  const sectors: Sector[] = [];
  for (const part of typed.split(';').filter((one) => one.trim() !== '')) {
    const read = sectorFrom(part.trim(), field);
    if (!read.ok) return read;
    sectors.push(read.value);
  }
  return good(sectors);
}

const SIDES =
  /^([\d.]+°?|[a-z]{1,3})(?:[-\u2013]|\s+[-\u2013]\s+|\s*to\s*)([\d.]+°?|[a-z]{1,3})(?![\d.a-z])[\s,:]*(.*)$/i;

function sectorFrom(text: string, field: string): Result<Sector> {
  const [, first, second, rest = ''] = SIDES.exec(text) ?? [];
  if (first === undefined || second === undefined) return notUnderstood(text, field);
  const from = directionFrom(first, field);
  if (!from.ok) return from;
  const to = directionFrom(second, field);
  if (!to.ok) return to;
  const limits = limitsFrom(rest, field);
  return limits === null ? notUnderstood(text, field) : good({ from: from.value, to: to.value, ...limits });
}

/** Null where a word of it is not understood, or says something twice. */
function limitsFrom(text: string, field: string): { wind?: number; seas?: number } | null {
  const found: { wind?: number; seas?: number } = {};
  const amounts = text.match(/(?:(?:wind|seas?)\s*)?(?:f\d+|[\d.,/]+)\s*(?:(?!wind|seas?)[a-z/']+)?/gi) ?? [];
  const left = amounts.reduce((rest, one) => rest.replace(one, ' '), text);
  if (/[^\s,]/.test(left)) return null;
  for (const amount of amounts) {
    const [, label, figure = ''] = /^(wind|seas?)?\s*(.*)$/i.exec(amount.trim().replace(/,$/, '')) ?? [];
    const isBare = /^[\d.,/]+$/.test(figure);
    const wind = amountFrom(figure, 'kn', field);
    const seas = amountFrom(figure, 'm', field);
    const named = label?.toLowerCase().slice(0, 3);
    const isWind = named === undefined ? (isBare ? found.wind === undefined : wind.ok) : named === 'win';
    const [read, of] = isWind ? [wind, 'wind' as const] : [seas, 'seas' as const];
    if (!read.ok || found[of] !== undefined) return null;
    found[of] = Number(read.value.toPrecision(5));
  }
  return found;
}

function shown(value: number, unit: 'kn' | 'm'): string {
  const { name, each } = shownUnit(unit, value);
  return each === 1 ? `${value} ${name}` : `${Number((value / each).toPrecision(6))} ${name}`;
}

function notUnderstood(text: string, field: string): Result<never> {
  return bad({
    kind: 'not understood',
    field,
    text,
    expected: 'from where to where, clockwise, then the most wind and seas from there; semicolons between',
    example: '120-230 24 kn 1.5 m; nw-ne 15 kn',
  });
}
