import { expect, it } from 'vitest';
import { shownItems } from '../../source/screens/shown-item.ts';
import { sampleModel } from '../helpers/make-pictures.ts';

it('what is told at once of stores, services and dates is what the reckoning then says of them', async () => {
  const { boat } = await sampleModel();
  if (boat.is !== 'open' || !boat.document) throw new Error('the sample boat was not opened');
  const known = (item: (typeof before)[number]) => {
    if (item.kind === 'spare') return { id: item.id, count: item.count, locker: item.locker };
    if (item.kind === 'dated') return { id: item.id, expires: item.expires, reasons: item.reasons };
    if (item.kind !== 'service') return null;
    const { id, dueOn, dueHours, dueInHours, reasons } = item;
    return { id, dueOn, dueHours, dueInHours, reasons };
  };
  const before = shownItems({ ...boat, document: null });
  const after = shownItems(boat);
  expect(before.map(known)).toEqual(after.map(known));
  expect(before.filter((item) => item.kind === 'service' && item.dueInHours !== null).length).toBeGreaterThan(
    3,
  );
  for (const [place, item] of before.entries()) {
    const then = after[place]!;
    if (item.kind === 'spare' && then.kind === 'spare') {
      expect(then.buy).toBeGreaterThanOrEqual(item.buy);
      expect(then.reasons).toEqual(expect.arrayContaining([...item.reasons]));
    }
  }
});
