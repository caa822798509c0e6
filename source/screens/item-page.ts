import { about } from '../logbook/about.ts';
import { cautionsFor } from '../words/cautions.ts';
import { entryWords } from '../words/entry-words.ts';
import { foundLines } from '../words/found-parts.ts';
import { STATE_WORDS } from '../words/reasons.ts';
import { momentWords, sentence } from '../words/say.ts';
import { actionPhrase } from './action-words.ts';
import { historyLines, historyOf, historySentence } from './charts/history.ts';
import { levelChart, levelLines, levelsLegend, levelsSentence } from './charts/levels.ts';
import type { About } from './forms/form.ts';
import { formKeys } from './forms/form-keys.ts';
import { forms } from './forms/table.ts';
import { figuresOf } from './item-figures.ts';
import { apart, BLANK, type Line, line, paragraph, say } from './lines.ts';
import { isSeen } from './log/rows.ts';
import type { Size } from './model.ts';
import { MARKS } from './panel.ts';
import type { ShownItem } from './shown-item.ts';
import { nameOf, type Sight } from './sight.ts';
import { toldOf } from './trace/trace.ts';
import { pad, widthOf } from './width.ts';

const MOST_ENTRIES = 200;

export function itemTitle(sight: Sight, id: string, columns: number): Line {
  const item = sight.items.find((one) => one.id === id);
  const state = item?.state ?? null;
  const word = state === null ? 'working' : `${MARKS[state]} ${STATE_WORDS[state]}`;
  const left = [
    say(`  ${nameOf(sight, id).toLocaleUpperCase()}`, 'title'),
    say('  '),
    say(word, state ?? 'plain'),
  ];
  return apart(left, item ? [say(`${item.kind}, ${item.consequence}  `)] : [], columns);
}

/** One item's page: why, its history as a chart and in a sentence, its figures, what can be done, its entries, newest first. */
export function itemLines(sight: Sight, id: string, { columns, rows }: Size): Line[] {
  const item = sight.items.find((one) => one.id === id);
  if (!item) return [line(say('  The boat file no longer has this item.'))];
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  const titled = (title: string, lines: readonly Line[]) =>
    lines.length === 0 ? [] : [BLANK, line(say(`  ${title}`, 'title')), ...lines];
  return [
    ...item.reasons.flatMap((reason) =>
      paragraph(sentence(reason), columns - 2, { indent: 2, tone: item.state ?? 'plain' }),
    ),
    ...historyPart(sight, item, columns, Math.max(4, Math.min(16, Math.floor(rows / 3)))),
    ...titled('FIGURES', figureLines(figuresOf(sight, item), columns)),
    ...titled('WHAT CAN BE DONE', actionsAbout(sight, id).flatMap(told)),
    ...titled('FOUND BEFORE', foundPart(sight, id).flatMap(told)),
    ...titled('WHAT CAN BE LOGGED', loggedLines(sight, item, columns)),
    ...titled('CAUTIONS', cautionsFor(item.kind).flatMap(told)),
    ...titled('NOTE', noteOf(sight, id).flatMap(told)),
    ...titled('ENTRIES', entryLines(sight, id, columns)),
  ];
}

function historyPart(sight: Sight, item: ShownItem, columns: number, rows: number): Line[] {
  if (item.kind === 'fluid') return levelsPart(sight, item, columns, rows);
  const history = historyOf(item, sight.boat.loaded.condition);
  if (!history) return [];
  const { zone } = sight.model;
  const chart = historyLines(history, { now: sight.at, zone, columns: columns - 4, rows }) ?? [];
  return [
    ...paragraph(historySentence(history, zone), columns - 2, { indent: 2 }),
    ...chart.map((text) => line(say(`  ${text}`, 'chart'))),
  ];
}

function levelsPart(
  { model: { zone }, at }: Sight,
  item: Extract<ShownItem, { kind: 'fluid' }>,
  columns: number,
  rows: number,
): Line[] {
  const chart = levelChart(item, { now: at, columns: columns - 4 });
  if (!chart) return [];
  return [
    ...paragraph(levelsSentence(chart, zone), columns - 2, { indent: 2 }),
    ...levelLines(chart, { zone, columns: columns - 4, rows }).map((text) => line(say(`  ${text}`, 'chart'))),
    ...paragraph(levelsLegend(chart), columns - 2, { indent: 2, tone: 'chart' }),
  ];
}

export function figureLines(figures: readonly (readonly [string, string])[], columns: number): Line[] {
  const wide = Math.max(0, ...figures.map(([label]) => widthOf(label))) + 2;
  return figures.flatMap(([label, text]) =>
    paragraph(text, columns - wide - 6).map((said, index) =>
      line(say(`    ${pad(index === 0 ? label : '', wide)}`), ...said.spans),
    ),
  );
}

function actionsAbout(sight: Sight, id: string): string[] {
  const { document } = sight;
  const actions = [...(document?.toGetReady ?? []), ...(document?.whileHeld ?? [])];
  return actions
    .filter((action) => action.item === id)
    .map((action) => sentence(actionPhrase(sight, action)));
}

/** The keys that open a form about it, from the key table. */
export function loggedLines(sight: Sight, thing: NonNullable<About>, columns: number): Line[] {
  const page = thing.kind === 'engine' ? 'engine' : 'item';
  const keys = formKeys.filter(({ form, on }) => on.includes(page) && forms[form].offered(thing));
  return sight.boat.loaded.readOnly
    ? paragraph('Nothing, now: ! says what stands in the way of saving.', columns - 2, { indent: 2 })
    : keys.flatMap(({ key, does }) =>
        paragraph(does, columns - 8).map((said, index) =>
          line(say(`    ${index === 0 ? key : ' '}  `, 'title'), ...said.spans),
        ),
      );
}

/** The hunts that work on it has closed, the newest first. */
export function foundPart({ model }: Sight, id: string): string[] {
  const found = toldOf(model, id)?.found ?? [];
  return found.length === 0 ? [] : [...foundLines(found), 'F turns to the newest of them.'];
}

function noteOf({ boat }: Sight, id: string): string[] {
  const { fluids, anodes, spares, services, checks, dated } = boat.loaded.boat;
  const item = [fluids, anodes, spares, services, checks, dated].flat().find((one) => one.id === id);
  return item?.note === undefined ? [] : [item.note];
}

export function entryLines(sight: Sight, id: string, columns: number): Line[] {
  const { boat, entries } = sight.boat.loaded;
  const named = entries.filter((entry) => about(entry, id)).reverse();
  const seen = named.filter((entry) => isSeen(sight.boat.loaded)({ entry }));
  const later = named.length - seen.length;
  if (named.length === 0) return [line(say('    none yet'))];
  const lines = seen.slice(0, MOST_ENTRIES).flatMap((entry) => {
    const when = momentWords(Date.parse(entry.at), sight.model.zone, sight.at);
    const by = entry.by === undefined ? '' : `, ${entry.by}`;
    return paragraph(`${when}  ${entryWords(entry, boat)}${by}`, columns - 2, { indent: 4 });
  });
  const left = seen.length - MOST_ENTRIES;
  return [
    ...(later > 0 ? [line(say(`    ${later} later than the moment looked at, not listed`))] : []),
    ...lines,
    ...(left > 0 ? [line(say(`    and ${left} older`))] : []),
  ];
}
