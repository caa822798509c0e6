import type { Field } from './field.ts';
import type { Level } from './levels.ts';
import { signed, unsigned } from './octets.ts';
import { parameter2 } from './parameters.ts';
import { Refused, type Why } from './refused.ts';
import { instantOf, spanOf } from './times.ts';
import { usage } from './use.ts';

/** What other sections say of a product. */
interface Around {
  readonly message: number;
  readonly discipline: number;
  readonly centre: number;
  readonly referenceTime: number;
  readonly why: Why | null;
}

/** Octet from which a template tells of its ensemble and of its span of time; null where it has none (templates 4.0 to 4.12). */
interface Layout {
  readonly ensemble: 'member' | 'derived' | null;
  readonly spanAt: number | null;
}
const LAYOUTS: Readonly<Record<number, Layout>> = {
  0: { ensemble: null, spanAt: null },
  1: { ensemble: 'member', spanAt: null },
  2: { ensemble: 'derived', spanAt: null },
  8: { ensemble: null, spanAt: 34 },
  11: { ensemble: 'member', spanAt: 37 },
  12: { ensemble: 'derived', spanAt: 36 },
};

/** Everything section 4 says. Products that are no forecast of a value are read all the same and marked as of no use. */
export function product2(section: Uint8Array, around: Around): Omit<Field, 'grid' | 'packed'> {
  const { message, discipline, centre, referenceTime } = around;
  const template = unsigned(section, 7, 2);
  const layout = LAYOUTS[template];
  const parameter = parameter2(centre, [discipline, section[9]!, section[10]!]);
  const level = levelOf(section);
  const from = referenceTime + spanOf(2, section[17]!, signed(section, 18, 4));
  const spanAt = layout?.spanAt ?? null;
  const { to, statistic, why } =
    spanAt === null ? { to: from, statistic: null, why: null } : spanFrom(section, spanAt, from);
  const ensemble = ensembleOf(section, layout ?? { ensemble: null, spanAt: null });
  const unread: Why | null = layout
    ? null
    : { kind: 'product', name: PRODUCTS[template] ?? `product template 4.${template}` };
  const reason = unread ?? around.why ?? notForecast(section[11]!) ?? ensemble.why ?? why;
  return {
    ...{ message, edition: 2 as const, centre, parameter, level, referenceTime, from, to },
    member: ensemble.member,
    ...usage({ parameter, level, statistic, lead: to - referenceTime, why: reason }),
  };
}

/** Code table 4.0, those of wind and sea that occur and are not used. */
const PRODUCTS: Readonly<Record<number, string>> = {
  5: 'a probability',
  6: 'a percentile',
  7: 'an error',
  9: 'a probability',
  10: 'a percentile',
  15: 'a figure of an area',
};

/** Type of generating process, code table 4.3: what is no forecast. */
function notForecast(process: number): Why | null {
  if (process === 6 || process === 7) return { kind: 'product', name: 'an error' };
  if (process === 8) return { kind: 'product', name: 'an observation' };
  if (process === 9) return { kind: 'product', name: 'a climatology' };
  return null;
}

function levelOf(section: Uint8Array): Level {
  const type = section[22]!;
  const missing = section[23] === 0xff || unsigned(section, 24, 4) === 0xffffffff;
  const value = missing
    ? null
    : Number((signed(section, 24, 4) / 10 ** signed(section, 23, 1)).toPrecision(12));
  return { type, value };
}

function ensembleOf(section: Uint8Array, { ensemble }: Layout): { member: number | null; why: Why | null } {
  if (ensemble === 'member') {
    const [kind, number] = [octet(section, 34), octet(section, 35)];
    if (kind <= 1) return { member: 0, why: null };
    return { member: kind === 2 ? -number : number, why: null };
  }
  if (ensemble === 'derived' && !MEANS.includes(octet(section, 34)))
    return { member: null, why: { kind: 'product', name: 'the spread of an ensemble' } };
  return { member: null, why: null };
}

/** Code table 4.7: means of members or of a cluster stand for a forecast; spreads, least and greatest do not. */
const MEANS = [0, 1, 6];

interface Span {
  readonly to: number;
  readonly statistic: 'average' | 'greatest' | null;
  readonly why: Why | null;
}

/** End and statistic of a span of time (from octet `at + 1`: date, number of spans, count missing, code table 4.10). */
function spanFrom(section: Uint8Array, at: number, from: number): Span {
  octet(section, at + 12);
  const [month, day, hour, minute, second] = section.subarray(at + 2, at + 7);
  const to = instantOf([unsigned(section, at, 2), month!, day!, hour!, minute!, second!]);
  if (to < from) throw new Refused({ kind: 'damaged', name: 'a span of time that ends before it begins' });
  const kind = section[at + 12]!;
  if (kind === 0) return { to, statistic: 'average', why: null };
  if (kind === 2) return { to, statistic: 'greatest', why: null };
  return { to, statistic: null, why: { kind: 'product', name: STATISTICS[kind] ?? `statistic ${kind}` } };
}

const STATISTICS: Readonly<Record<number, string>> = {
  1: 'a sum over time',
  3: 'the least of a span of time',
  4: 'a difference over time',
  6: 'a standard deviation',
};

function octet(section: Uint8Array, at: number): number {
  const value = section[at];
  if (value === undefined)
    throw new Refused({ kind: 'damaged', name: 'a section too short for its template' });
  return value;
}
