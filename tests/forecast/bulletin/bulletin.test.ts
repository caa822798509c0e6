import { describe, expect, test } from 'vitest';
import { bulletinZones, readBulletin } from '../../../source/forecast/bulletin/bulletin.ts';
import { aGiven, COASTAL, contentOf, HEARD_AT } from '../../helpers/a-bulletin.ts';

const feet = (...heights: readonly number[]) => heights.map((height) => expect.closeTo(height * 0.3048, 6));

describe('a coastal forecast', () => {
  const content = contentOf(COASTAL, { zones: ['xxz110'] });

  test('becomes one step for each period, each with the worst of its clauses', () => {
    expect(content).toMatchObject({
      source: 'bulletin',
      issuer: 'National Weather Service Lantern Harbor',
      issuedAt: '2026-01-31T21:00:00.000Z',
    });
    const [place] = content.places;
    expect(content.places).toHaveLength(1);
    expect(place?.place).toBe('XXZ110');
    expect(place?.steps).toMatchObject([
      { label: 'TONIGHT', wind: [10, 15], dir: 135, gust: 22, seas: feet(3, 5), period: null },
      { label: 'SUN', wind: [30, 35], dir: 135, gust: 45, seas: feet(8, 11), period: 9, periodKind: 'peak' },
      { label: 'SUN NIGHT', wind: [30, 35], dir: 180, otherDirs: [225], gust: null, seas: feet(9, 12) },
      { label: 'MON', wind: [20, 20], dir: 270, seas: feet(6, 6) },
      { label: 'TUE', wind: [0, 10], dir: null, seas: feet(1, 2) },
    ]);
  });

  test('has its periods in local hours of its own zone: the first from the issue on, a day without a night for both', () => {
    expect(content.places[0]?.steps.map(({ from, to }) => [from.slice(5, 16), to.slice(5, 16)])).toEqual([
      ['01-31T21:00', '02-01T11:00'],
      ['02-01T11:00', '02-01T23:00'],
      ['02-01T23:00', '02-02T11:00'],
      ['02-02T11:00', '02-03T11:00'],
      ['02-03T11:00', '02-04T11:00'],
    ]);
  });

  test('keeps its headline, over two lines, with its hours', () => {
    expect(content.places[0]?.headlines).toEqual([
      {
        text: 'GALE WARNING IN EFFECT FROM SUNDAY MORNING THROUGH SUNDAY AFTERNOON',
        level: 'warning',
        about: 'gale',
        from: '2026-02-01T11:00:00.000Z',
        to: '2026-02-01T23:00:00.000Z',
      },
    ]);
  });

  test('says that the gale goes on behind the headline, what it took from words, and every digit it did not read', () => {
    expect(content.notRead).toEqual([{ where: 'TONIGHT', text: 'A CHANCE OF RAIN 40 PERCENT' }]);
    expect(content.problems).toEqual([
      { kind: 'from words', where: 'TUE' },
      { kind: 'headline stops short', where: 'SUN NIGHT', value: 35 },
    ]);
  });

  test('past its purge time, which has no month of its own, it is said to be', () => {
    const late = contentOf(COASTAL, { zones: ['XXZ110'], now: Date.parse('2026-02-01T04:00Z') });
    expect(late.problems).toContainEqual({
      kind: 'past its purge time',
      where: 'XXZ110',
      text: '2026-02-01T03:15:00.000Z',
    });
  });
});

describe('a text for several waters', () => {
  test('names them', () => {
    expect(bulletinZones(COASTAL)).toEqual([
      { id: 'XXZ110', name: 'Lantern Sound north of Cape Aster; Aster Bank out to 20 NM' },
      { id: 'XXZ111', name: 'Lantern Sound north of Cape Aster; Aster Bank out to 20 NM' },
      { id: 'XXZ120', name: 'Harrow Bay' },
    ]);
  });

  test('is asked about where none was chosen', () => {
    expect(readBulletin(COASTAL, aGiven())).toEqual({
      ok: true,
      value: { asks: [{ what: 'zone', zones: bulletinZones(COASTAL) }] },
    });
  });

  test('is taken in for those chosen, each a place', () => {
    const { places } = contentOf(COASTAL, { zones: ['XXZ120', 'XXZ111'] });
    expect(places.map(({ place, steps }) => [place, steps.length])).toEqual([
      ['XXZ120', 1],
      ['XXZ111', 5],
    ]);
  });

  test('is in trouble for a zone it does not have', () => {
    expect(readBulletin(COASTAL, aGiven({ zones: ['XXZ999'] }))).toEqual({
      ok: false,
      troubles: [{ kind: 'no such zone', zone: 'XXZ999', zones: ['XXZ110', 'XXZ111', 'XXZ120'] }],
    });
  });

  test('is taken apart where the marks between its zones were lost', () => {
    const { places, problems } = contentOf(COASTAL.replace('$$', ''), { zones: ['XXZ110'] });
    expect(places[0]?.steps).toHaveLength(5);
    expect(problems.map(({ kind }) => kind)).not.toContain('cut short');
  });

  test('in two bulletins of one mail is taken from the newer', () => {
    const older = COASTAL.replaceAll('400 PM EST Sat Jan 31', '1000 AM EST Sat Jan 31').replace(
      'SE winds 10 to 15',
      'SE winds 50 to 60',
    );
    for (const mail of [`${older}\n${COASTAL}`, `${COASTAL}\n${older}`]) {
      const { issuedAt, places } = contentOf(mail, { zones: ['XXZ110'] });
      expect([issuedAt, places[0]?.steps[0]?.wind]).toEqual(['2026-01-31T21:00:00.000Z', [10, 15]]);
    }
  });
});

