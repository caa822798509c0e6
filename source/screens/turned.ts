import { answerLines, answerTitle } from './answer-page.ts';
import { boatItemLines, boatItemTitle } from './boat/boat-item-page.ts';
import { boatLines, boatTitle } from './boat/boat-page.ts';
import { engineLines, engineTitle } from './engine-page.ts';
import { firstRunLines, firstRunTitle } from './first-run/first-run-page.ts';
import { forecastsLines, forecastsTitle } from './forecasts-page.ts';
import { formLines, formTitle } from './forms/form-page.ts';
import { heardLines, heardTitle } from './heard-page.ts';
import { itemLines, itemTitle } from './item-page.ts';
import { keysLines, keysTitle } from './keys-page.ts';
import type { Line } from './lines.ts';
import { entryLines, entryTitle } from './log/entry-page.ts';
import { logLines, logTitle } from './log/log-page.ts';
import { type Model, type Page, pageOf, type Size } from './model.ts';
import { preferencesLines, preferencesTitle } from './preferences/preferences-page.ts';
import { roundHand, roundLines, roundTitle } from './round/round-page.ts';
import { sightOf } from './sight.ts';
import { storesLines, storesTitle } from './stores/stores-page.ts';
import { foundLines, foundTitle } from './trace/found-page.ts';
import { traceLines, traceTitle } from './trace/trace-page.ts';
import { troublePageLines, troubleTitle } from './trouble-page.ts';
import { weatherLines, weatherTitle } from './weather-page.ts';

export type Turned = Exclude<Page, { page: 'board' }>;

/** A page turned to: its title, and all its lines, however many. */
export function turnedPage(model: Model, page: Turned): { title: Line; lines: Line[] } {
  const { columns } = model.size;
  if (page.page === 'keys') return { title: keysTitle(page.of), lines: keysLines(page.of, model) };
  if (page.page === 'first run')
    return { title: firstRunTitle(page, columns), lines: firstRunLines(model, page, pageRows(model.size)) };
  if (page.page === 'preferences')
    return { title: preferencesTitle(), lines: preferencesLines(model, page, pageRows(model.size)) };
  if (page.page === 'boat item')
    return {
      title: boatItemTitle(page, columns),
      lines: boatItemLines(page, model.size, pageRows(model.size)),
    };
  const sight = sightOf(model);
  if (page.page === 'trouble' || !sight) return { title: troubleTitle(), lines: troublePageLines(model) };
  if (page.page === 'boat')
    return { title: boatTitle(sight, columns), lines: boatLines(sight, page, pageRows(model.size)) };
  if (page.page === 'answer')
    return { title: answerTitle(sight, columns), lines: answerLines(sight, model.size) };
  if (page.page === 'weather')
    return { title: weatherTitle(sight, page, columns), lines: weatherLines(sight, page, model.size) };
  if (page.page === 'stores')
    return { title: storesTitle(page, columns), lines: storesLines(sight, page, columns) };
  if (page.page === 'forecasts')
    return { title: forecastsTitle(sight, columns), lines: forecastsLines(sight, page, columns) };
  if (page.page === 'heard') return { title: heardTitle(), lines: heardLines(sight, page, columns) };
  if (page.page === 'form')
    return { title: formTitle(sight, page, columns), lines: formLines(sight, page, columns) };
  if (page.page === 'round')
    return { title: roundTitle(sight, page, columns), lines: roundLines(sight, page, columns) };
  if (page.page === 'trace')
    return { title: traceTitle(sight, page, columns), lines: traceLines(sight, page, columns) };
  if (page.page === 'found')
    return { title: foundTitle(sight, page, columns), lines: foundLines(sight, page, columns) };
  if (page.page === 'engine')
    return { title: engineTitle(sight, page.id), lines: engineLines(sight, page.id, columns) };
  if (page.page === 'entry')
    return { title: entryTitle(sight, page, columns), lines: entryLines(sight, page, columns) };
  if (page.page === 'log')
    return {
      title: logTitle(sight, page, columns),
      lines: logLines(sight, page, model.size, pageRows(model.size)),
    };
  return { title: itemTitle(sight, page.id, columns), lines: itemLines(sight, page.id, model.size) };
}

/** The first line shown: where a page was scrolled to, or where what is in hand is in sight. */
export function shownFirst(model: Model, page: Turned, lines: readonly Line[]): number {
  return page.from + handOf(model, page, lines);
}

/** Where a page that is walked by rows is shown from, before anybody scrolls it. */
function handOf({ size }: Model, { page }: Turned, lines: readonly Line[]): number {
  return page === 'round' ? roundHand(lines, pageRows(size)) : 0;
}

/** Rows of a turned page between its two rules. */
export function pageRows({ rows }: Size): number {
  return Math.max(1, rows - 4);
}

/** The last line a turned page can begin with. */
export function mostFrom(model: Model): number {
  const page = pageOf(model);
  if (page.page === 'board') return 0;
  const { lines } = turnedPage(model, page);
  return Math.max(0, lines.length - pageRows(model.size) - handOf(model, page, lines));
}
