import { nothingLookedAt, notLookedAt } from '../../words/not-looked-at.ts';
import { durationWords, hundred, sentence } from '../../words/say.ts';
import { stayingPresses } from '../../words/staying.ts';
import { apart, type Line, line, lineWidth, paragraph, type Stop, say } from '../lines.ts';
import { FRESH } from '../model.ts';
import type { Sight } from '../sight.ts';
import { soonWords } from '../when.ts';

const HOUR_MS = 3_600_000;
/** The countdown says these, in the person's own zone. */
const SAID_BELOW: ReadonlySet<string> = new Set(['waits for window', 'no window']);
const STOP: Stop = { key: 'verdict', part: 'verdict', opens: { open: 'answer' } };

/** The danger of staying, where it presses, then the answer alone on its line. */
export function verdictLines(sight: Sight, columns: number): Line[] {
  const { document, boat } = sight;
  const pointer = say(sight.model.chosen === STOP.key ? '> ' : '  ', 'chosen');
  if (!document) {
    const name = [pointer, say(' WORKING ', 'verdict')];
    return [{ ...apart(name, [say('boat working   with the weather working  ')], columns), stop: STOP }];
  }
  const word = say(` ${document.verdict.toUpperCase()} `, 'verdict');
  const short = apart(
    [pointer, word],
    [say(`${scoreWords({ ...document, items: [] }, boat.working)}  `)],
    columns,
  );
  const whole = apart([pointer, word], [say(`${scoreWords(document, boat.working)}  `)], columns);
  const hasRoom = nothingLookedAt(document) || lineWidth(whole) >= lineWidth(short);
  return [...stayingLines(sight, columns), { ...(hasRoom ? whole : short), stop: STOP }];
}

/** Why, worst first: `most` lines at most, and how many reasons were left out. */
export function reasonLines({ document }: Sight, columns: number, most: number): Line[] {
  if (!document) return paragraph('The passages are being sailed.', columns - 2, { indent: 2 });
  const lines: Line[] = [];
  let told = 0;
  const reasons = document.reasons.filter((_, index) => !SAID_BELOW.has(document.reasonKinds[index] ?? ''));
  for (const reason of reasons) {
    const said = paragraph(reason, columns - 2, { indent: 2 });
    if (told > 0 && lines.length + said.length > most) break;
    lines.push(...said);
    told += 1;
  }
  const left = reasons.length - told;
  return left === 0 ? lines : [...lines, line(say(`  and ${left} more; Enter tells`))];
}

/** The scores; where nothing was looked at none of the boat, and what it takes for good otherwise. */
export function scoreWords(document: NonNullable<Sight['document']>, working: boolean): string {
  const { boat, now, weather } = document.score;
  const begun = working ? 'working   ' : '';
  if (nothingLookedAt(document)) {
    const alone = weather === null ? 'weather not judged' : `weather ${hundred(weather)}`;
    return `${begun}boat not looked at yet   ${alone}`;
  }
  const unlooked = notLookedAt(document);
  const both = now === null ? 'weather not judged' : `with the weather ${hundred(now)}`;
  return `${begun}${unlooked === 0 ? '' : `${unlooked} not looked at   `}boat ${hundred(boat)}   ${both}`;
}

function stayingLines(sight: Sight, columns: number): Line[] {
  if (!sight.document || !stayingPresses(sight.document)) return [];
  const fresh = sight.model.fresh.has(FRESH.staying) ? 'NEW ' : '';
  const [untenable, ...shelters] = stayingWords(sight);
  if (untenable === undefined) return [];
  return [`${fresh}STAYING: ${untenable}`, ...shelters].flatMap((text) =>
    paragraph(text, columns - 2, { indent: 2, tone: 'danger' }),
  );
}

/** The danger of staying, if there is one, then every passage to safety with its own verdict. */
export function stayingWords({ document, at, model }: Sight): string[] {
  if (!document?.staying) return [];
  const { until, why } = document.staying;
  const hours = (Date.parse(until) - at) / HOUR_MS;
  const from =
    hours <= 0
      ? 'untenable now'
      : `untenable from ${soonWords(Date.parse(until), at, model.zone)}, in ${durationWords(hours)}`;
  return [
    sentence(`${from}: ${why}`),
    ...document.shelter.map(({ name, verdict, score }) =>
      sentence(`Shelter: ${name}: ${verdict}${score === null ? '' : `, ${hundred(score)}`}`),
    ),
  ];
}
