// Bulletins of the US National Weather Service and what a person reads in them: zones (NWS Universal Geographic Code, nws.noaa.gov/emwin/winugc.htm), times
// (NOAAPORT header line one, nws.noaa.gov/noaaport/html/hdr_ln1.shtml), and every period of texts in the public domain.
import { describe, expect, test } from 'vitest';
import { blocksIn, productsIn } from '../../source/forecast/bulletin/blocks.ts';
import { bulletinZones, readBulletin } from '../../source/forecast/bulletin/bulletin.ts';
import { highSeasSections } from '../../source/forecast/bulletin/high-seas.ts';
import { issueIn } from '../../source/forecast/bulletin/issue-time.ts';
import { readProse } from '../../source/forecast/bulletin/prose.ts';
import { summaryOf } from '../../source/forecast/bulletin/summary.ts';
import { purgeInstant, zoneLine } from '../../source/forecast/bulletin/zone-line.ts';
import { pointFrom } from '../../source/forecast/compass.ts';
import { FOOT_M } from '../../source/forecast/units.ts';
import { testBulletins } from '../helpers/bulletins.ts';
import { testPublished } from '../helpers/published.ts';

const FILES: { readonly [name: string]: string } = {
  'partial/CWF_KMTR_20251004_partial.txt': 'CWF_KMTR_20251004_partial.txt',
};

interface Check {
  readonly id: string;
  readonly input: {
    readonly file: string;
    readonly zone: string;
    readonly period: string;
    readonly local: string;
    readonly purge: string;
  };
  readonly expected: Expected;
}

interface Expected {
  readonly zones: readonly string[];
  readonly issued_from_local_line: string;
  readonly purge_utc: string;
  readonly dir?: string;
  readonly wind_kt?: readonly [number, number];
  readonly wind?: readonly {
    readonly dir: string;
    readonly kt: readonly [number, number];
    readonly gust_kt?: number;
  }[];
  readonly seas_ft?: readonly number[] | readonly (readonly [number, number])[];
  readonly waves_ft?: readonly (readonly [number, number])[];
  readonly occasional_ft?: number;
  readonly detail?: readonly (readonly [dir: string, ft: number, seconds: number])[];
}

describe('zones and times', () => {
  test.each([
    ['LMZ740>742-030315-', ['LMZ740', 'LMZ741', 'LMZ742']],
    ['GMZ130-132-135-212100-', ['GMZ130', 'GMZ132', 'GMZ135']],
  ])('%s', (line, zones) => {
    expect(zoneLine(line)?.zones).toEqual(zones);
  });

  testPublished<readonly Check[]>(
    'every zone line names its zones',
    'weather/11_bulletin_parse.json',
    (checks) => {
      const lines = checks.filter(({ id }) => id.startsWith('ugc-'));
      expect(lines.length).toBeGreaterThan(5);
      for (const { input, expected } of lines)
        expect(zoneLine(String(input))?.zones, String(input)).toEqual(expected.zones);
    },
  );

  testPublished<readonly Check[]>(
    'every issue line is its instant, and every purge time the first such one after it',
    'weather/11_bulletin_parse.json',
    (checks) => {
      const times = checks.filter(({ id }) => id.startsWith('time-'));
      expect(times.length).toBeGreaterThan(10);
      for (const { id, input, expected } of times) {
        const issue = issueIn(input.local);
        expect(issue && new Date(issue.at).toISOString(), id).toBe(
          new Date(expected.issued_from_local_line).toISOString(),
        );
        const purge = purgeInstant(input.purge, issue!.at);
        expect(purge && new Date(purge).toISOString(), id).toBe(new Date(expected.purge_utc).toISOString());
      }
    },
  );
});

describe('periods', () => {
  testBulletins('every clause of every period is read as it is written', (text) => {
    testPublishedPeriods(text);
  });

  testBulletins(
    'each real text is taken in with all its periods, and only what is not wind or sea is left over',
    (text) => {
      const read = (name: string, zone: string, now: string) =>
        readBulletin(text(name), {
          now: Date.parse(now),
          timeZone: 'UTC',
          zones: [zone],
          bare: { wind: 'kn', seas: 'm' },
        });
      const leftOver = (name: string, zone: string, now: string) => {
        const result = read(name, zone, now);
        return result?.ok && 'content' in result.value
          ? result.value.content.notRead.map((one) => one.text)
          : null;
      };
      expect(leftOver('pyiem_CWF_CWF_twoheadline.txt', 'PKZ851', '2025-01-03T10:00Z')).toEqual([
        'VSBY 1 NM OR LESS',
      ]);
      expect(leftOver('CWF_KMTR_20251004_partial.txt', 'PZZ570', '2025-10-04T22:00Z')).toEqual([]);
      expect(leftOver('NSH_KGRB_LMZ521_20261003.txt', 'LMZ521', '2026-10-03T01:00Z')).toEqual([]);
      expect(leftOver('NSH_KLOT_LMZ742_20261002.txt', 'LMZ741', '2026-10-02T20:00Z')).toEqual([
        'OCCASIONALLY TO 8 FT',
      ]);
    },
  );

  testBulletins(
    'a headline of small craft above a text that reaches a gale is said to stop short',
    (text) => {
      const result = readBulletin(text('pyiem_CWF_CWF_twoheadline.txt'), {
        now: Date.parse('2025-01-03T10:00Z'),
        timeZone: 'UTC',
        bare: { wind: 'kn', seas: 'm' },
      });
      expect(result).toMatchObject({ ok: true });
      const content = result?.ok && 'content' in result.value ? result.value.content : null;
      expect(content?.places[0]?.headlines.map((headline) => headline.text)).toEqual([
        'HEAVY FREEZING SPRAY WARNING IN EFFECT THROUGH EARLY SATURDAY MORNING',
        'SMALL CRAFT ADVISORY IN EFFECT THROUGH EARLY SATURDAY MORNING',
      ]);
      const short = content?.problems
        .filter(({ kind }) => kind === 'headline stops short')
        .map(({ where }) => where);
      expect(short).toEqual(['SAT', 'SAT NIGHT', 'SUN', 'SUN NIGHT', 'MON']);
    },
  );
});

