import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryKinds } from '../../source/logbook/entries.ts';
import { mostCount, mostLineBytes, readLine, splitId, writeLine } from '../../source/logbook/line.ts';
import { aLaptop, aRemark, crcOf } from '../helpers/a-laptop.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);
const golden = readFileSync(join(import.meta.dirname, 'golden-v1.ndjson'), 'utf8')
  .split('\n')
  .slice(0, -1);

/** A line framed rightly around whatever record is given. */
function framed(record: object): Uint8Array {
  return writeLine(record, crcOf).bytes.subarray(0, -1);
}

const sound = { v: 1, id: 'k7m2q9xd-118', p: '9f3a12cd', lc: 342 };
const remark = {
  ...sound,
  at: '2026-02-03T07:42:00Z',
  rec: '2026-02-03T07:43:01.220Z',
  kind: 'remark',
  text: 'fog',
};

describe('a line of the log', () => {
  it('of version 1, one of each kind, is read for ever as it was written', () => {
    const read = golden.map((line) => readLine(bytesOf(line), crcOf));
    expect(new Set(read.map((line) => line.how === 'entry' && line.frame.kind))).toEqual(
      new Set(Object.keys(entryKinds)),
    );
    expect(read.map((line) => line.frame?.n)).toEqual(golden.map((_, i) => i + 1));
    for (const [i, line] of golden.entries()) {
      const { crc: _, ...record } = JSON.parse(line);
      expect(new TextDecoder().decode(writeLine(record, crcOf).bytes)).toBe(`${golden[i]}\n`);
    }
  });

  it('is closed by the CRC-32 of the exact bytes before it', () => {
    // The check value of CRC-32/ISO-HDLC in every catalogue of such sums: cbf43926 for the digits 1 to 9.
    const seen: (string | Uint8Array)[] = [];
    const line = writeLine({ a: 1 }, (text) => {
      seen.push(text);
      return crcOf('123456789');
    });
    expect(seen).toEqual(['{"a":1']);
    expect(new TextDecoder().decode(line.bytes)).toBe('{"a":1,"crc":"cbf43926"}\n');
  });

  it('gives its fields, its place in the chain, and nothing that was not there', () => {
    expect(readLine(framed(remark), crcOf)).toEqual({
      how: 'entry',
      frame: { ...remark, writer: 'k7m2q9xd', n: 118, crc: expect.stringMatching(/^[0-9a-f]{8}$/) },
    });
  });

  it('is never taken for sound with any one bit of it turned', () => {
    const bytes = framed({ ...remark, text: 'höyry ☁' });
    for (let bit = 0; bit < bytes.length * 8; bit += 1) {
      const turned = bytes.slice();
      turned[bit >> 3]! ^= 1 << (bit & 7);
      expect(readLine(turned, crcOf).frame, `bit ${bit}`).toBeNull();
    }
  });

  it('cut off anywhere is not taken for sound', () => {
    const bytes = framed(remark);
    for (let length = 1; length < bytes.length; length += 1) {
      expect(readLine(bytes.subarray(0, length), crcOf).how).toBe('cut off');
    }
  });

  it.each([
    ['zeros', '\0\0\0\0'],
    ['zeros', '{"v":1,\0\0'],
    ['not json', 'a line of prose'],
    ['not json', ''],
    ['cut off', '{"v":1,"id":"k7m2q9xd-1'],
    ['checksum', '{"v":1,"id":"k7m2q9xd-1","crc":"00000000"}'.replace('"id"', 'id')],
    ['edited', '{"v":1,"id":"k7m2q9xd-1","crc":"00000000"}'],
    ['edited', '{"kind":"remark"}'],
    ['too long', `"${'x'.repeat(mostLineBytes)}`],
  ])('says what is wrong with it: %s', (how, text) => {
    expect(readLine(bytesOf(text), crcOf)).toMatchObject({ how, frame: null });
  });

  it('edited by hand is told with all its text and a key of its own', () => {
    const text = new TextDecoder().decode(framed(remark)).replace('fog', 'sun');
    const other = text.replace('sun', 'ice');
    const read = readLine(bytesOf(text), crcOf);
    expect(read).toMatchObject({ how: 'edited', text });
    expect(readLine(bytesOf(other), crcOf)).not.toMatchObject({ key: read.how === 'edited' && read.key });
  });

  it.each([
    ['a version to come', { ...remark, v: 2, anything: [1] }],
    ['a kind this program does not know', { ...remark, kind: 'sextant' }],
    ['a kind named like a part of every object', { ...remark, kind: 'constructor' }],
  ])('of %s keeps its place in the chain', (_, record) => {
    expect(readLine(framed(record), crcOf)).toMatchObject({
      how: 'newer',
      frame: { writer: 'k7m2q9xd', n: 118 },
    });
  });

  it('keeps fields it does not know in an entry it does', () => {
    expect(readLine(framed({ ...remark, mood: { now: 'fair' } }), crcOf)).toMatchObject({
      frame: { mood: { now: 'fair' } },
    });
  });

  it.each([
    ['a number out of range', { kind: 'hours', text: undefined, engine: 'main', reading: -1 }],
    ['no version', { v: undefined }],
    ['version 0', { v: 0 }],
    ['an instant without a zone', { at: '2026-02-03T07:42:00' }],
    ['a day that is in no calendar', { at: '2026-02-30T07:42:00Z' }],
    ['no time of typing', { rec: undefined }],
    ['an empty key', { key: '' }],
    ['a kind that is no text', { kind: 7 }],
    ['a name that is no text', { by: 7 }],
    ['a dip that gives no level', { kind: 'dip', text: undefined, fluid: 'oil' }],
  ])('with %s has its place, and its values are refused', (_, change) => {
    expect(readLine(framed({ ...remark, ...change }), crcOf)).toMatchObject({
      how: 'values',
      frame: { n: 118 },
    });
  });

  it('refuses a number no machine can hold', () => {
    const text =
      '{"v":1,"id":"k7m2q9xd-1","p":"00000000","lc":1,"at":"2026-02-03T07:42:00Z","rec":"2026-02-03T07:42:00Z","kind":"hours","engine":"main","reading":1e999';
    const crc = crcOf(bytesOf(text)).toString(16).padStart(8, '0');
    expect(readLine(bytesOf(`${text},"crc":"${crc}"}`), crcOf).how).toBe('values');
  });

  it.each([
    ['an id without a number', { id: 'k7m2q9xd' }],
    ['an id with a letter no writer has', { id: 'k7m2q9xl-1' }],
    ['number 0', { id: 'k7m2q9xd-0' }],
    ['no checksum of the line before', { p: undefined }],
    ['a count of 0', { lc: 0 }],
    ['a count beyond the end', { lc: mostCount + 1 }],
    ['a count that is no whole number', { lc: 1.5 }],
  ])('with %s has no place', (_, change) => {
    expect(readLine(framed({ ...remark, ...change }), crcOf)).toMatchObject({ how: 'values', frame: null });
  });

  it.each(['__proto__', 'constructor', 'prototype'])('with a key %s, at any depth, is refused', (key) => {
    for (const extra of [`"${key}":{"kind":"go"}`, `"a":[{"b":{"${key}":1}}]`]) {
      const text = `${JSON.stringify(remark).slice(0, -1)},${extra}`;
      const crc = crcOf(bytesOf(text)).toString(16).padStart(8, '0');
      expect(readLine(bytesOf(`${text},"crc":"${crc}"}`), crcOf)).toMatchObject({
        how: 'values',
        frame: null,
      });
    }
  });

  it('that is not UTF-8 is refused, checksum or not', () => {
    const bytes = framed(remark);
    bytes[bytes.indexOf(0x66)] = 0xff;
    const body = bytes.subarray(0, bytes.length - 18);
    bytes.set(bytesOf(crcOf(body).toString(16).padStart(8, '0')), bytes.length - 10);
    expect(readLine(bytes, crcOf)).toMatchObject({ how: 'values', frame: null });
  });

  it('holds any text a person can type, and gives it back', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 2000 }), (text) => {
        const laptop = aLaptop('k7m2q9xd');
        expect(laptop.write(aRemark(text))).toMatchObject({ text });
        expect(laptop.bytes[0]?.filter((byte) => byte === 0x0a)).toHaveLength(1);
      }),
      { numRuns: 60 },
    );
  });

  it('never stops the program, whatever the bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(readLine(bytes, crcOf).frame).toBeNull();
      }),
      { numRuns: 2000 },
    );
  });
});

describe('an id', () => {
  it('is a writer and a number', () => {
    expect(splitId('k7m2q9xd-118')).toEqual({ writer: 'k7m2q9xd', n: 118 });
    for (const other of ['k7m2q9xd-', 'k7m2q9x-1', 'K7M2Q9XD-1', 'k7m2q9xd-1:00000000', 7, null]) {
      expect(splitId(other)).toBeNull();
    }
  });
});
