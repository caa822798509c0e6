import stringWidth from 'string-width';
import { pointLetters } from '../forecast/compass.ts';
import type { MetQuantity } from '../readiness/forecast-met.ts';
import { cleanLine } from './clean.ts';
import type { VerdictDocument } from './document.ts';
import { sourceWords } from './forecast-source.ts';
import type { AboardDocument, MetDocument } from './forecasts-document.ts';
import { aligned, wrapped } from './lines.ts';
import { shownUnit } from './preferred.ts';
import { tendencyWords } from './pressure.ts';
import { amountWords, capital, counted, durationWords, momentWords, sentence } from './say.ts';

const MS_AN_HOUR = 3_600_000;
const MOST_LETTERS = 160;
/** A decision is said beside the answer for so long (judgement). */
const DECISION_HOURS = 72;

/** The forecasts side by side as aligned lines, numbered from 1, the newest issued first; what they say of the passage stands beside. Whose each is has a line of its own where `columns` are too few. */
export function aboardLines(
  forecasts: readonly AboardDocument[],
  at: number,
  zone: string,
  columns: number,
): string[] {
  const hours = forecasts.find(({ ahead }) => ahead)?.ahead?.hours;
  const next = hours === undefined ? [] : [`${hours} h: wind`, 'gusts', 'seas'];
  const rows = forecasts.map((one, index) => [
    one.counts ? '*' : '',
    String(index + 1),
    momentWords(Date.parse(one.issuedAt), zone, at),
    durationWords(Math.max(0, one.ageHours)),
    hoursLeft(one, at),
    ...(hours === undefined ? [] : aheadCells(one)),
  ]);
  const table = aligned([['', '', 'issued', 'age', 'to come', ...next], ...rows]);
  const wide = Math.max(...table.map((line) => line.length)) + 2;
  const whose = forecasts.map(({ source, members, issuer }) =>
    cleanLine(
      [source, ...(members > 0 ? [`${members} members`] : []), ...(issuer === '' ? [] : [issuer])].join(', '),
      MOST_LETTERS,
    ),
  );
  if (whose.every((words) => wide + stringWidth(words) <= columns))
    return table.map((line, index) => `${line.padEnd(wide)}${whose[index - 1] ?? 'as'}`);
  return table.flatMap((line, index) => [
    line,
    ...wrapped(whose[index - 1] ?? '', columns, 6).filter((words) => words.trim() !== ''),
  ]);
}

/** One of them in a sentence, for where there is no room for a table and for reading aloud. */
export function aboardSentence(one: AboardDocument, at: number, zone: string): string {
  const { ahead, counts, chosen } = one;
  const what = sourceWords(one);
  const figure = (name: string, amount: number | null, unit: string) =>
    amount === null ? [] : [`${name} ${amountWords(amount, unit)}`];
  const hardest = ahead
    ? [
        ...figure('wind', ahead.wind, 'kn'),
        ...figure('gusts', ahead.gust, 'kn'),
        ...figure('seas', ahead.seas, 'm'),
      ]
    : [];
  const parts = [
    `${what}${one.members > 0 ? ` of ${one.members} members` : ''}, issued ${momentWords(Date.parse(one.issuedAt), zone, at)}, ${durationWords(Math.max(0, one.ageHours))} old`,
    `${hoursLeft(one, at)} to come`,
    ...(ahead && hardest.length > 0 ? [`hardest in the next ${ahead.hours} h: ${hardest.join(', ')}`] : []),
    ...(counts ? [chosen ? 'counts by your choice' : 'counts'] : []),
  ];
  return sentence(parts.join('; '));
}

/** How many of the hours it speaks of are still to come. */
function hoursLeft({ from, until }: AboardDocument, at: number): string {
  const left = (Date.parse(until) - Math.max(at, Date.parse(from))) / MS_AN_HOUR;
  return left <= 0 ? 'nothing' : durationWords(left);
}

function aheadCells({ ahead }: AboardDocument): string[] {
  if (!ahead) return ['-', '-', '-'];
  const cell = (figure: number | null, unit: string) => (figure === null ? '-' : amountWords(figure, unit));
  return [cell(ahead.wind, 'kn'), cell(ahead.gust, 'kn'), cell(ahead.seas, 'm')];
}

/** Which of them counts, and why. */
export function countsSentence(forecasts: readonly AboardDocument[]): string {
  const at = forecasts.findIndex(({ counts }) => counts);
  const counting = forecasts[at];
  if (!counting) return '';
  if (!counting.chosen) return `Number ${at + 1} counts: it is the newest issued.`;
  return `Number ${at + 1} counts by your choice, until a newer one is taken in.`;
}

