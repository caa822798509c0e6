import { describe, expect, it } from 'vitest';
import { type GribProblem, readGrib } from '../../../source/forecast/grib/read.ts';
import { expected, gribFile, valuesOf } from '../../helpers/grib-files.ts';

const HOUR_MS = 3_600_000;

describe('the headers of a GRIB file', () => {
  it('tell what each field is before any value is read', () => {
    const [wind] = readGrib(gribFile('several-fields')).messages;
    expect(wind).toMatchObject({
      message: 1,
      edition: 2,
      centre: 7,
      parameter: { code: '0-2-2', name: 'wind u', quantity: 'wind u' },
      quantity: 'wind u',
      unused: null,
      level: { type: 103, value: 10 },
      referenceTime: Date.UTC(2026, 1, 3, 6),
      from: Date.UTC(2026, 1, 3, 12),
      to: Date.UTC(2026, 1, 3, 12),
      member: null,
      grid: { columns: 9, rows: 7, north: 42, west: -12, rowDeg: 0.5, columnDeg: 0.5, round: false },
      packed: { packing: 'simple', count: 63, bitmap: null },
    });
  });

  it('find all the fields one message holds', () => {
    const fields = readGrib(gribFile('several-fields')).messages;
    expect(fields.map(({ message, quantity }) => [message, quantity])).toEqual([
      [1, 'wind u'],
      [1, 'wind v'],
      [1, 'gust'],
    ]);
  });

  it('count minutes, three hours and hours beyond 255 as such', () => {
    const lead = (name: string) => {
      const [field] = readGrib(gribFile(name)).messages;
      return (field!.to - field!.referenceTime) / HOUR_MS;
    };
    expect(['minutes-1', 'minutes-2', 'three-hours-1', 'long-lead-1', 'before-2'].map(lead)).toEqual([
      1.5, 1.5, 21, 300, -6,
    ]);
  });

  it.each(['greatest-gust-1', 'greatest-gust-2'])(
    '%s: the greatest of a span keeps both its ends',
    (name) => {
      const [gust] = readGrib(gribFile(name)).messages;
      expect(gust).toMatchObject({
        quantity: 'gust',
        from: Date.UTC(2026, 1, 3, 9),
        to: Date.UTC(2026, 1, 3, 12),
      });
    },
  );

  it.each(['members-1', 'members-2'])(
    '%s: members of an ensemble carry their number, the control 0',
    (name) => {
      expect(readGrib(gribFile(name)).messages.map(({ member }) => member)).toEqual([0, 1, 2]);
    },
  );

  it('give fields on grids alike the same grid', () => {
    const grids = new Set(readGrib(gribFile('forecast')).messages.map(({ grid }) => grid));
    expect(grids.size).toBe(1);
  });
});

describe('what is not taken', () => {
  it('a part of the swell is never the sea', () => {
    const { messages, skipped } = readGrib(gribFile('swell-parts'));
    expect(messages.map(({ quantity }) => quantity)).toEqual([null, null, null, 'seas']);
    expect(skipped.map(({ what, why }) => `${what}: ${why.name}`)).toEqual([
      'significant height of swell: part 1 of the swell',
      'significant height of swell: part 2 of the swell',
      'significant height of swell: part 3 of the swell',
    ]);
  });

  it.each([
    ['wind-aloft', { what: 'wind u', why: { kind: 'level', name: '100 m' } }],
    [
      'spread',
      {
        what: 'significant height of wind waves and swell',
        why: { kind: 'product', name: 'the spread of an ensemble' },
      },
    ],
  ])('%s can be read and is said to be of no use', async (name, skipped) => {
    const file = readGrib(gribFile(name));
    expect(file.skipped).toEqual([{ ...skipped, fields: 1, message: 1 }]);
    expect(await valuesOf(file.messages[0]!)).toHaveLength(9);
  });

  it.each([
    ['refused-lambert', { kind: 'grid', name: 'Lambert conformal' }],
    ['refused-gaussian-1', { kind: 'grid', name: 'Gaussian' }],
    ['refused-png', { kind: 'packing', name: 'PNG' }],
    ['refused-second-order-1', { kind: 'packing', name: 'second-order packing' }],
  ])('%s is refused by name', (name, why) => {
    const { messages, skipped } = readGrib(gribFile(name));
    expect(messages).toEqual([]);
    expect(skipped).toMatchObject([{ why, fields: 1, message: 1 }]);
  });

  it('a grid too large to be a forecast by mail is refused before room is made for it', () => {
    const octets = gribFile('constant-2');
    const at = 16 + 21;
    const size = new DataView(octets.buffer, octets.byteOffset);
    size.setUint32(at + 6, 40_000 * 40_000);
    size.setUint32(at + 30, 40_000);
    size.setUint32(at + 34, 40_000);
    expect(readGrib(octets).skipped[0]!.why).toEqual({
      kind: 'grid',
      name: '40000 x 40000 points, more than are read',
    });
  });
});

describe('what mail and downloads do to a file', () => {
  it('text before and after the messages is passed over and counted', () => {
    const { messages, problems } = readGrib(gribFile('mail-text'));
    expect(messages).toHaveLength(2);
    expect(problems).toEqual([{ kind: 'text around', octets: 92 + 7 }]);
  });

  it('zeros that fill up a block are no text', () => {
    const octets = new Uint8Array(1024);
    octets.set(gribFile('one-point'));
    expect(readGrib(octets)).toMatchObject({ problems: [], messages: [{ quantity: 'seas' }] });
  });

  it('a download cut short keeps its whole messages and says what is missing of the next', async () => {
    const { messages, problems } = readGrib(gribFile('cut-short'));
    expect(messages).toHaveLength(1);
    expect(await valuesOf(messages[0]!)).toHaveLength(expected['simple-2']![0]!.points.length);
    expect(problems).toMatchObject([
      {
        kind: 'cut short',
        message: 2,
        missing: 50,
        of: {
          parameter: { name: 'significant height of wind waves and swell' },
          from: Date.UTC(2026, 1, 3, 9),
        },
      },
    ]);
  });

  it('cut before its headers are through, it says how much is missing and no more', () => {
    const whole = gribFile('simple-2');
    const { messages, problems } = readGrib(whole.subarray(0, 60));
    expect(messages).toEqual([]);
    expect(problems).toMatchObject([{ kind: 'cut short', message: 1, missing: whole.length - 60, of: null }]);
  });

  it.each([
    ['mangled-line-ends', 'line ends added'],
    ['mangled-line-ends-lost', 'line ends lost'],
    ['mangled-seven-bits', 'seven bits'],
    ['mangled-utf-8', 'UTF-8'],
  ])('%s: a transfer meant for text is recognised', (name, how) => {
    const problems: readonly GribProblem[] = readGrib(gribFile(name)).problems;
    expect(problems).toContainEqual({ kind: 'mangled', how });
  });

  it('a cut file is not taken for one sent as text', () => {
    const whole = gribFile('forecast');
    for (let length = 20; length < whole.length; length += 7) {
      const { problems } = readGrib(whole.subarray(0, length));
      expect(
        problems.map(({ kind }) => kind).filter((kind) => kind !== 'cut short' && kind !== 'text around'),
      ).toEqual([]);
    }
  });

  it.each([
    ['nothing at all', ''],
    ['a letter about GRIB files', 'Dear skipper, the GRIB you asked for was too large. GRIB, 12 pages.'],
  ])('%s holds no message', (_, letter) => {
    expect(readGrib(new TextEncoder().encode(letter))).toEqual({
      messages: [],
      problems: [{ kind: 'nothing found' }],
      skipped: [],
    });
  });
});
