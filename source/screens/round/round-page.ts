import { cautionsFor } from '../../words/cautions.ts';
import { PASS_TITLES } from '../../words/round-page.ts';
import { sentence } from '../../words/say.ts';
import { apart, BLANK, type Line, line, paragraph, say } from '../lines.ts';
import type { Size } from '../model.ts';
import type { Sight } from '../sight.ts';
import { widthOf } from '../width.ts';
import { fieldInHand, type RoundPage, savedOf } from './round.ts';
import { handLines, rowLine, whenLine } from './row-lines.ts';

export function roundTitle(sight: Sight, page: RoundPage, columns: number): Line {
  const looked = page.rows.filter((row) => savedOf(page, row)).length;
  const counted = `${looked} of ${page.rows.length}`;
  const left = [say('  ROUND', 'title'), say(`  ${counted}${columns < 60 ? '' : ' looked at'}`)];
  const score = scoreWords(sight, page);
  const heard = `Round, ${counted} looked at. ${sentence(score)}`;
  return { ...apart(left, [say(`${score}  `)], columns), heard };
}

/** The boat score as it was when the round was opened and as it is by what was entered since. */
function scoreWords({ boat, document }: Sight, { before, saves }: RoundPage): string {
  const working = boat.working || saves.some(({ entries }) => entries === null) ? ', working' : '';
  if (!document) return 'score: working';
  const now = Math.floor(document.score.boat);
  const was = before === null ? now : Math.floor(before);
  return `score: boat ${was === now ? '' : `${was} -> `}${now}${working}`;
}

/** Every line of the round, and the first to be shown so that the row in hand is in sight. */
export function roundLines(sight: Sight, page: RoundPage, size: Size): { lines: Line[]; from: number } {
  const { columns } = size;
  const longest = Math.max(4, ...page.rows.map(({ look }) => widthOf(look.name)));
  const name = Math.min(longest, Math.floor((columns - 6) * NAME_PART));
  const lines: Line[] = [];
  let hand = 0;
  const put = (index: number, row: Line) => {
    if (index === page.at) hand = lines.length;
    lines.push(row, ...(index === page.at ? handLines(sight, page, columns) : []));
  };
  put(0, whenLine(sight, page, name, columns));
  page.rows.forEach((row, index) => {
    if (row.pass !== page.rows[index - 1]?.pass) {
      const title = line(say(`  ${PASS_TITLES[row.pass]}`, 'title'));
      lines.push(BLANK, { ...title, heard: '' });
    }
    put(index + 1, rowLine(sight, page, index + 1, name, columns));
  });
  lines.push(...cautionLines(page, columns));
  const room = size.rows - 4;
  const from = hand - Math.max(2, Math.floor(room / 4)) + page.from;
  return { lines, from: Math.max(0, Math.min(lines.length - room, from)) };
}

/** Of a line, for the name. */
const NAME_PART = 0.45;

/** Said once for the page; aloud where the row in hand is of that kind and nothing is typed in it yet. */
function cautionLines(page: RoundPage, columns: number): Line[] {
  const here = page.rows[page.at - 1];
  const kinds = (['fluid', 'anode'] as const).filter((kind) =>
    page.rows.some(({ look }) => look.kind === kind),
  );
  if (kinds.length === 0) return [];
  const cautions = kinds.flatMap((kind) => {
    const aloud = here?.look.kind === kind && fieldInHand(page).text === '';
    const lines = cautionsFor(kind).flatMap((text) => paragraph(text, columns - 2, { indent: 2 }));
    return aloud ? lines : lines.map((one) => ({ ...one, heard: '' }));
  });
  return [BLANK, { ...line(say('  CAUTIONS', 'title')), heard: '' }, ...cautions];
}
