import type { ClosedHuntDocument, FoundDocument } from './found-document.ts';
import {
  amountWords,
  badHundred,
  capital,
  counted,
  dayHere,
  goodHundred,
  momentWords,
  sentence,
} from './say.ts';

/** What was found before, a line a hunt, the newest first. */
export function foundLines(found: readonly FoundDocument[]): string[] {
  return found.map(
    ({ at, name, text, helped }) =>
      `${dayHere(Date.parse(at))}: work for ${name}, ${goodHundred(helped)} that it helped. ${sentence(text)}`,
  );
}

/** So many of the causes that stood then are told; the rest are in --json. */
const MOST_CAUSES = 5;

/** A closed hunt as a page: parts with a title and sentences each. Moments in `zone`. */
export function closedHuntParts(
  hunt: ClosedHuntDocument,
  zone: string,
): readonly { readonly title: string; readonly lines: readonly string[] }[] {
  const moment = (instant: string) => momentWords(Date.parse(instant), zone);
  const { noticed, causes, somethingElse, clues, tries } = hunt;
  const asked = clues.filter(({ from }) => from === 'asked').toSorted((a, b) => (a.at < b.at ? -1 : 1));
  const byLog = clues.filter(({ from }) => from === 'log');
  return [
    {
      title: 'FIRST NOTICED',
      lines: [
        noticed
          ? `${moment(noticed.at)}: ${sentence(noticed.says)}`
          : 'Nothing was noted before the work was done.',
      ],
    },
    {
      title: 'LOOKED FOR',
      lines: [
        ...asked.map(({ at, says }) => `${moment(at)}: ${sentence(says)}`),
        ...(byLog.length === 0 ? [] : [`By the log: ${sentence(byLog.map(({ says }) => says).join('; '))}`]),
        ...(clues.length === 0 ? ['Nothing was looked for, and the log told nothing.'] : []),
      ],
    },
    {
      title: 'LIKELIEST THEN',
      lines: [
        ...causes.slice(0, MOST_CAUSES).map(({ name, chance }) => `${capital(badHundred(chance))}: ${name}.`),
        `${capital(badHundred(somethingElse))}: something else.`,
      ],
    },
    {
      title: 'THE WORK',
      lines: [
        ...tries.map(
          ({ at, text, name, helped }) =>
            `${moment(at)}: ${sentence(text)} For ${name}; ${goodHundred(helped)} that it helped.`,
        ),
        `${moment(hunt.at)}: ${sentence(hunt.text)} For ${hunt.name}.`,
      ],
    },
    { title: 'AFTER IT', lines: afterLines(hunt, moment) },
  ];
}

function afterLines(hunt: ClosedHuntDocument, moment: (instant: string) => string): string[] {
  const { after, helped, sure, closedAt, name } = hunt;
  return [
    ...(after ? [afterWords(after, moment)] : []),
    `${capital(goodHundred(helped))} that it helped; ${goodHundred(sure)} that it was ${name}.`,
    `Closed by what was known on ${moment(closedAt)}.`,
  ];
}

function afterWords(
  { by, at, readings, ratio }: NonNullable<ClosedHuntDocument['after']>,
  moment: (instant: string) => string,
): string {
  if (by === 'person') return `${moment(at)}: said to be cured.`;
  if (by === 'check') return `${moment(at)}: looked at again, and as it should be.`;
  if (readings === null || ratio === null) return '';
  const times = (value: number) => amountWords(value, null);
  return `${capital(counted(readings, 'reading', 'readings'))} since, to ${moment(at)}: it loses ${times(ratio.p50)} times what it did, 8 times in 10 between ${times(ratio.p10)} and ${times(ratio.p90)}.`;
}
