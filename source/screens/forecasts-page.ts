import { aboardLines, aboardSentence, countsSentence, metSentences } from '../words/forecasts-lines.ts';
import { apart, BLANK, type Line, line, paragraph, say, textOf } from './lines.ts';
import type { ForecastsPage } from './model.ts';
import { forecastSpans } from './panels/heading.ts';
import type { Sight } from './sight.ts';
import { widthOf } from './width.ts';

export function forecastsTitle(sight: Sight, columns: number): Line {
  return apart([say('  FORECASTS ABOARD', 'title')], [...forecastSpans(sight), say('  ')], columns);
}

/** The forecasts side by side, the one pointed at marked, which counts, and how far off they have been. */
export function forecastsLines(sight: Sight, page: ForecastsPage, columns: number): Line[] {
  const { document } = sight;
  if (!document) return [line(say('  The passages are being sailed.'))];
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  if (document.forecasts.length === 0)
    return told(
      'No forecast is aboard. In the shell, hoveshort forecast <file> takes one in; here, t types one as it is heard.',
    );
  return [
    ...listLines(sight, document.forecasts, page.at, columns),
    BLANK,
    ...told(`${countsSentence(document.forecasts)} Enter makes the one pointed at count.`),
    ...told(
      'They are compared here and never mixed: the hardest each has along the passage stands beside it.',
    ),
    BLANK,
    line(say('  HOW FAR OFF THEY HAVE BEEN', 'title')),
    ...metSentences(document.met).flatMap(told),
  ];
}

/** The first line of each forecast carries its place in the list, so that it can be kept in sight. */
function listLines(
  { at, model }: Sight,
  forecasts: NonNullable<Sight['document']>['forecasts'],
  pointed: number,
  columns: number,
): Line[] {
  const table = aboardLines(forecasts, at, model.zone, Number.POSITIVE_INFINITY);
  const fits = Math.max(...table.map(widthOf)) + 4 <= columns;
  const [head, ...rows] = table;
  const listed = forecasts.flatMap((one, index): Line[] => {
    const here = index === pointed;
    const mark = say(here ? '> ' : '  ', 'chosen');
    const spoken = aboardSentence(one, at, model.zone);
    const stop = { key: String(index), part: 'forecasts', opens: { open: 'answer' } } as const;
    if (fits) return [{ ...line(mark, say(rows[index]!)), heard: `${here ? 'Here: ' : ''}${spoken}`, stop }];
    const [first, ...rest] = paragraph(`${one.counts ? '* ' : ''}${index + 1}. ${spoken}`, columns - 2, {
      indent: 2,
    });
    return [{ ...line(mark, say(textOf(first!).trimStart())), stop }, ...rest];
  });
  return fits ? [{ ...line(say(`  ${head}`)), heard: '' }, ...listed] : listed;
}
