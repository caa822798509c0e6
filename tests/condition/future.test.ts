import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { futureTroubles } from '../../source/condition/future.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const DAY = 86_400_000;
const moment = Date.UTC(2026, 5, 1);
const day = (days: number) => new Date(moment + days * DAY).toISOString();
const remark = (typed: number, happened: number) =>
  anEntry('remark', { text: 'x', rec: day(typed) }, day(happened));

describe('an entry typed before it happened', () => {
  it('is told, with the hours it is ahead', () => {
    const early = remark(-10, -9.5);
    expect(futureTroubles([remark(-20, -20), early], moment)).toEqual([
      {
        kind: 'odd reading',
        entry: early.id,
        at: early.at,
        item: 'remark',
        value: 12,
        unit: 'h',
        than: 0,
        why: 'in the future',
      },
    ]);
  });

  it('for a time still to come is told though not seen', () => {
    const slip = anEntry('dip', { fluid: 'fuel', share: 1, rec: day(-1) }, day(364));
    const { troubles, fluids, lastEntryAt } = conditionAt(aBoat(), [slip], moment);
    expect(troubles).toMatchObject([{ entry: slip.id, item: 'fuel', why: 'in the future' }]);
    expect([fluids.get('fuel')!.events, lastEntryAt]).toEqual([[], null]);
  });

  it('by no more than an hour is let pass, and one typed later is no trouble', () => {
    expect(futureTroubles([remark(-10, -10 + 1 / 24), remark(-3, -30)], moment)).toEqual([]);
    expect(futureTroubles([remark(-10, -10 + 1.01 / 24)], moment)).toHaveLength(1);
  });

  it('is not spoken of at a moment before it was typed', () => {
    expect(futureTroubles([remark(5, 50)], moment)).toEqual([]);
  });
});
