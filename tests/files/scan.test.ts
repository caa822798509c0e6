import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Disk, realDisk } from '../../source/files/disk.ts';
import { splitFileName } from '../../source/files/log-file.ts';
import { mostJunkLines, scan } from '../../source/files/scan.ts';
import { type Line, mostLineBytes, readLine, writeLine } from '../../source/logbook/line.ts';
import { crcOf } from '../helpers/a-laptop.ts';

/** A disk that holds one file, and gives at most so many bytes at a time. */
function aDisk(bytes: Uint8Array, most = bytes.length): Disk {
  return {
    ...realDisk,
    read: (_, into, position) => {
      const got = bytes.subarray(position, position + Math.min(most, into.length));
      into.set(got);
      return got.length;
    },
  };
}

const textOf = (line: Line | null | undefined) => (line && 'text' in line ? line.text : undefined);
const scanned = (bytes: Uint8Array, most?: number, from = 0) => scan(aDisk(bytes, most), 0, from, crcOf);

describe('scanning a log file', () => {
  it('finds the same lines whatever pieces it is read in, and where they end', () => {
    const line = fc.uint8Array({ maxLength: 40 }).map((bytes) => bytes.filter((byte) => byte !== 0x0a));
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 20 }),
        line,
        fc.integer({ min: 1, max: 50 }),
        (lines, tail, most) => {
          const bytes = Buffer.concat([...lines.map((one) => Buffer.concat([one, Buffer.of(0x0a)])), tail]);
          expect(scanned(bytes, most)).toEqual({
            lines: lines.map((one) => readLine(one, crcOf)),
            end: bytes.length - tail.length,
            tail: tail.length > 0 ? readLine(tail, crcOf) : null,
            givenUp: false,
          });
        },
      ),
    );
  });

  it('reads sound lines together as it reads each by itself, also where some are damaged or of another version', () => {
    const record = fc.record({
      ...{ v: fc.constantFrom(1, 1, 1, 2), id: fc.nat(99).map((n) => `k7m2q9xd-${n + 1}`) },
      ...{
        p: fc.constant('00000000'),
        lc: fc.constantFrom(1, 7, -1),
        at: fc.constant('2026-02-03T07:42:00Z'),
      },
      ...{ rec: fc.constant('2026-02-03T07:42:00Z'), kind: fc.constantFrom('remark', 'remark', 'strange') },
      text: fc.string({ unit: 'grapheme', maxLength: 20 }),
    });
    const written = record.map((one) => writeLine(one, crcOf).bytes);
    const damaged = fc.tuple(written, fc.nat()).map(([bytes, at]) => {
      const changed = Uint8Array.from(bytes);
      changed[at % (bytes.length - 1)] = 0x41;
      return changed;
    });
    const line = fc.oneof({ weight: 30, arbitrary: written }, { weight: 1, arbitrary: damaged });
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 20 }), (lines) => {
        const one = (bytes: Uint8Array) => readLine(bytes.subarray(0, -1), crcOf);
        expect(scanned(Buffer.concat(lines)).lines).toEqual(lines.map(one));
      }),
    );
  });

  it('never takes lines that are JSON only together for entries', () => {
    const closed = (body: string) => `${body},"crc":"${crcOf(body).toString(16).padStart(8, '0')}"}\n`;
    const apart = [closed('{"a":[{"b":1'), closed('{"c":2}],"d":3')];
    const two = [closed('{"a":1},{"b":2'), closed('{"c":[1')];
    for (const lines of [apart, two, [...apart, ...two]]) {
      const each = lines.map((text) => readLine(Buffer.from(text.slice(0, -1)), crcOf));
      expect(scanned(Buffer.from(lines.join(''))).lines).toEqual(each);
      expect(each.every(({ how }) => how !== 'entry')).toBe(true);
    }
  });

  it('never takes two records under one checksum for an entry, though the first repeats that checksum', () => {
    const entry =
      '{"v":1,"id":"k7m2q9xd-1","p":"00000000","lc":1,"at":"2026-02-03T07:42:00Z","rec":"2026-02-03T07:42:00Z","kind":"remark","text":"fog","crc":"12345678"}';
    const body = `${entry},{"text":"bcbbccccccbbccbcbcbcbbcbbcbbccbbbbbbbbbb"`;
    expect(crcOf(body)).toBe(0x12345678);
    expect(scanned(Buffer.from(`${body},"crc":"12345678"}\n`)).lines).toMatchObject([
      { how: 'values', frame: null },
    ]);
  });

  it('refuses a key that could reach an object’s machinery, and reads the lines beside it', () => {
    const closed = (body: string) => `${body},"crc":"${crcOf(body).toString(16).padStart(8, '0')}"}\n`;
    const sound = (n: number, more = '') =>
      closed(
        `{"v":1,"id":"k7m2q9xd-${n}","p":"00000000","lc":${n},"at":"2026-02-03T07:42:00Z","rec":"2026-02-03T07:42:00Z","kind":"remark","text":"fog"${more}`,
      );
    const lines = [sound(1), sound(2, ',"__proto__":{"kind":"go"}'), sound(3)].join('');
    expect(scanned(Buffer.from(lines)).lines.map(({ how }) => how)).toEqual(['entry', 'values', 'entry']);
  });

  it('passes over a line of many megabytes, and reads on after it', () => {
    const bytes = Buffer.concat([
      Buffer.from('first\n'),
      Buffer.alloc(3_000_000, 'x'),
      Buffer.from('\nlast\nrest'),
    ]);
    const { lines, end, tail } = scanned(bytes);
    expect(lines.map((line) => [line.how, textOf(line)?.slice(0, 5)])).toEqual([
      ['not json', 'first'],
      ['too long', 'xxxxx'],
      ['not json', 'last'],
    ]);
    expect(end).toBe(bytes.length - 4);
    expect(textOf(tail)).toBe('rest');
    expect(scanned(bytes, 1000)).toEqual({ lines, end, tail, givenUp: false });
  });

  it('takes a line of the greatest length, and no longer one', () => {
    const of = (length: number) => scanned(Buffer.from(`${'x'.repeat(length)}\n`)).lines[0]?.how;
    expect([of(mostLineBytes), of(mostLineBytes + 1)]).toEqual(['not json', 'too long']);
  });

  it('gives up where more is junk than a power cut can leave, and not for lines changed by hand', () => {
    const { lines, givenUp } = scanned(Buffer.from('\n'.repeat(1_000_000)));
    expect(givenUp).toBe(true);
    expect(lines.length).toBeGreaterThan(mostJunkLines);
    expect(lines.length).toBeLessThan(400_000);
    const edited = scanned(Buffer.from('{}\n'.repeat(mostJunkLines + 2)));
    expect([edited.lines.length, edited.givenUp]).toEqual([mostJunkLines + 2, false]);
  });

  it('goes on from where it ended', () => {
    const bytes = Buffer.from('one\ntwo\nthree\n');
    expect(scanned(bytes, undefined, 4).lines.map(textOf)).toEqual(['two', 'three']);
    expect(scanned(bytes, undefined, 4).end).toBe(bytes.length);
  });
});

describe('the name of a log file', () => {
  it('tells its writer and segment, and no other name is one', () => {
    expect(splitFileName('k7m2q9xd.ndjson')).toEqual({ writer: 'k7m2q9xd', segment: 1 });
    expect(splitFileName('k7m2q9xd-0012.ndjson')).toEqual({ writer: 'k7m2q9xd', segment: 12 });
    for (const other of [
      'k7m2q9xd-0001.ndjson',
      'k7m2q9xd-2.ndjson',
      'k7m2q9x.ndjson',
      'K7M2Q9XD.ndjson',
      'k7m2q9xd.ndjson.new',
      '.ndjson',
    ]) {
      expect(splitFileName(other), other).toBeNull();
    }
  });
});
