import { readBulletin } from '../../source/forecast/bulletin/bulletin.ts';
import type { Content, Given } from '../../source/forecast/content.ts';

/** A bulletin in the form of a coastal waters forecast, of invented waters. */
export const COASTAL = `
412
FZXX51 KXXX 312100
CWFXXX

Coastal Waters Forecast for the Lantern Coast
National Weather Service Lantern Harbor
400 PM EST Sat Jan 31 2026

XXZ110-111-010315-
Lantern Sound north of Cape Aster-
Aster Bank out to 20 NM-
400 PM EST Sat Jan 31 2026

...GALE WARNING IN EFFECT FROM SUNDAY MORNING THROUGH SUNDAY
AFTERNOON...

.TONIGHT...SE winds 10 to 15 kt with gusts up to 22 kt. Seas 3 to
5 ft. A chance of rain 40 percent.
.SUN...SE winds 20 to 25 kt increasing to 30 to 35 kt in the
afternoon. Gusts up to 45 kt. Seas building to 8 to
11 ft. Dominant period 9 seconds.
.SUN NIGHT...S winds 30 to 35 kt becoming SW 20 to 25 kt after midnight.
Seas 9 to 12 ft.
.MON...W winds to 20 knots. Seas 6 ft or less.
.TUE...Light and variable winds. Seas 1 to 2 ft.

$$

XXZ120-010315-
Harrow Bay-
400 PM EST Sat Jan 31 2026

.TONIGHT...E winds 5 to 10 kt. Seas 1 foot or less.

$$
`;

export const HEARD_AT = Date.parse('2026-01-31T22:00Z');

export function aGiven(change: Partial<Given> = {}): Given {
  return { now: HEARD_AT, timeZone: 'America/New_York', bare: { wind: 'kn', seas: 'm' }, ...change };
}

/** What a bulletin comes to, or an error with what stands in the way. */
export function contentOf(text: string, change: Partial<Given> = {}): Content {
  const read = readBulletin(text, aGiven(change));
  if (!read?.ok || !('content' in read.value)) throw new Error(`no content: ${JSON.stringify(read)}`);
  return read.value.content;
}
