import { wallOf } from '../../maths/wall-clock.ts';
import { bad, good, type Result } from '../../trouble.ts';
import type { Given, Reading, Zone } from '../content.ts';
import type { PlaceForecast, Problem } from '../forecast.ts';
import type { Issue } from './issue-time.ts';
import { readSection } from './read-section.ts';
import type { Section } from './section.ts';
import { sectionsIn } from './sections.ts';

/** The waters a bulletin is for, in its order; empty where it names none or is no bulletin. */
export function bulletinZones(text: string): readonly Zone[] {
  return zonesOf(sectionsIn(text).sections);
}

/**
 * Reads a text forecast: US National Weather Service coastal, offshore, near-shore and high seas texts, area forecasts in Beaufort forces, in NAVTEX frames or
 * without. Of waters to choose from and an issue time it does not say it asks; a zone it does not have, and a text without a figure of wind or seas, is in trouble. Null where the text
 * has not the form of a bulletin: no zones, periods or areas, and no NAVTEX frame.
 */
export function readBulletin(text: string, given: Given): Result<Reading> | null {
  const { sections, issuer, problems, subjects } = sectionsIn(text);
  if (sections.length === 0) return subjects.length > 0 ? bad({ kind: 'not a forecast', subjects }) : null;
  const zones = zonesOf(sections);
  const wanted = given.zones ?? [];
  const unknown = wanted.find((id) => !zones.some((zone) => isSame(zone.id, id)));
  if (unknown !== undefined)
    return bad({ kind: 'no such zone', zone: unknown, zones: zones.map(({ id }) => id) });
  const chosen = choose(sections, wanted);
  const asks = [
    ...(chosen.length === 0 ? [{ what: 'zone', zones } as const] : []),
    ...((chosen.length > 0 ? chosen : sections).some(({ issue }) => issue === null) &&
    given.issuedAt === undefined
      ? [{ what: 'issued' } as const]
      : []),
  ];
  if (asks.length > 0) return good({ asks });

  const places: PlaceForecast[] = [];
  const notRead: { where: string; text: string }[] = [];
  const odd: Problem[] = [...problems];
  const issues = chosen.map(({ issue }) => issue ?? issueGiven(given));
  for (const [i, section] of chosen.entries()) {
    const names = namesOf(section, wanted, given);
    const read = readSection(section, issues[i]!, given.now, chosen.length > 1 ? (names[0] ?? '') : '');
    places.push(...names.map((place) => ({ place, headlines: read.headlines, steps: read.steps })));
    notRead.push(...read.notRead);
    odd.push(...read.problems);
  }
  if (places.every(({ steps }) => steps.every(({ wind, seas }) => wind === null && seas === null)))
    return bad({ kind: 'no figures' });
  const issuedAt = new Date(Math.min(...issues.map(({ at }) => at))).toISOString();
  return good({ content: { source: 'bulletin', issuer, issuedAt, places, notRead, problems: odd } });
}

/** The sections wanted, the newest where a zone stands in two; all there is where nothing need be chosen; none where it must be. */
function choose(sections: readonly Section[], wanted: readonly string[]): readonly Section[] {
  if (wanted.length === 0) return sections.length === 1 ? sections : [];
  const found = wanted.flatMap((id) =>
    newest(sections.filter(({ zones }) => zones.some((zone) => isSame(zone, id)))),
  );
  return [...new Set(found)];
}

function newest(sections: readonly Section[]): readonly Section[] {
  return sections.toSorted((a, b) => (b.issue?.at ?? 0) - (a.issue?.at ?? 0)).slice(0, 1);
}

function namesOf({ zones }: Section, wanted: readonly string[], { place = '' }: Given): readonly string[] {
  if (zones.length === 0) return [place];
  return wanted.length === 0 ? zones : zones.filter((zone) => wanted.some((id) => isSame(id, zone)));
}

function zonesOf(sections: readonly Section[]): readonly Zone[] {
  const zones = new Map(
    sections.flatMap(({ zones: ids, name }) => ids.map((id) => [id, { id, name }] as const)),
  );
  return [...zones.values()];
}

function issueGiven({ issuedAt = 0, timeZone }: Given): Issue {
  return { at: issuedAt, aheadMinutes: Math.round((wallOf(issuedAt, timeZone) - issuedAt) / 60_000) };
}

function isSame(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}
