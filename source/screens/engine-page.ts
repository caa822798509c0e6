import { servicesBy } from '../boat/boat.ts';
import { cautionsFor } from '../words/cautions.ts';
import { dueWords } from '../words/engine-item.ts';
import { amountWords, capital, momentWords } from '../words/say.ts';
import { tablesOf } from '../words/traced.ts';
import { entryLines, figureLines, foundPart, loggedLines } from './item-page.ts';
import { BLANK, type Line, line, paragraph, say } from './lines.ts';
import { MARKS } from './panel.ts';
import { enginesIn, hoursWords } from './panels/engine-hours.ts';
import { itemsOfKind, nameOf, type Sight } from './sight.ts';

export function engineTitle(sight: Sight, id: string): Line {
  return line(say(`  ${nameOf(sight, id).toLocaleUpperCase()}`, 'title'), say('  engine'));
}

/** One engine's page: its meter, its services, what it can be traced by, what can be logged, its entries. */
export function engineLines(sight: Sight, id: string, columns: number): Line[] {
  const engine = enginesIn(sight).find((one) => one.id === id);
  if (!engine) return [line(say('  The boat file no longer has this engine.'))];
  const { hours, readAt, perDay } = engine;
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  const titled = (title: string, lines: readonly Line[]) =>
    lines.length === 0 ? [] : [BLANK, line(say(`  ${title}`, 'title')), ...lines];
  const figures = [
    ['hours', hours === null ? 'not read yet' : hoursWords(hours)],
    ...(readAt === null ? [] : [['meter read', momentWords(Date.parse(readAt), sight.model.zone, sight.at)]]),
    ...(perDay === null ? [] : [['a day lying', amountWords(perDay, 'h')]]),
  ] as [string, string][];
  const tables = tablesOf(sight.boat.loaded, id);
  const troubles = [
    ...tables.map(({ title }) => `${capital(title)}.`),
    ...(tables.length > 0 ? [FINDS] : []),
  ];
  return [
    ...figureLines(figures, columns),
    ...titled('SERVICES', serviceLines(sight, id, columns)),
    ...titled('WHAT CAN BE TRACED', troubles.flatMap(told)),
    ...titled('FOUND BEFORE', foundPart(sight, id).flatMap(told)),
    ...titled('WHAT CAN BE LOGGED', loggedLines(sight, { kind: 'engine', id }, columns)),
    ...titled('CAUTIONS', cautionsFor('service').flatMap(told)),
    ...titled('ENTRIES', entryLines(sight, id, columns)),
  ];
}

const FINDS = 'f finds the cause; of several troubles Tab turns to the next.';

function serviceLines(sight: Sight, id: string, columns: number): Line[] {
  const ids = servicesBy(sight.boat.loaded.boat, id).map((service) => service.id);
  return itemsOfKind(sight, 'service')
    .filter((item) => ids.includes(item.id))
    .flatMap((item) => {
      const { name, state } = item;
      return paragraph(`${name}: ${dueWords(item)}`, columns - 6).map((said, index) =>
        line(
          say(`  ${index === 0 && state !== null ? MARKS[state] : ' '} `, state ?? 'plain'),
          ...said.spans,
        ),
      );
    });
}
