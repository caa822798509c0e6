import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../source/readiness/actions.ts';
import { doable } from '../../source/readiness/doable.ts';

const bare = { minutes: 5, pouredL: null, buys: null, takes: [] } as const;
const topUp = (item: string, pouredL: number): Candidate => ({
  ...bare,
  do: 'top up',
  item,
  pouredL,
  takes: [{ spare: 'oil', count: pouredL }],
});
const change = (count: number): Candidate => ({
  ...bare,
  do: 'service',
  item: 'change',
  takes: [{ spare: 'oil', count }],
});
const buy = (buys: number): Candidate => ({ ...bare, do: 'buy', item: 'oil', buys });

describe('what can be done with what is aboard', () => {
  it('is work that has its parts, and a top-up with as much as there is', () => {
    const [drain, pour] = [change(4), topUp('sump', 0.8)];
    const done = doable([drain, pour], () => 4.5);
    expect(done.get(drain)).toBe(drain);
    expect(done.get(pour)).toMatchObject({ pouredL: 0.5, takes: [{ spare: 'oil', count: 0.5 }] });
    expect([...doable([change(5), pour], () => 4.5).keys()]).toEqual([pour]);
    expect(doable([pour], () => 0)).toEqual(new Map());
  });

  it('is more once it is bought, wherever the buying stands in the list', () => {
    const [pour, bought] = [topUp('sump', 0.8), buy(1)];
    expect(doable([pour, bought], () => 0).get(pour)).toEqual(pour);
  });

  it('never takes more of a stock than there is, whatever is asked; each gets its share of too little', () => {
    const hundredths = (most: number) => fc.integer({ min: 1, max: most }).map((n) => n / 100);
    fc.assert(
      fc.property(
        fc.array(hundredths(300), { minLength: 1, maxLength: 5 }),
        hundredths(600),
        fc.option(hundredths(400), { nil: null }),
        (pours, stock, parts) => {
          const list = [
            ...pours.map((litres, i) => topUp(`sump-${i}`, litres)),
            ...(parts === null ? [] : [change(parts)]),
          ];
          const done = [...doable(list, () => stock).values()];
          const taken = done.flatMap(({ takes }) => takes).reduce((sum, { count }) => sum + count, 0);
          expect(taken).toBeLessThanOrEqual(stock + 1e-6);
          for (const one of done)
            if (one.pouredL !== null) expect(one.takes).toEqual([{ spare: 'oil', count: one.pouredL }]);
          const wanted = list.flatMap(({ takes }) => takes).reduce((sum, { count }) => sum + count, 0);
          if (wanted <= stock) expect(taken).toBeCloseTo(wanted, 6);
        },
      ),
    );
  });
});
