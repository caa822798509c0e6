import type { Pass } from '../../condition/round.ts';
import { nothingLookedAt, notLookedAt } from '../../words/not-looked-at.ts';
import { STATE_WORDS } from '../../words/reasons.ts';
import { counted, hundred } from '../../words/say.ts';
import { EMPTY, fieldSpans } from '../field.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import type { Sight } from '../sight.ts';
import { soonWords } from '../when.ts';
import { enteredAt, type RoundPage, rowInHand, TIME } from './round.ts';
import { inHand, rowLines, toldLines } from './row-lines.ts';

const PASSES: { readonly [P in Pass]: string } = {
  stopped: 'ENGINE STOPPED',
  running: 'ENGINE RUNNING',
  leaving: 'BEFORE LEAVING',
};

export function roundTitle(sight: Sight, page: RoundPage, columns: number): Line {
  return apart(
    [say('  ROUND', 'title'), say(`  ${doneWords(page)}`)],
    [say(`${scoreSoFar(sight, page)}  `)],
    columns,
  );
}

/** The time, the rows by pass with the procedure of the row in hand, and what the round has changed. */
export function roundLines(sight: Sight, page: RoundPage, columns: number): Line[] {
  const passes = [...new Set(page.rows.map(({ pass }) => pass))];
  return [
    ...timeLines(sight, page, columns),
    ...passes.flatMap((pass) => [
      BLANK,
      {
        ...line(say(`  ${PASSES[pass]}`, 'title')),
        heard: passes.length > 0 && handIn(page, pass) ? PASSES[pass] : '',
      },
      ...page.rows.flatMap((row, index) => (row.pass === pass ? rowLines(sight, page, index, columns) : [])),
    ]),
    BLANK,
    ...endLines(sight, page, columns),
  ];
}

/** The first line shown, so that all of what is in hand is in sight where there is room, and its beginning where there is not. */
export function roundHand(lines: readonly Line[], rows: number): number {
  const marked = lines.flatMap(({ stop }, index) => (stop ? [index] : []));
  const first = marked[0] ?? 0;
  const many = marked.length;
  return Math.max(0, many > rows - 2 ? first - 1 : first - Math.floor((rows - many) / 2));
}

function timeLines(sight: Sight, page: RoundPage, columns: number): Line[] {
  const { now, zone } = sight.model;
  const when = page.when === null ? 'now, by the clock' : soonWords(page.when, now, zone);
  if (page.at >= 0) {
    return page.when === null ? [] : [{ ...line(say(`    looked at ${when}`)), heard: `Looked at ${when}.` }];
  }
  const field = page.fields[TIME] ?? EMPTY;
  const typing: Line = {
    ...line(
      say('  > looked at  ', 'chosen'),
      ...fieldSpans(field, columns - 20),
      say(field.text === '' ? ` ${when}` : ''),
    ),
    heard: `Now typing when all of it was looked at: ${field.text || when}.`,
  };
  const such = 'for a round read off paper, such as 07:40, yesterday 18:00, 3 h ago';
  return inHand([typing, ...paragraph(such, columns - 2, { indent: 4 }), ...toldLines(page, columns)]);
}

/** What the round has changed, and what was not looked at: the whole answer where all of it is done. */
function endLines(sight: Sight, page: RoundPage, columns: number): Line[] {
  const here = rowInHand(page) === null;
  const left = page.rows.filter(({ look }) => !enteredAt(page, look.id));
  const title = left.length === 0 ? 'ROUND DONE' : here ? 'END OF THE ROUND' : 'SO FAR';
  const heard = (text: string) => (here || left.length === 0 ? text : '');
  const told = (text: string) =>
    paragraph(text, columns - 2, { indent: 2 }).map((one, index) => ({
      ...one,
      heard: index === 0 ? heard(text) : '',
    }));
  const lines = [
    { ...line(say(`  ${here ? '> ' : ''}${title}`, here ? 'chosen' : 'title')), heard: heard(title) },
    ...told(`${doneWords(page)}; ${scoreSoFar(sight, page)}.`),
    ...changedStates(page).flatMap(told),
    ...(here && left.length > 0
      ? told(`Not looked at: ${left.map(({ look }) => look.name).join(', ')}.`)
      : []),
    ...(here ? told('Enter or Esc: back to the board. Up: back to the rows.') : []),
  ];
  return here ? inHand(lines) : lines;
}

function doneWords(page: RoundPage): string {
  const done = page.rows.filter(({ look }) => enteredAt(page, look.id)).length;
  return `${done} of ${page.rows.length} entered`;
}

function scoreSoFar({ boat }: Sight, { began, latest, batches }: RoundPage): string {
  if (!began || !latest) return 'boat: working';
  const waits = boat.working || batches.some(({ score }) => score === null);
  const [first, last] = [began.score.boat, latest.score.boat];
  if (nothingLookedAt(latest)) return waits ? 'boat not looked at yet, working' : 'boat not looked at yet';
  const unlooked = notLookedAt(latest);
  const scored =
    hundred(first) === hundred(last)
      ? `boat ${hundred(last)}`
      : `boat ${Math.floor(first + 1e-9)} -> ${hundred(last)}`;
  const said = unlooked === 0 ? scored : `${scored}, ${unlooked} not looked at`;
  return waits ? `${said}, working` : said;
}

/** Every item whose state is another than when the round began. */
function changedStates({ began, latest }: RoundPage): string[] {
  if (!began || !latest) return [];
  const before = new Map(began.items.map(({ id, state }) => [id, state]));
  const changed = latest.items.flatMap(({ id, name, state }) => {
    const was = before.get(id);
    return was === undefined || was === state
      ? []
      : [`${name}: ${STATE_WORDS[was]} -> ${STATE_WORDS[state]}`];
  });
  const verdict = began.verdict === latest.verdict ? [] : [`Verdict: ${began.verdict} -> ${latest.verdict}.`];
  return [
    ...verdict,
    ...(changed.length === 0
      ? []
      : [`${counted(changed.length, 'state', 'states')} changed: ${changed.join('; ')}.`]),
  ];
}

function handIn({ rows, at }: RoundPage, pass: Pass): boolean {
  return rows[at]?.pass === pass;
}
