import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readForecast } from '../../source/forecast/recognise.ts';
import { sayTrouble } from '../../source/words/troubles.ts';
import { COASTAL, HEARD_AT } from '../helpers/a-bulletin.ts';
import { forecastOf, read, SHA256 } from '../helpers/a-forecast.ts';

const issuedAt = Date.parse('2026-02-03T06:00Z');
const bulletin = { now: HEARD_AT, zones: ['XXZ110'] };

describe('a source is recognised by what is in it', () => {
  test('GRIB by its first letters, also behind the text of a mail', () => {
    const grib = [...'GRIB'].map((letter) => letter.charCodeAt(0));
    const mail = [...'Subject: your file\n\n'].map((letter) => letter.charCodeAt(0));
    expect(read(Uint8Array.from([...grib, 0, 0, 0, 2, 0, 0]))).toEqual({ ok: true, value: { kind: 'grib' } });
    expect(read(Uint8Array.from([...mail, ...grib, 0, 1, 2, 1, 0, 0]))).toEqual({
      ok: true,
      value: { kind: 'grib' },
    });
    expect(read('The GRIB files are not here today', { issuedAt }).ok).toBe(false);
  });

  test('a bulletin, rows, and a sentence', () => {
    expect(forecastOf(COASTAL, bulletin).source).toBe('bulletin');
    expect(forecastOf('se 15-20 g28 2m 7s\n=\n', { issuedAt })).toMatchObject({
      source: 'typed',
      places: [{ steps: [{}, {}] }],
    });
    const sentence = forecastOf(
      'SE winds 15 to 20 kt with gusts\nto 28. Seas 4 to 6 ft.\n\nW winds 10 kt. Seas 2 ft.\n',
      { issuedAt },
    );
    expect(sentence.places[0]?.steps).toMatchObject([{ wind: [15, 20], gust: 28 }, { wind: [10, 10] }]);
  });

  test('it carries when it was received and what it was read from', () => {
    expect(forecastOf(COASTAL, bulletin)).toMatchObject({
      format: 1,
      receivedAt: '2026-01-31T22:00:00.000Z',
      sha256: SHA256,
    });
  });

  test.each<[string, readonly number[] | string]>([
    ['a NetCDF file', 'CDF\u0001'],
    ['a zip file: unpack it first', 'PK\u0003\u0004'],
    ['a PDF', '%PDF-1.7'],
    ['a gzip file: unpack it first', [0x1f, 0x8b, 8, 0]],
    ['a file of bytes, not of text', Array.from({ length: 64 }, (_, i) => (i % 3 === 0 ? 0 : 65))],
    ['a web page', '<!DOCTYPE html><html><body>SE 15</body></html>'],
    ['JSON of another kind', '{"boat": "Whimbrel"}'],
    ['JSON of another kind', '[]'],
    ['what the weather is now, without hours to come', '{"current": {"wave_height": 0.8}}'],
  ])('%s is named, not read', (what, source) => {
    expect(read(typeof source === 'string' ? source : Uint8Array.from(source), { issuedAt })).toEqual({
      ok: false,
      troubles: [{ kind: 'foreign file', what }],
    });
  });
});