describe('what a text does not say', () => {
  const undated = '.TONIGHT...SE winds 10 to 15 kt. Seas 3 to 5 ft.\n.SUN...E winds 20 kt. Seas 6 ft.\n$$\n';

  test('its issue time is asked, never assumed', () => {
    expect(readBulletin(undated, aGiven())).toEqual({ ok: true, value: { asks: [{ what: 'issued' }] } });
  });

  test('once told, its hours are those of the clocks aboard', () => {
    const { issuedAt, places } = contentOf(undated, { issuedAt: HEARD_AT, place: 'Aster Bank' });
    expect(issuedAt).toBe('2026-01-31T22:00:00.000Z');
    expect(places[0]).toMatchObject({ place: 'Aster Bank', steps: [{ to: '2026-02-01T11:00:00.000Z' }, {}] });
  });

  test('no warning is inferred from wind: limits for small craft differ by region', () => {
    const { places, problems } = contentOf(undated.replace('20 kt', '28 kt'), { issuedAt: HEARD_AT });
    expect(places[0]?.headlines).toEqual([]);
    expect(problems).toEqual([{ kind: 'no gusts', where: '' }]);
  });

  test('seas it does not give are missing, and it says so; they are never 0', () => {
    const { places, problems } = contentOf(undated.replace('Seas 3 to 5 ft.', ''), { issuedAt: HEARD_AT });
    expect(places[0]?.steps[0]?.seas).toBeNull();
    expect(problems).toContainEqual({ kind: 'no seas', where: 'TONIGHT' });
  });

  test('a text without a figure of wind or sea is in trouble', () => {
    expect(readBulletin('.TONIGHT...Fair.\n', aGiven({ issuedAt: HEARD_AT }))).toEqual({
      ok: false,
      troubles: [{ kind: 'no figures' }],
    });
  });

  test('a period whose label names no time is left over whole', () => {
    const odd = contentOf(`${undated.replace('$$', '')}.LATER ON...S winds 40 kt.\n$$`, {
      issuedAt: HEARD_AT,
    });
    expect(odd.places[0]?.steps).toHaveLength(2);
    expect(odd.problems).toContainEqual({ kind: 'label not read', where: 'LATER ON' });
    expect(odd.notRead).toEqual([{ where: 'LATER ON', text: 'S winds 40 kt.' }]);
  });
});

describe('dots in the old manner', () => {
  const old = (body: string) =>
    contentOf(`400 PM EST Sat Jan 31 2026\n\n${body}\n\n$$\n`).places[0]?.steps.map(
      ({ label, wind, seas }) => [label, wind, seas?.[1]],
    );
  const [five, eight] = feet(5, 8);

  test('a clause that begins a line with dots is no headline, and hides no period below it', () => {
    expect(
      old(
        '.TONIGHT...NW WINDS 15 KT...SEAS 5 FT\n...BUILDING TO 8 FT LATE.\n.SUN...W WINDS 20 KT. SEAS 5 FT.',
      ),
    ).toEqual([
      ['TONIGHT', [15, 15], eight],
      ['SUN', [20, 20], five],
    ]);
  });

  test('a word at the beginning of a line is no new period where periods have their points', () => {
    expect(
      old('.TODAY...NW WINDS 15 KT BECOMING W\nTONIGHT...SEAS 5 FT.\n.SUN...W WINDS 20 KT. SEAS 5 FT.'),
    ).toEqual([
      ['TODAY', [15, 15], five],
      ['SUN', [20, 20], five],
    ]);
  });

  test('periods may have lost the line feeds between them', () => {
    expect(
      old(
        '.TONIGHT...NW wind 15 kt. Seas 5 ft. .SUN...W wind 20 kt. Seas 8 ft. .MON...W wind 20 kt. Seas 5 ft.',
      ),
    ).toHaveLength(3);
  });

  test('labels may have lost their points', () => {
    expect(old('TONIGHT...NW WINDS 15 KT. SEAS 5 FT.\nSUN...W WINDS 20 KT. SEAS 8 FT.')).toEqual([
      ['TONIGHT', [15, 15], five],
      ['SUN', [20, 20], eight],
    ]);
  });
});

describe('a text that breaks off', () => {
  test.each([
    ['SE winds 20 to 3', null],
    ['SE winds 20 to 30 kt. Seas 1', [20, 30]],
    ['SE winds 20 to 30 kt', null],
  ])('"%s": half a figure is none', (end, wind) => {
    const text = `400 PM EST Sat Jan 31 2026\n.TONIGHT...W winds 10 kt. Seas 2 ft.\n.SUN...${end}`;
    const { places, notRead, problems } = contentOf(text);
    expect(places[0]?.steps.at(-1)?.wind).toEqual(wind);
    expect(problems).toContainEqual({ kind: 'cut short', where: '' });
    expect(notRead).toContainEqual({ where: 'SUN', text: end.slice(end.lastIndexOf('.') + 1).trim() });
  });
});

test('prose and tables are no bulletins', () => {
  for (const text of [
    '',
    'Dear all, the weather is 15 to 20 kt. See you at 7.',
    'se 15-20 4-6',
    'a,b\n1,2\n',
  ])
    expect(readBulletin(text, aGiven()), text).toBeNull();
});
