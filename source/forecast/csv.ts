import { bad, good, type Result, type Trouble } from '../trouble.ts';
import { pointFrom } from './compass.ts';
import type { Content, Given, Reading } from './content.ts';
import type { Position, Step } from './forecast.ts';
import { instantFrom } from './iso-time.ts';
import { oddities } from './oddities.ts';
import { SQUALLS } from './squalls.ts';
import { knotsIn, metresIn, tidy } from './units.ts';

const MOST_ROWS = 2000;
const MOST_TROUBLES = 10;

/** Columns of figures: `wind_kn`, `seas_ft`. The unit stands in the name; `to` is the upper end of a range. */
const COLUMN = /^(wind|wind_to|gust|seas|seas_to|dir|period|pressure)(?:_([a-z/]+))?$/;
const UNITS: { readonly [unit: string]: string } = { ms: 'm/s' };
/** The ranges of values in file units. */
const RANGES: { readonly [column: string]: readonly [number, number] } = {
  ...{ wind: [0, 250], wind_to: [0, 250], gust: [0, 300], seas: [0, 40], seas_to: [0, 40] },
  ...{ dir: [0, 360], period: [0, 60], pressure: [850, 1100] },
};

/** The table of our own: to be filled in by hand or by a spreadsheet. */
export function csvTemplate(): string {
  return `${[
    '# A forecast as a table. Times are UTC. What was not said stays empty; 0 means there is none.',
    '# issued: 2026-02-03T06:00Z',
    '# issuer: Harbour office',
    '# place: Outer sound',
    'from,to,wind_kn,wind_to_kn,dir_deg,gust_kn,seas_m,seas_to_m,period_s,pressure_hpa,squalls',
    '2026-02-03T06:00Z,2026-02-03T18:00Z,15,20,225,28,1.2,1.8,7,1012,',
    '2026-02-03T18:00Z,2026-02-04T06:00Z,20,25,sw,,2,2.5,,1006,isolated',
  ].join('\n')}\n`;
}

/** Whether a text is such a table: its first line that is no remark begins with a column `from`. */
export function isCsv(text: string): boolean {
  const header = text.split('\n', 50).find((line) => line.trim() !== '' && !line.startsWith('#'));
  return header !== undefined && /^\s*"?from"?\s*[,;\t]/i.test(header);
}

/** Reads such a table, with commas, semicolons or tabs between. Every row in trouble is told; where one is, nothing is taken. */
export function readCsv(text: string, given: Given): Result<Reading> {
  const lines = text.split('\n').map((line, i) => ({ number: i + 1, text: line.trim() }));
  const remarks = remarksIn(lines.map((line) => line.text));
  const [header, ...rows] = lines.filter((line) => line.text !== '' && !line.text.startsWith('#'));
  if (!header || rows.length === 0) return bad({ kind: 'no figures' });
  if (rows.length > MOST_ROWS) return bad({ kind: 'too many rows', rows: rows.length, most: MOST_ROWS });
  const mark = [';', '\t', ','].find((one) => header.text.includes(one)) ?? ',';
  const names = cells(header.text, mark).map((name) => name.toLowerCase().replace(/\s/g, '_'));
  const read = rows.map(({ number, text: row }) => readRow(number, names, cells(row, mark), mark !== ','));
  const troubles = [...doubled(names, header.number), ...read.flatMap((row) => row.troubles)];
  const steps = inOrder(read, troubles);
  if (troubles.length > 0) return bad(...troubles.slice(0, MOST_TROUBLES));
  if (steps.every(({ wind, seas }) => wind === null && seas === null)) return bad({ kind: 'no figures' });
  const issuedAt = instantFrom(remarks.get('issued') ?? '', 0) ?? given.issuedAt;
  if (issuedAt === undefined) return good({ asks: [{ what: 'issued' }] });
  const at = positionIn(remarks.get('position') ?? '');
  const content: Content = {
    source: 'csv',
    issuer: remarks.get('issuer') ?? '',
    issuedAt: new Date(issuedAt).toISOString(),
    places: [
      { place: given.place ?? remarks.get('place') ?? '', ...(at ? { at } : {}), headlines: [], steps },
    ],
    notRead: names
      .filter((name) => !isKnown(name))
      .map((name) => ({ where: 'columns', text: name.slice(0, 200) })),
    problems: oddities(steps, true),
  };
  return good({ content });
}

interface RowRead {
  readonly number: number;
  readonly from: number;
  /** Null: to the next row. */
  readonly to: number | null;
  readonly step: Omit<Step, 'from' | 'to'>;
  readonly troubles: readonly Trouble[];
}

