/** When a text was issued, ms since 1970 UTC, and by how many minutes its local clocks are ahead of UTC. */
export interface Issue {
  readonly at: number;
  readonly aheadMinutes: number;
}

/** Hours ahead of UTC of the zones US marine texts are timed in. */
const ZONES: { readonly [zone: string]: number } = {
  ...{ UTC: 0, GMT: 0, Z: 0, AST: -4, ADT: -3, EST: -5, EDT: -4, CST: -6, CDT: -5, MST: -7, MDT: -6 },
  ...{ PST: -8, PDT: -7, AKST: -9, AKDT: -8, HST: -10, HDT: -9, SST: -11, CHST: 10 },
};
const MONTHS = 'JAN FEB MAR APR MAY JUN JUL AUG SEP OCT NOV DEC'.split(' ');
/** Spanish months that do not begin as the English ones do: the San Juan office writes in both. */
const SPANISH: { readonly [month: string]: string } = { ENE: 'JAN', ABR: 'APR', AGO: 'AUG', DIC: 'DEC' };

const WORD = '[A-ZÁÉÍÓÚ]{2,12}';
const FORMS: readonly RegExp[] = [
  /** 209 PM PDT Sat Oct 4 2025 */
  new RegExp(
    `\\b(?<h>\\d{1,2}):?(?<min>\\d\\d) ?(?<half>[AP])M (?<zone>[A-Z]{3,4}),? ${WORD},? (?<month>${WORD})\\.? (?<day>\\d{1,2}),? (?<year>\\d{4})\\b`,
  ),
  /** 426 PM AST LUNES 7 DE ENERO DE 2013 */
  new RegExp(
    `\\b(?<h>\\d{1,2}):?(?<min>\\d\\d) ?(?<half>[AP])M (?<zone>[A-Z]{3,4}),? ${WORD},? (?<day>\\d{1,2}) DE (?<month>${WORD}) DE (?<year>\\d{4})\\b`,
  ),
  /** 1030 UTC SUN JUL 15 2018 */
  new RegExp(
    `\\b(?<h>\\d\\d):?(?<min>\\d\\d) ?(?<zone>UTC|GMT|Z),? (?:ON )?(?:${WORD},? )?(?<month>${WORD}) (?<day>\\d{1,2}),? (?<year>\\d{4})\\b`,
  ),
  /** 0505 UTC ON TUESDAY 3 FEBRUARY 2026 */
  new RegExp(
    `\\b(?<h>\\d\\d):?(?<min>\\d\\d) ?(?<zone>UTC|GMT|Z),? (?:ON )?(?:${WORD},? )?(?<day>\\d{1,2}) (?<month>${WORD})\\.?,? (?<year>\\d{4})\\b`,
  ),
  /** 030505 UTC FEB 2026, also with two figures of the year */
  new RegExp(
    `\\b(?<day>\\d\\d)(?<h>\\d\\d)(?<min>\\d\\d) ?(?<zone>UTC|GMT|Z) (?<month>${WORD})\\.? (?<year>\\d{4}|\\d\\d)\\b`,
  ),
  /** 2026-02-03T05:05Z */
  /\b(?<year>\d{4})-(?<month>\d\d)-(?<day>\d\d)[T ](?<h>\d\d):(?<min>\d\d)(?::\d\d)? ?(?<zone>Z|UTC|GMT)\b/,
];

/** A heading stands in the first lines; what is dated further down is something else. */
const HEADING = 3000;

/** The first issue time in the heading of a text that says day, month and year; a day alone is not guessed at. Null where there is none. */
export function issueIn(text: string): Issue | null {
  const heading = text.slice(0, HEADING).toUpperCase().replace(/\s+/g, ' ');
  const found = FORMS.map((form) => form.exec(heading))
    .filter((match) => match !== null)
    .toSorted((a, b) => a.index - b.index);
  return found.map(({ groups = {} }) => instant(groups)).find((issue) => issue !== null) ?? null;
}

function instant({
  h,
  min,
  half,
  zone = '',
  day,
  month = '',
  year = '',
}: {
  readonly [name: string]: string | undefined;
}): Issue | null {
  const ahead = Object.hasOwn(ZONES, zone) ? ZONES[zone]! : null;
  const hour = half === undefined ? Number(h) : (Number(h) % 12) + (half === 'P' ? 12 : 0);
  const name = month.slice(0, 3);
  const number = /^\d/.test(month) ? Number(month) - 1 : MONTHS.indexOf(SPANISH[name] ?? name);
  if (ahead === null || number < 0 || number > 11 || hour > 23 || Number(min) > 59 || Number(h) > 23)
    return null;
  const full = year.length === 2 ? 2000 + Number(year) : Number(year);
  const local = Date.UTC(full, number, Number(day), hour, Number(min));
  return new Date(local).getUTCDate() === Number(day)
    ? { at: local - ahead * 3_600_000, aheadMinutes: ahead * 60 }
    : null;
}
