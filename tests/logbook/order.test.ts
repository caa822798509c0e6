import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LogFile } from '../../source/logbook/chain.ts';
import { foldLog } from '../../source/logbook/order.ts';
import { aLaptop, aRemark, type Laptop } from '../helpers/a-laptop.ts';

const textsOf = (entries: readonly object[]) => entries.map((entry) => 'text' in entry && entry.text);
const filesOf = (...laptops: Laptop[]): LogFile[] => laptops.map((laptop) => laptop.file());

describe('the log of several laptops', () => {
  it('is in the order things happened, whenever they were typed', () => {
    const laptop = aLaptop('k7m2q9xd');
    laptop.write(aRemark('noon', '2026-02-03T12:00:00Z'));
    laptop.write(aRemark('dawn', '2026-02-03T06:00:00.5Z'));
    laptop.write(aRemark('before dawn', '2026-02-03T05:59:00Z'));
    expect(textsOf(foldLog(filesOf(laptop)).entries)).toEqual(['before dawn', 'dawn', 'noon']);
  });

  it('puts cause before effect where things happened at one instant', () => {
    const ann = aLaptop('zzzzzzzz');
    const bob = aLaptop('00000000');
    ann.write(aRemark('asked'));
    bob.hear(ann);
    bob.write(aRemark('answered'));
    expect(textsOf(foldLog(filesOf(bob, ann)).entries)).toEqual(['asked', 'answered']);
  });

  it('counts entries of one key once, and the first of them', () => {
    const ann = aLaptop('aaaaaaaa');
    const bob = aLaptop('bbbbbbbb');
    ann.write({ ...aRemark('from paper, by Ann'), key: 'page 1' });
    bob.hear(ann);
    bob.write({ ...aRemark('from paper, by Bob'), key: 'page 1' });
    bob.write({ ...aRemark('another'), key: 'page 2' });
    expect(textsOf(foldLog(filesOf(bob, ann)).entries)).toEqual(['from paper, by Ann', 'another']);
  });

  it('keeps both of two lines with one id, tells it, and calls each by its checksum', () => {
    const one = aLaptop('k7m2q9xd');
    one.write(aRemark('together'));
    const two = one.clone();
    one.write(aRemark('one'));
    two.write(aRemark('two'));
    const { entries, said } = foldLog([one.file(), { ...two.file(), name: 'log/copy' }]);
    expect(textsOf(entries).toSorted()).toEqual(['one', 'together', 'two']);
    expect(new Set(entries.map(({ id }) => id)).size).toBe(3);
    expect(entries.filter(({ n }) => n === 2).map(({ id }) => id)).toEqual([
      expect.stringMatching(/^k7m2q9xd-2:[0-9a-f]{8}$/),
      expect.stringMatching(/^k7m2q9xd-2:[0-9a-f]{8}$/),
    ]);
    expect(said).toEqual([{ kind: 'same id twice', place: { file: 'log/copy', line: 2 }, id: 'k7m2q9xd-2' }]);
  });

  it('counts what a newer version wrote, once, and says so', () => {
    const laptop = aLaptop('k7m2q9xd');
    laptop.write(aRemark('known'));
    const frame = { ...laptop.lines[0]!.frame!, n: 2 };
    const file: LogFile = { ...laptop.file(), lines: [...laptop.lines, { how: 'newer', frame, text: '' }] };
    expect(foldLog([file, { ...file, name: 'log/copy' }]).said).toContainEqual({
      kind: 'newer entries',
      count: 1,
    });
  });

  it('tells a hundred damaged lines and how many more there are', () => {
    const lines = Array.from({ length: 250 }, () => ({ how: 'not json', frame: null, text: '' }) as const);
    const { said } = foldLog([{ name: 'log/x', writer: 'k7m2q9xd', lines }]);
    expect(said).toHaveLength(101);
    expect(said.at(-1)).toEqual({ kind: 'more damage', count: 150 });
  });
});

/** What laptops may do in a season: write (now and then under a key), strike something they have seen, and hear of each other. */
type Deed = { who: number; what: 'write' | 'keyed' | 'strike' | 'hear'; pick: number };

function season(deeds: readonly Deed[]): Laptop[] {
  const laptops = ['aaaaaaaa', 'bbbbbbbb', 'cccccccc'].map((writer) => aLaptop(writer));
  const seen = laptops.map(() => [] as string[]);
  for (const [i, { who, what, pick }] of deeds.entries()) {
    const laptop = laptops[who % 3]!;
    const mine = seen[who % 3]!;
    const at = new Date(1.77e12 + (pick % 5) * 3.6e6).toISOString();
    if (what === 'hear') {
      laptop.hear(laptops[pick % 3]!);
      mine.push(...seen[pick % 3]!);
    } else if (what === 'strike' && mine.length > 0) {
      mine.push(laptop.write({ kind: 'strike', at, entry: mine[pick % mine.length]! }).id);
    } else {
      const key = what === 'keyed' ? { key: `key ${pick % 3}` } : {};
      mine.push(laptop.write({ ...aRemark(`deed ${i}`, at), ...key }).id);
    }
  }
  return laptops;
}

const deeds = fc.array(
  fc.record({
    who: fc.nat({ max: 2 }),
    what: fc.constantFrom('write', 'write', 'keyed', 'strike', 'strike', 'hear') as fc.Arbitrary<
      Deed['what']
    >,
    pick: fc.nat({ max: 1000 }),
  }),
  { maxLength: 40 },
);

describe('folding', () => {
  it('gives the same log whichever laptop is read first, however the files are cut, and however often a file is there', () => {
    fc.assert(
      fc.property(deeds, fc.nat({ max: 40 }), fc.boolean(), (done, cut, twice) => {
        const files = filesOf(...season(done));
        const straight = foldLog(files);
        const cutUp = files
          .toReversed()
          .flatMap((file) => [
            { ...file, lines: file.lines.slice(0, cut) },
            { ...file, lines: file.lines.slice(cut) },
            ...(twice ? [{ ...file, name: 'log/again' }] : []),
          ]);
        const other = foldLog(cutUp);
        expect(other.entries).toEqual(straight.entries);
        expect(other.struck).toEqual(straight.struck);
      }),
      { numRuns: 400 },
    );
  });

  it('loses no entry: each stands, is struck, or says what an earlier one of its key says', () => {
    fc.assert(
      fc.property(deeds, (done) => {
        const laptops = season(done);
        const { entries, struck } = foldLog(filesOf(...laptops));
        const all = laptops.flatMap(({ lines }) =>
          lines.flatMap((line) => (line.how === 'entry' ? [line.frame] : [])),
        );
        const keyed = all.filter(({ key }) => key !== undefined);
        const kept = [...entries, ...struck];
        expect(new Set(kept).size).toBe(kept.length);
        expect(kept).toHaveLength(all.length - keyed.length + new Set(keyed.map(({ key }) => key)).size);
      }),
      { numRuns: 200 },
    );
  });
});
