import { describe, expect, it } from 'vitest';
import { foldLog } from '../../source/logbook/order.ts';
import { aLaptop, aRemark, type Laptop } from '../helpers/a-laptop.ts';

const at = '2026-02-03T08:00:00Z';
const strike = (entry: string) => ({ kind: 'strike', at, entry }) as const;

function standing(...laptops: Laptop[]): string[] {
  const { entries } = foldLog(laptops.map((laptop, i) => ({ ...laptop.file(), name: `log/${i}` })));
  return entries.flatMap((entry) => (entry.kind === 'remark' ? [entry.text] : [])).toSorted();
}

describe('a strike', () => {
  it('withdraws an entry, which is kept among the struck', () => {
    const laptop = aLaptop('k7m2q9xd');
    const wrong = laptop.write(aRemark('wrong'));
    laptop.write(strike(wrong.id));
    const { entries, struck } = foldLog([laptop.file()]);
    expect(struck).toEqual([wrong]);
    expect(entries.map(({ kind }) => kind)).toEqual(['strike']);
  });

  it('struck itself restores, and struck again withdraws again', () => {
    const laptop = aLaptop('k7m2q9xd');
    let last = laptop.write(aRemark('tide')).id;
    for (const stands of [false, true, false, true]) {
      last = laptop.write(strike(last)).id;
      expect(standing(laptop)).toEqual(stands ? ['tide'] : []);
    }
  });

  it('restored leaves a second strike of the same entry in force', () => {
    const laptop = aLaptop('k7m2q9xd');
    const wrong = laptop.write(aRemark('wrong'));
    const first = laptop.write(strike(wrong.id));
    laptop.write(strike(wrong.id));
    laptop.write(strike(first.id));
    expect(standing(laptop)).toEqual([]);
  });

  it('holds whatever its clock said', () => {
    const laptop = aLaptop('k7m2q9xd');
    const wrong = laptop.write(aRemark('wrong', '2026-02-03T08:00:00Z'));
    const by = laptop.write({ ...strike(wrong.id), at: '1970-01-01T00:00:00Z' });
    expect(standing(laptop)).toEqual([]);
    laptop.write({ ...strike(by.id), at: '1969-12-31T00:00:00Z' });
    expect(standing(laptop)).toEqual(['wrong']);
  });

  it('by another laptop counts the same, in whichever order the two are read', () => {
    const ann = aLaptop('aaaaaaaa');
    const bob = aLaptop('bbbbbbbb');
    const wrong = ann.write(aRemark('wrong'));
    bob.hear(ann);
    bob.write(strike(wrong.id));
    expect(standing(ann, bob)).toEqual([]);
    expect(standing(bob, ann)).toEqual([]);
  });

  it('of one copy withdraws what all entries of its key say', () => {
    const ann = aLaptop('aaaaaaaa');
    const bob = aLaptop('bbbbbbbb');
    ann.write({ ...aRemark('page'), key: 'page 1' });
    const copy = bob.write({ ...aRemark('page'), key: 'page 1' });
    bob.write(strike(copy.id));
    expect(standing(ann, bob)).toEqual([]);
  });

  it('naming nothing in the log, or itself, changes nothing', () => {
    const laptop = aLaptop('k7m2q9xd');
    laptop.write(aRemark('stays'));
    laptop.write(strike('k7m2q9xd-99'));
    laptop.write(strike('k7m2q9xd-3'));
    expect(standing(laptop)).toEqual(['stays']);
  });

  it('of an id that stands for two lines means the one its own laptop had written', () => {
    const one = aLaptop('k7m2q9xd');
    one.write(aRemark('together'));
    const two = one.clone();
    const mine = one.write(aRemark('one'));
    two.write(aRemark('two'));
    one.write(aRemark('more of one'));
    one.write(strike(mine.id));
    expect(standing(one, two)).toEqual(['more of one', 'together', 'two']);
    expect(standing(two, one)).toEqual(['more of one', 'together', 'two']);
  });

  it('by another laptop of such an id has to say which', () => {
    const one = aLaptop('k7m2q9xd');
    const two = one.clone();
    one.write(aRemark('one'));
    const theirs = two.write(aRemark('two'));
    const ann = aLaptop('aaaaaaaa');
    ann.hear(two);
    const unclear = ann.write(strike(theirs.id));
    expect(standing(one, two, ann)).toEqual(['one', 'two']);
    ann.write(strike(unclear.id));
    ann.write(strike(`${theirs.id}:${theirs.crc}`));
    expect(standing(one, two, ann)).toEqual(['one']);
  });

  it('that says which by a checksum no line has withdraws none of them', () => {
    const one = aLaptop('k7m2q9xd');
    const two = one.clone();
    const mine = one.write(aRemark('one'));
    two.write(aRemark('two'));
    one.write(strike(`${mine.id}:00000000`));
    expect(standing(one, two)).toEqual(['one', 'two']);
  });
});