/** What it was doing at the last look, beside what the forecast said of it. Null where there was no look of late. */
export function nowSentence({ now, at }: Pick<VerdictDocument, 'now' | 'at'>, zone: string): string | null {
  if (!now) return null;
  const { met, said } = now;
  const ago = (Date.parse(at) - Date.parse(now.at)) / MS_AN_HOUR;
  const parts = [
    beside('wind', met.wind, said?.wind ?? null, 'kn'),
    beside('gusts', met.gust, said?.gust ?? null, 'kn'),
    met.dir === null
      ? null
      : `from ${pointLetters(met.dir)}${said === null || said.dir === null ? '' : ` where ${pointLetters(said.dir)} was forecast`}`,
    beside('seas', met.seas, said?.seas ?? null, 'm'),
    met.pressure === null
      ? null
      : `${amountWords(met.pressure, 'hPa')}${met.tendency === null ? '' : `, ${tendencyWords(met.tendency)}`}`,
    met.squalls === null ? null : `squalls: ${met.squalls}`,
  ].filter((part) => part !== null);
  const none = said === null ? '; the forecast says nothing of that place and hour' : '';
  const when =
    ago < 1 / 60
      ? 'Now'
      : `${momentWords(Date.parse(now.at), zone, Date.parse(at))}, ${durationWords(ago)} ago`;
  return sentence(`${when}: ${parts.join(', ')}${none}`);
}

function beside(name: string, met: number | null, said: number | null, unit: string): string | null {
  if (met === null) return null;
  return `${name} ${amountWords(met, unit)}${said === null ? '' : ` where ${amountWords(said, unit)} was forecast`}`;
}

const NAMES: { readonly [what in MetQuantity]: string } = {
  wind: 'wind',
  gust: 'gusts',
  direction: 'direction',
  seas: 'seas',
};

/** How far off forecasts have been lately, in sentences, and the boat's own error figures once enough looks stand behind them. */
export function metSentences(met: MetDocument): string[] {
  const { looks, wanted, by, own } = met;
  if (looks === 0)
    return [
      'Nothing is known yet of how far forecasts are off here: enter what the weather is doing (hoveshort record weather wind=18 seas=1.2), best under way.',
    ];
  const whose = `by ${counted(looks, 'look at the weather', 'looks at the weather')} in the last 90 days`;
  const lines = [
    `How far off forecasts have been, ${whose}; lying, only forecasts that name the anchorage are held to it.`,
  ];
  for (const what of Object.keys(NAMES) as MetQuantity[]) {
    const told = by.filter((one) => one.what === what).map(leadPhrase);
    if (told.length > 0) lines.push(sentence(`${NAMES[what]}: ${told.join('; ')}`));
  }
  lines.push(...ownSentences(own, looks, wanted));
  return lines;
}

function leadPhrase({ what, leadDays: [from, to], count, mean, sd }: MetDocument['by'][number]): string {
  const lead =
    to === null ? `from ${from} days on` : from === 0 ? 'within a day of issue' : `${from} to ${to} days on`;
  const amount = amountOff(what, Math.abs(mean));
  const spread = sd === null ? '' : `, give or take ${amountOff(what, sd)}`;
  const times = counted(count, 'time', 'times');
  return `${lead} ${amount.startsWith('0 ') ? 'as said on average' : offPhrase(what, amount, mean)}${spread} (${times})`;
}

function offPhrase(what: MetQuantity, amount: string, mean: number): string {
  if (what === 'direction')
    return `${mean < 0 ? 'backed' : 'veered'} ${amount} from what was said on average`;
  return `${amount} ${mean < 0 ? 'less' : 'more'} than said on average`;
}

function amountOff(what: MetQuantity, amount: number): string {
  if (what === 'seas') return `${Math.round(amount * 100)} %`;
  if (what === 'direction') return `${Math.round(amount)} degrees`;
  const { each } = shownUnit('kn', amount);
  return amountWords((Math.round((amount * 10) / each) / 10) * each, 'kn');
}

function ownSentences(own: MetDocument['own'], looks: number, wanted: number): string[] {
  if (own === null)
    return [
      looks < wanted
        ? `From ${wanted} looks on these can stand in place of common practice; so far the errors of common practice are used.`
        : `From ${wanted} looks of wind, of direction or of seas on these can stand in place of common practice.`,
    ];
  return [
    `The boat's own figures, to put under "limits" in boat.json in place of common practice if you agree: "forecastError": ${JSON.stringify(own)}.`,
  ];
}

/** What the skipper decided last, beside what the model said; null where that is long gone: the log has it. */
export function decisionSentence(
  { decision, at }: Pick<VerdictDocument, 'decision' | 'at'>,
  zone: string,
): string | null {
  if (!decision || Date.parse(at) - Date.parse(decision.at) > DECISION_HOURS * MS_AN_HOUR) return null;
  const { choice, verdict, score, text, against } = decision;
  const when = momentWords(Date.parse(decision.at), zone, Date.parse(at));
  const said = `the verdict was ${verdict}${score === null ? '' : ` at ${amountWords(score, null)}`}`;
  const why = text === null ? '' : `; ${text}`;
  return sentence(
    `${capital(when)}: decided to ${choice}${against ? ', against the verdict' : ''}; ${said}${why}`,
  );
}
