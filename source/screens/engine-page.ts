import { engineOf } from '../boat/boat.ts';
import { cautionsFor } from '../words/cautions.ts';
import { STATE_WORDS } from '../words/reasons.ts';
import { amountWords, capital, dayWords, momentWords } from '../words/say.ts';
import { tablesOf } from '../words/traced.ts';
import { entryLines, figureLines, foundPart, loggedLines } from './item-page.ts';
import { BLANK, type Line, line, paragraph, say } from './lines.ts';
import { MARKS } from './panel.ts';
import { enginesIn, hoursAway, hoursWords } from './panels/engine-hours.ts';
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
  const { boat } = sight.boat.loaded;
  const goesBy = (service: string) => {
    const found = boat.services.find((one) => one.id === service);
    return found?.everyHours === undefined ? found?.engine : engineOf(boat, found.engine);
  };
  return itemsOfKind(sight, 'service')
    .filter((item) => goesBy(item.id) === id)
    .flatMap(({ name, state, dueInHours, dueOn }) => {
      const due = [
        ...(dueInHours === null ? [] : [hoursAway(dueInHours)]),
        ...(dueOn === null ? [] : [`by ${dayWords(Date.parse(dueOn), 'UTC')}`]),
      ];
      const word = state === null ? 'working' : STATE_WORDS[state];
      const text = `${name}: ${due.length === 0 ? 'not entered yet' : due.join(' or ')}; ${word}`;
      return paragraph(text, columns - 6).map((said, index) =>
        line(
          say(`  ${index === 0 && state !== null ? MARKS[state] : ' '} `, state ?? 'plain'),
          ...said.spans,
        ),
      );
    });
}
