import type { Headline, Problem, Step } from '../forecast.ts';
import { oddities } from '../oddities.ts';
import { headlinesFrom } from './headlines.ts';
import type { Issue } from './issue-time.ts';
import type { TimedPeriod } from './periods.ts';
import { bareNumbersIn, readProse } from './prose.ts';
import type { Section } from './section.ts';
import { summaryOf } from './summary.ts';
import { purgeInstant } from './zone-line.ts';

/** The least mean wind of a gale, knots: NWS and WMO alike. */
const GALE_KN = 34;
const GALES: readonly Headline['about'][] = [
  'gale',
  'storm',
  'hurricane force',
  'tropical storm',
  'hurricane',
];
const LONGEST = 2000;
/** The prose of a period has a few hundred letters, that of an ocean some thousands. */
const MOST_PROSE = 20_000;

interface SectionRead {
  readonly steps: readonly Step[];
  readonly headlines: readonly Headline[];
  readonly notRead: readonly { readonly where: string; readonly text: string }[];
  readonly problems: readonly Problem[];
}

/** A section as steps: the figures of each period, what was not read in it, and what the skipper should see. `prefix`: what names it among others. */
export function readSection(section: Section, issue: Issue, now: number, prefix: string): SectionRead {
  const steps: Step[] = [];
  const notRead = new Map<string, { where: string; text: string }>();
  const problems: Problem[] = [...oddOf(section, issue, now)];
  const name = (label: string) => `${prefix} ${label}`.trim().slice(0, 100);
  const leave = (where: string, text: string) => notRead.set(text, { where, text: text.slice(0, LONGEST) });
  const periods = section.periods(issue);
  const bare = bareNumbersIn(periods.map(({ prose }) => prose).join('\n'));
  for (const [i, period] of periods.entries()) {
    const label = name(period.label);
    const { whole, cut } =
      section.ended || i < periods.length - 1 ? { whole: period.prose, cut: '' } : cutOff(period);
    if (cut !== '') leave(label, cut);
    if (period.prose.trim() === '') continue;
    if (period.span === null) {
      problems.push({ kind: 'label not read', where: label });
      leave(label, period.prose.replace(/\s+/g, ' ').trim());
      continue;
    }
    const read = readProse(whole.slice(0, MOST_PROSE), bare);
    if (whole.length > MOST_PROSE) leave(label, whole.slice(MOST_PROSE));
    const { figures, odd } = summaryOf(read);
    const [from, to] = [period.span.from, period.span.to].map((at) => new Date(at).toISOString());
    steps.push({ from: from!, to: to!, label, ...figures, pressure: null, how: 'read' });
    problems.push(...odd.map((kind) => ({ kind, where: label })));
    for (const phrase of read.notRead) leave(label, phrase);
  }
  const headlines = section.headlines.flatMap((text) => headlinesFrom(text, issue));
  return {
    steps,
    headlines: headlines.map(({ headline }) => headline),
    notRead: [...notRead.values()],
    problems: [
      ...problems,
      ...headlines
        .filter(({ timesRead }) => !timesRead)
        .map(({ headline }) => ({
          kind: 'headline times not read' as const,
          where: prefix,
          text: headline.text,
        })),
      ...(section.wide
        ? []
        : galesUnsaid(
            steps,
            headlines.map(({ headline }) => headline),
          )),
      ...oddities(steps, true),
    ],
  };
}

function oddOf(
  { purge, ended, wide, hoursTaken, zones }: Section,
  issue: Issue,
  now: number,
): readonly Problem[] {
  const where = zones[0] ?? '';
  const until = purge === null ? null : purgeInstant(purge, issue.at);
  return [
    ...(until !== null && until < now
      ? [{ kind: 'past its purge time', where, text: new Date(until).toISOString() } as const]
      : []),
    ...(ended ? [] : [{ kind: 'cut short', where } as const]),
    ...(wide ? [{ kind: 'worst of a wide area', where } as const] : []),
    ...(hoursTaken ? [{ kind: 'hours taken', where } as const] : []),
  ];
}

/** Of a text that breaks off, what stands behind its last full stop is not read: half a figure is no figure. */
function cutOff({ prose }: TimedPeriod): { readonly whole: string; readonly cut: string } {
  const end = /^[\s\S]*[.](?=\s|$)/.exec(prose)?.[0].length ?? 0;
  return { whole: prose.slice(0, end), cut: prose.slice(end).replace(/\s+/g, ' ').trim() };
}

/** Periods at gale force that no headline covers to their end: the text below is read, not only its headline. */
function galesUnsaid(steps: readonly Step[], headlines: readonly Headline[]): readonly Problem[] {
  const gales = headlines.filter(({ about }) => GALES.includes(about));
  return steps
    .filter(({ wind }) => wind !== null && wind[1] >= GALE_KN)
    .filter(
      ({ from, to }) =>
        !gales.some(
          (one) =>
            (one.from === null || one.from < to) && (one.to === null || one.to >= to) && one.to !== from,
        ),
    )
    .map(({ label = '', wind }) => ({ kind: 'headline stops short', where: label, value: wind![1] }));
}
