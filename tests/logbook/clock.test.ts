import { describe, expect, it } from 'vitest';
import { foldLog } from '../../source/logbook/order.ts';
import { aLaptop, aRemark } from '../helpers/a-laptop.ts';

const at = '2026-02-03T08:00:00Z';

function told(...recs: string[]) {
  const laptop = aLaptop('k7m2q9xd');
  for (const rec of recs) laptop.write(aRemark('', at), rec);
  return foldLog([laptop.file()]).said.map(
    (trouble) => trouble.kind === 'clock' && `${trouble.entry} ${trouble.why}`,
  );
}

describe('a laptop’s clock', () => {
  it('that goes on is not spoken of, nor one set right by minutes', () => {
    expect(told('2026-02-03T08:00:00.000Z', '2026-02-03T07:51:00.000Z', '2027-03-01T08:00:00.000Z')).toEqual(
      [],
    );
  });

  it('that went back is told on the entry', () => {
    expect(told('2026-02-03T08:00:00.000Z', '2025-02-03T08:00:00.000Z')).toEqual(['k7m2q9xd-2 went back']);
  });

  it('that started at 1970 and was then set is told at both steps', () => {
    expect(told('2026-02-03T08:00:00Z', '1970-01-01T00:00:09Z', '2026-02-03T08:10:00Z')).toEqual([
      'k7m2q9xd-2 went back',
      'k7m2q9xd-3 leapt',
    ]);
  });

  it('that leapt over 400 days is told', () => {
    expect(told('2026-02-03T08:00:00Z', '2027-03-11T08:00:01Z')).toEqual(['k7m2q9xd-2 leapt']);
  });

  it('is no longer spoken of once the entry is struck', () => {
    const laptop = aLaptop('k7m2q9xd');
    laptop.write(aRemark('', at), '2026-02-03T08:00:00Z');
    const wrong = laptop.write(aRemark('', at), '1970-01-01T00:00:09Z');
    laptop.write({ kind: 'strike', at, entry: wrong.id }, '2026-02-03T08:10:00Z');
    expect(foldLog([laptop.file()]).said).toEqual([]);
  });

  it('is each laptop’s own', () => {
    const ann = aLaptop('aaaaaaaa');
    const bob = aLaptop('bbbbbbbb');
    ann.write(aRemark('', at), '2026-02-03T08:00:00Z');
    bob.write(aRemark('', at), '2020-02-03T08:00:00Z');
    expect(foldLog([ann.file(), bob.file()]).said).toEqual([]);
  });
});