function readRow(
  number: number,
  names: readonly string[],
  values: readonly string[],
  commaIsPoint: boolean,
): RowRead {
  const troubles: Trouble[] = [];
  const where = (name: string) => `row ${number}, ${name}`;
  const cell = (name: string) => values[names.indexOf(name)]?.trim() ?? '';
  const trouble = (name: string, expected: string) => {
    troubles.push({ kind: 'table not understood', where: where(name), found: cell(name), expected });
    return null;
  };
  if (values.length > names.length)
    troubles.push({
      kind: 'table not understood',
      where: `row ${number}`,
      found: `${values.length} cells`,
      expected: `at most ${names.length}`,
    });
  const time = (name: string) =>
    cell(name) === ''
      ? null
      : (instantFrom(cell(name), 0) ?? trouble(name, 'a UTC time such as 2026-02-03T06:00Z'));
  const from = time('from') ?? (cell('from') === '' ? trouble('from', 'a UTC time') : null);
  const figure = (column: string): number | null => {
    const name = names.find((one) => COLUMN.exec(one)?.[1] === column);
    if (name === undefined || cell(name) === '') return null;
    const value =
      column === 'dir'
        ? direction(cell(name))
        : scaled(cell(name), column, COLUMN.exec(name)?.[2], commaIsPoint);
    const [least = 0, most = 0] = RANGES[column] ?? [];
    return value !== null && value >= least && value <= most
      ? value
      : trouble(name, `a figure from ${least} to ${most}, or nothing,`);
  };
  const squalls = SQUALLS.find((one) => one === cell('squalls').toLowerCase()) ?? null;
  if (squalls === null && cell('squalls') !== '') trouble('squalls', SQUALLS.join(', '));
  const range = (low: number | null, high: number | null) =>
    low === null || high === null
      ? ends(low ?? high)
      : low <= high
        ? ([low, high] as const)
        : trouble('from', 'the lower figure before the higher');
  const step = {
    wind: range(figure('wind'), figure('wind_to')),
    dir: figure('dir'),
    gust: figure('gust'),
    seas: range(figure('seas'), figure('seas_to')),
    ...{
      period: figure('period'),
      periodKind: null,
      pressure: figure('pressure'),
      squalls,
      how: 'read' as const,
    },
  };
  return { number, from: from ?? 0, to: time('to'), step, troubles };
}

function ends(figure: number | null): readonly [number, number] | null {
  return figure === null ? null : [figure, figure];
}

/** A figure in file units; null where it is none, or its unit is not known. */
function scaled(
  text: string,
  column: string,
  unit: string | undefined,
  commaIsPoint: boolean,
): number | null {
  const plain = commaIsPoint ? text.replace(',', '.') : text;
  if (!/^\d{1,4}(?:\.\d{1,6})?$/.test(plain)) return null;
  const name = UNITS[unit ?? ''] ?? unit ?? '';
  const each = /^(?:wind|gust)/.test(column) ? knotsIn(name) : /^seas/.test(column) ? metresIn(name) : 1;
  return each === null ? null : tidy(Number(plain) * each);
}

function direction(text: string): number | null {
  const point = pointFrom(text);
  if (typeof point === 'number') return point;
  return /^\d{1,3}(?:\.\d)?$/.test(text) ? Number(text) : null;
}

/** Rows one after another: each ends where it says, or where the next begins. */
function inOrder(rows: readonly RowRead[], troubles: Trouble[]): readonly Step[] {
  return rows.map(({ number, from, to, step }, i): Step => {
    const until = to ?? rows[i + 1]?.from ?? from + 3_600_000;
    const next = rows[i + 1]?.from ?? until;
    if (until <= from || next < until)
      troubles.push({
        kind: 'table not understood',
        where: `row ${number}`,
        found: 'its end',
        expected: 'a time after its beginning and not after the next row begins',
      });
    return { from: new Date(from).toISOString(), to: new Date(until).toISOString(), ...step };
  });
}

function doubled(names: readonly string[], number: number): readonly Trouble[] {
  const twice = names.find((name, i) => name !== '' && names.indexOf(name) !== i);
  return twice === undefined
    ? []
    : [
        {
          kind: 'table not understood',
          where: `row ${number}`,
          found: `${twice} twice`,
          expected: 'each column once',
        },
      ];
}

function isKnown(name: string): boolean {
  return COLUMN.test(name) || ['from', 'to', 'squalls', ''].includes(name);
}

/** `# issued: 2026-02-03T06:00Z` */
function remarksIn(lines: readonly string[]): ReadonlyMap<string, string> {
  const found = lines.slice(0, 100).flatMap((line) => {
    const remark = /^#\s*(issued|issuer|place|position)\s*:\s*(.{1,200})$/i.exec(line);
    return remark ? [[remark[1]!.toLowerCase(), remark[2]!.trim()] as const] : [];
  });
  return new Map(found);
}

function positionIn(text: string): Position | null {
  const [lat, lon, ...more] = text.split(',').map((one) => Number(one.trim() || Number.NaN));
  const isThere =
    more.length === 0 && Math.abs(lat ?? Number.NaN) <= 90 && Math.abs(lon ?? Number.NaN) <= 180;
  return isThere ? [lat!, lon!] : null;
}

function cells(line: string, mark: string): readonly string[] {
  return line.split(mark).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
}