describe('nothing is taken in by halves', () => {
  test('an empty source', () => {
    for (const source of ['', ' \n\n', '\u001b[31m\u001b[0m', '\ufeff'])
      expect(read(source, { issuedAt })).toEqual({ ok: false, troubles: [{ kind: 'forecast empty' }] });
  });

  test('JSON cut short', () => {
    expect(read('{"hourly": {"time": ["2026-02-03T0', { issuedAt })).toMatchObject({
      ok: false,
      troubles: [{ kind: 'table not understood', where: 'the file' }],
    });
  });

  test('a letter from home', () => {
    const letter = 'Dear both,\nall is well here. The cat is 12 now.\nCome home in 2027!\n';
    expect(read(letter, { issuedAt })).toEqual({ ok: false, troubles: [{ kind: 'no figures' }] });
  });

  test('one that ended yesterday, with when it did', () => {
    expect(read(COASTAL, { ...bulletin, now: Date.parse('2026-02-05T12:00Z') })).toEqual({
      ok: false,
      troubles: [
        { kind: 'forecast over', ended: '2026-02-04T11:00:00.000Z', now: '2026-02-05T12:00:00.000Z' },
      ],
    });
  });

  test('one issued two days ago is taken, and said to be old; one from the future likewise', () => {
    const problems = (now: string) => forecastOf(COASTAL, { ...bulletin, now: Date.parse(now) }).problems;
    expect(problems('2026-02-02T22:00Z')[0]).toEqual({ kind: 'old', where: '', value: 49 });
    expect(problems('2026-01-31T18:00Z')[0]).toEqual({ kind: 'ahead of now', where: '', value: 3 });
    expect(problems('2026-01-31T21:30Z').map(({ kind }) => kind)).not.toContain('old');
  });

  test('escape codes are taken out, make no two figures one, and are said', () => {
    const coloured = COASTAL.replace('SE winds 10 to', 'SE winds \u001b[31m2\u001b[0m10\u0007 to');
    const forecast = forecastOf(coloured, bulletin);
    expect(forecast.places[0]?.steps[0]?.wind).toEqual([10, 15]);
    expect(forecast.problems).toContainEqual({ kind: 'control codes', where: '' });
    expect(forecast.notRead.map(({ text }) => text).join()).toContain('2');
    expect(JSON.stringify(forecast)).not.toMatch(/\\u00(?:1b|07)/i);
  });

  test('line ends of any kind read alike, and letters of old receivers are no trouble', () => {
    const { places } = forecastOf(COASTAL, bulletin);
    expect(forecastOf(COASTAL.replaceAll('\n', '\r\r\n'), bulletin).places).toEqual(places);
    expect(forecastOf(COASTAL.replaceAll('\n', '\r'), bulletin).places).toEqual(places);
    const latin = Uint8Array.from(
      [...COASTAL.replace('A chance', 'Temp 4\u00b0. A chance')].map((letter) => letter.charCodeAt(0)),
    );
    expect(forecastOf(latin, bulletin).places).toEqual(places);
  });

  test('long JSON is known for JSON behind its mark, wherever its first bytes are cut', () => {
    for (const pad of ['', 'a']) {
      const json = `\ufeff{"${pad}${'\u00e9'.repeat(1000)}":"${'x'.repeat(600_000)}"}`;
      expect(read(json, { issuedAt })).toMatchObject({ troubles: [{ kind: 'foreign file' }] });
    }
  });

  test('50 MB of text are not read at all', () => {
    const huge = new Uint8Array(50_000_000).fill(0x41);
    expect(read(huge, { issuedAt })).toEqual({
      ok: false,
      troubles: [{ kind: 'forecast too long', bytes: 50_000_000, most: 500_000 }],
    });
    expect(read('se 15 '.repeat(100_000), { issuedAt })).toMatchObject({
      ok: false,
      troubles: [{ kind: 'forecast too long' }],
    });
  });
});

test('whatever becomes of a bulletin on its way, nothing is thrown, and what is in trouble can be said', () => {
  const sources = [
    COASTAL,
    'Aster\nSouthwest 5 to 7. Moderate.\n',
    'ZCZC GE41\n.SUN...N 5 KT. SEAS 2 FT.\nNNNN\n',
    'se 15-20 2m\n=\n',
    '{"hourly":{"time":[1770102000],"wave_height":[1]},"hourly_units":{"wave_height":"m"}}',
    'from,wind_kn\n2026-02-03T06:00Z,15\n',
  ];
  const pieces = [
    '$$',
    '...',
    '.SUN...',
    '\n',
    '999',
    '-',
    'XXZ1>9-010315-\n',
    'KT',
    '"',
    '}',
    ',',
    '\u001b[2J',
    '*',
    '\u0000',
    'ZCZC GE41\n',
    'HIGH SEAS FORECAST\n',
    '1e999',
    'null',
  ];
  const change = fc.record({ at: fc.nat(1500), cut: fc.nat(20), piece: fc.constantFrom(...pieces, '') });
  fc.assert(
    fc.property(
      fc.constantFrom(...sources),
      fc.array(change, { minLength: 1, maxLength: 8 }),
      fc.boolean(),
      (source, changes, dated) => {
        let text = source;
        for (const { at, cut, piece } of changes)
          text = text.slice(0, at % (text.length + 1)) + piece + text.slice((at % (text.length + 1)) + cut);
        const result = readForecast(new TextEncoder().encode(text), {
          now: HEARD_AT,
          timeZone: 'Europe/London',
          bare: { wind: 'kn', seas: 'm' },
          sha256: SHA256,
          ...(dated ? { issuedAt: HEARD_AT } : {}),
        });
        if (!result.ok) expect(result.troubles.map(sayTrouble).join('').length).toBeGreaterThan(0);
      },
    ),
    { seed: 4, numRuns: 2000 },
  );
});
