import { problemSentence } from '../words/forecast-problems.ts';
import { heardWords } from '../words/heard-words.ts';
import { bareUnits, shownUnit } from '../words/preferred.ts';
import { durationWords, momentWords } from '../words/say.ts';
import { sayShortly } from '../words/troubles.ts';
import { fieldSpans } from './field.ts';
import { type Heard, type HeardPage, type HeardRow, heardOn } from './heard.ts';
import { BLANK, type Line, line, paragraph, say } from './lines.ts';
import type { Sight } from './sight.ts';
import { cut, pad, widthOf } from './width.ts';

const HOUR_MS = 3_600_000;
const ISSUED = 'issued';
/** Of an answer on its line more than half stays for what was typed. */
const LEAST_ECHO = 20;

export function heardTitle(): Line {
  return line(say('  A FORECAST AS IT IS HEARD', 'title'));
}

/** A row for each day and night, each with what was understood of it and what is odd about it, then what is still wanting. */
export function heardLines({ model }: Sight, page: HeardPage, columns: number): Line[] {
  const { zone } = model;
  const heard = heardOn(page, zone);
  const labels = [ISSUED, ...heard.rows.map(({ label }) => label)];
  const wide = Math.max(...labels.map(widthOf)) + 2;
  const told = (text: string, tone: 'plain' | 'watch' | 'title' = 'plain') =>
    paragraph(text, columns - 2, { indent: 2, tone });
  const rowOf = (index: number, echo: string) =>
    typedLine(page, labels[index]!, index, { echo, wide, columns });
  return [
    ...rowOf(0, issuedWords(page, heard, zone)),
    ...heard.rows.flatMap((row, index) => [
      ...rowOf(index + 1, echoOf(row)),
      ...remarks(row, zone).flatMap((text) =>
        paragraph(text, columns - 2, { indent: wide + 4, tone: 'watch' }),
      ),
    ]),
    BLANK,
    ...heard.problems.flatMap((problem) => told(problemSentence({ ...problem, where: '' }, zone), 'watch')),
    ...page.told.flatMap((trouble) => told(sayShortly(trouble), 'watch')),
    ...told(outcome(page, heard), page.ready ? 'title' : 'plain'),
    ...told(
      `From, wind in ${shownUnit('kn', 0).said}, gusts, seas in ${shownUnit('m', 0).said}, period: ${suchAs()}. = is as above, . is not heard; f5-6, ${otherUnits()} will do.`,
    ),
  ];
}

/** A row in the units preferred. */
function suchAs(): string {
  const { wind, seas } = bareUnits();
  return `se ${wind === 'kn' ? '15-20 g28' : '8-10 g14'} ${seas === 'm' ? '1.2-2' : '4-6'} 7s`;
}

/** How the others are typed. */
function otherUnits(): string {
  const { wind, seas } = bareUnits();
  return `${wind === 'kn' ? '8-10m/s' : '15-20kt'} and ${seas === 'm' ? '4-6ft' : '1.2-2m'}`;
}

function typedLine(
  page: HeardPage,
  label: string,
  index: number,
  { echo, wide, columns }: { echo: string; wide: number; columns: number },
): Line[] {
  const here = index === page.at;
  const field = page.fields[index]!;
  const head = say(`  ${here ? '>' : ' '} ${pad(label, wide)}`, here ? 'chosen' : 'plain');
  const room = columns - wide - 6;
  const heard = `${here ? 'Now typing ' : ''}${label}: ${field.text === '' ? 'nothing yet' : `${field.text}${echo === '' ? '' : `, understood as ${echo}`}`}.`;
  const beside = room - Math.min(room, widthOf(field.text) + 3);
  const shown = here ? fieldSpans(field, room) : [say(cut(field.text, room))];
  if (echo === '') return [{ ...line(head, ...shown), heard: here || field.text !== '' ? heard : '' }];
  if (beside >= Math.max(LEAST_ECHO, widthOf(echo) + 2))
    return [{ ...line(head, ...shown, say(`  ${echo}`)), heard }];
  return [
    { ...line(head, ...shown), heard },
    ...paragraph(echo, columns - 2, { indent: wide + 4 }).map((one) => ({ ...one, heard: '' })),
  ];
}

function issuedWords({ fields, since }: HeardPage, { issuedAt }: Heard, zone: string): string {
  if (fields[0]!.text.trim() === '') return '';
  if (issuedAt === null) return 'not understood: 06:00, yesterday 18:00';
  const hours = (since - issuedAt) / HOUR_MS;
  const age = hours < 0 ? `${durationWords(-hours)} from now` : `${durationWords(hours)} ago`;
  return `${momentWords(issuedAt, zone, since)}, ${age}`;
}

function echoOf({ text, figures }: HeardRow): string {
  if (text === '') return '';
  return figures === null ? (text === '.' ? 'not heard' : '') : heardWords(figures);
}

function remarks({ troubles, problems }: HeardRow, zone: string): string[] {
  return [
    ...troubles.map(sayShortly),
    ...problems.map((problem) => problemSentence({ ...problem, where: '' }, zone)),
  ];
}

/** What is wanting, or that it can be taken in. */
function outcome(page: HeardPage, { issuedAt, rows, content }: Heard): string {
  if (page.saving) return 'Being taken in.';
  if (page.ready) return 'Enter again takes it in; it counts from then on.';
  if (rows.every(({ text }) => text === ''))
    return 'Enter goes to the next line; on an empty one it ends the forecast.';
  if (rows.some(({ troubles }) => troubles.length > 0))
    return 'A line is not understood: nothing is taken in until it is.';
  if (issuedAt === null) return 'When it was issued is still wanting: its hours and its age hang on that.';
  return content ? 'Enter on an empty line ends it.' : 'Nothing is heard of wind or seas yet.';
}