describe('high seas', () => {
  testBulletins('the warnings of both parts, in feet, through the slips of the real text', (text) => {
    const name = 'HSF_AT_20180715_1030.txt';
    const zones = bulletinZones(text(name)).map(({ id }) => id);
    expect(zones).toEqual([
      'NORTH ATLANTIC NORTH OF 31N TO 67N AND WEST OF 35W',
      'ATLANTIC FROM 07N TO 31N W OF 35W INCLUDING CARIBBEAN SEA AND GULF OF MEXICO',
    ]);
    const [product] = productsIn(text(name));
    expect(highSeasSections(product!).flatMap(({ headlines }) => headlines)).toEqual([
      'TROPICAL STORM WARNING',
      'GALE WARNING',
      'CARIBBEAN GALE WARNING',
    ]);
    const result = readBulletin(text(name), {
      now: Date.parse('2018-07-15T11:00Z'),
      timeZone: 'UTC',
      zones: zones.slice(1),
      bare: { wind: 'kn', seas: 'm' },
    });
    expect(result).toMatchObject({
      ok: true,
      value: {
        content: {
          places: [
            {
              steps: [
                { from: '2018-07-15T06:00:00.000Z', wind: [30, 35] },
                { to: '2018-07-17T06:00:00.000Z', wind: [30, 35] },
              ],
            },
          ],
          // The text itself has lost the W of 72W.
          notRead: [{ text: 'BETWEEN 72 AND' }],
        },
      },
    });
  });
});

function testPublishedPeriods(text: (name: string) => string): void {
  const checks = JSON.parse(text('../11_bulletin_parse.json')) as readonly Check[];
  const periods = checks.filter(({ id }) => id.startsWith('per-'));
  expect(periods.length).toBeGreaterThan(15);
  for (const { id, input, expected } of periods) {
    const [product] = productsIn(text(FILES[input.file] ?? input.file));
    const block = blocksIn(product!).find(({ zones }) => zones.includes(input.zone));
    const period = block?.periods.find(({ label }) => label === input.period);
    expect(period, id).toBeDefined();
    expectClauses(id, period?.prose ?? '', expected);
  }
}

function expectClauses(id: string, prose: string, expected: Expected): void {
  const read = readProse(prose, 'knots');
  const { figures } = summaryOf(read);
  if (expected.wind_kt) {
    expect(figures.wind, id).toEqual(expected.wind_kt);
    expect(figures.dir, id).toBe(pointFrom(expected.dir ?? ''));
  }
  if (expected.wind) {
    expect(
      read.wind.map(({ dirs, low, high }) => ({ dir: dirs[0], kt: [low, high] })),
      id,
    ).toEqual(expected.wind.map(({ dir, kt }) => ({ dir: pointFrom(dir), kt })));
    expect(figures.gust, id).toBe(expected.wind.find(({ gust_kt: gust }) => gust)?.gust_kt ?? null);
  }
  const heights = expected.waves_ft ?? expected.seas_ft;
  const pairs = heights === undefined ? undefined : Array.isArray(heights[0]) ? heights : [heights];
  const feet = (metres: number) => Math.round((metres / FOOT_M) * 1000) / 1000;
  const of = (kind: string) => read.heights.filter((height) => height.of === kind);
  if (pairs)
    expect(
      of('all').map(({ low, high }) => [feet(low), feet(high)]),
      id,
    ).toEqual(pairs);
  expect(
    of('occasional').map(({ high }) => feet(high)),
    id,
  ).toEqual(expected.occasional_ft ? [expected.occasional_ft] : []);
  if (expected.detail)
    expect(
      of('part').map(({ high, period }) => [feet(high), period]),
      id,
    ).toEqual(expected.detail.map(([, ft, seconds]) => [ft, seconds]));
}
