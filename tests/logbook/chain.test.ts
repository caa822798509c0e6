import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { followChain, type LogFile } from '../../source/logbook/chain.ts';
import { type Line, readLine } from '../../source/logbook/line.ts';
import { foldLog } from '../../source/logbook/order.ts';
import { aLaptop, aRemark, crcOf } from '../helpers/a-laptop.ts';

const writer = 'k7m2q9xd';
const torn: Line = { how: 'cut off', frame: null, text: '{"v":1,"id":"k7m2q9xd-' };

function linesOf(count: number): Line[] {
  const laptop = aLaptop(writer);
  for (let i = 1; i <= count; i += 1) laptop.write(aRemark(`remark ${i}`));
  return laptop.lines;
}

function inFiles(...files: Line[][]): LogFile[] {
  return files.map((lines, i) => ({ name: `log/${i + 1}`, writer, lines }));
}

const follow = (files: LogFile[]) => followChain(files, () => false);
const place = (line: number, file = 1) => ({ file: `log/${file}`, line });

describe('the chain of a writer', () => {
  it('whole, over several segments, has nothing to tell', () => {
    const lines = linesOf(9);
    for (const cut of [0, 1, 5, 9]) {
      expect(follow(inFiles(lines.slice(0, cut), lines.slice(cut)))).toEqual({
        said: [],
        quiet: [],
        tidy: true,
      });
    }
  });

  it('keeps quiet about a torn line that was never confirmed: the next one goes on from the line before it', () => {
    const lines = linesOf(4).toSpliced(2, 0, torn);
    expect(follow(inFiles(lines))).toMatchObject({
      said: [],
      quiet: [{ kind: 'line cut off', place: place(3), text: torn.text }],
    });
  });

  it('keeps quiet about one at the end of a segment that a later segment goes on from', () => {
    const lines = linesOf(4);
    expect(follow(inFiles([...lines.slice(0, 2), torn], lines.slice(2))).said).toEqual([]);
  });

  it('tells a torn line at the end, and at the start of an empty log', () => {
    expect(follow(inFiles([...linesOf(2), torn])).said).toMatchObject([
      { kind: 'line cut off', place: place(3) },
    ]);
    expect(follow(inFiles([torn])).said).toHaveLength(1);
  });

  it('tells a damaged line in the middle, and does not call it missing as well', () => {
    const lines = linesOf(5).with(2, { how: 'checksum', frame: null, text: '?' });
    expect(follow(inFiles(lines)).said).toEqual([
      { kind: 'line damaged', place: place(3), how: 'checksum', text: '?' },
    ]);
  });

  it('tells a line whose values are refused, and goes on from it: its place is sure', () => {
    const lines = linesOf(4);
    const refused: Line = { how: 'values', frame: lines[1]!.frame, text: '?' };
    expect(follow(inFiles(lines.with(1, refused)))).toEqual({
      said: [{ kind: 'line damaged', place: place(2), how: 'values', text: '?' }],
      quiet: [],
      tidy: true,
    });
  });

  it('tells both when two lines became one', () => {
    const lines = linesOf(5).toSpliced(1, 2, torn);
    expect(follow(inFiles(lines)).said).toMatchObject([
      { kind: 'lines missing', from: 2, to: 3, why: 'gap' },
      { kind: 'line cut off', place: place(2) },
    ]);
  });

  it('tells which numbers are missing', () => {
    const lines = linesOf(9);
    expect(follow(inFiles(lines.toSpliced(3, 2))).said).toEqual([
      { kind: 'lines missing', place: place(4), writer, from: 4, to: 5, why: 'gap' },
    ]);
    expect(follow(inFiles(lines.slice(3))).said).toMatchObject([{ from: 1, to: 3 }]);
  });

  it('tells a line that is there twice, out of order, or another writer’s', () => {
    const lines = linesOf(4);
    const other = aLaptop('abcdefgh');
    other.write(aRemark('elsewhere'));
    const out = (kept: Line[]) => follow(inFiles(kept)).said;
    expect(out(lines.toSpliced(2, 0, lines[1]!))).toEqual([
      { kind: 'line out of place', place: place(3), id: `${writer}-2`, how: 'twice' },
    ]);
    expect(out([lines[0]!, lines[2]!, lines[1]!, lines[3]!])).toMatchObject([
      { kind: 'line out of place', place: place(3), id: `${writer}-2`, how: 'order' },
    ]);
    expect(out(lines.toSpliced(1, 0, other.lines[0]!))).toMatchObject([
      { kind: 'line out of place', place: place(2), id: 'abcdefgh-1', how: 'other writer' },
    ]);
  });

  it('says nothing of lines written again to a new segment after a disk error', () => {
    const lines = linesOf(5);
    expect(follow(inFiles(lines.slice(0, 3), lines.slice(2))).said).toEqual([]);
  });

  it('tells a line that does not go on from the one before', () => {
    const others = aLaptop(writer);
    for (const text of ['a', 'b', 'c']) others.write(aRemark(text));
    const lines = [...linesOf(2), ...others.lines.slice(2)];
    expect(follow(inFiles(lines)).said).toEqual([
      { kind: 'chain broken', place: place(3), writer, number: 3 },
    ]);
  });

  it('follows both arms of a fork', () => {
    const one = aLaptop(writer);
    one.write(aRemark('together'));
    const two = one.clone();
    for (const text of ['one', 'by one']) one.write(aRemark(text));
    for (const text of ['two', 'by two']) two.write(aRemark(text));
    const [, a2, a3] = one.lines;
    const [, b2, b3] = two.lines;
    expect(follow(inFiles([one.lines[0]!, a2!, b2!, a3!, b3!])).said).toEqual([]);
  });

  it('tells a line edited by hand until it is accepted', () => {
    const laptop = aLaptop(writer);
    for (const text of ['one', 'two', 'three']) laptop.write(aRemark(text));
    const bytes = laptop.bytes[1]!.slice(0, -1);
    bytes[bytes.indexOf(0x77)] = 0x57;
    const edited = readLine(bytes, crcOf);
    expect(edited.how).toBe('edited');
    const files = inFiles(laptop.lines.with(1, edited));
    expect(follow(files).said).toMatchObject([{ kind: 'line edited', place: place(2) }]);
    expect(followChain(files, (line) => line === edited)).toMatchObject({
      said: [],
      quiet: [{ kind: 'line edited' }],
    });
  });

  it('tells every change of the lines: taken away, doubled, swapped, put in', () => {
    const lines = linesOf(12);
    const stranger = aLaptop(writer);
    for (let i = 0; i < 14; i += 1) stranger.write(aRemark(`not ours ${i}`));
    const index = fc.nat({ max: 11 });
    fc.assert(
      fc.property(fc.constantFrom('take', 'double', 'swap', 'put'), index, index, (how, i, j) => {
        fc.pre(how !== 'swap' || i !== j);
        // The last line taken away leaves a log that was once whole: only the mark kept elsewhere can tell.
        fc.pre(how !== 'take' || i < 11);
        const a = lines[i]!;
        const b = lines[j]!;
        const changed = {
          take: () => lines.toSpliced(i, 1),
          double: () => lines.toSpliced(j, 0, a),
          swap: () => lines.with(i, b).with(j, a),
          put: () => lines.toSpliced(i, 0, stranger.lines[j]!),
        }[how]();
        expect(foldLog(inFiles(changed)).said).not.toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });
});
