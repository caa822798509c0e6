import { describe, expect, it } from 'vitest';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { certainFluid, type Given, judged } from '../helpers/beliefs.ts';

const at = Date.parse('2026-03-01T08:00:00Z');
const day = 86_400_000;
const hour = 3_600_000;

/** A morning on which everything was looked at and found well. */
const wellLookedAt = [
  anEntry('arrived', { anchorage: 'heron-bight' }, at - 9 * day),
  anEntry('hours', { engine: 'main', reading: 1000 }, at - hour),
  anEntry('dip', { fluid: 'gear-oil', share: 1 }, at - hour),
  anEntry('dip', { fluid: 'fuel', level: 200 }, at - hour),
  anEntry('dip', { fluid: 'water', level: 300 }, at - hour),
  anEntry('renew', { anode: 'pencil' }, at - 5 * day),
  anEntry('count', { spare: 'impellers', count: 2 }, at - hour),
  anEntry('count', { spare: 'gear-oil-can', count: 2 }, at - hour),
  anEntry('count', { spare: 'pencils', count: 4 }, at - hour),
  anEntry('count', { spare: 'fuses', count: 9 }, at - hour),
  anEntry('service', { service: 'impeller-change' }, at - 6 * day),
  anEntry('check', { check: 'house-bank', value: 12.7 }, at - hour),
  anEntry('check', { check: 'raw-water', ok: true }, at - 4 * day),
];

function stateOf(id: string, given: Partial<Given> = {}) {
  const answer = judged({ boat: aBoat(), entries: wellLookedAt, at, ...given });
  const item = answer.items.find((one) => one.id === id)!;
  return { state: item.state, why: item.why.map(({ why }) => why), verdict: answer.verdict, answer };
}

describe('each state has its conditions, and the first that applies counts', () => {
  it('all is fit on a morning when all was found well, and only the forecast is missing', () => {
    const { answer } = stateOf('fuel');
    expect(answer.items.filter(({ state }) => state !== 'fit')).toEqual([]);
    expect(answer.verdict).toBe('hold');
    expect(answer.reasons).toEqual([{ reason: 'fit' }, { reason: 'no forecast' }]);
    expect(answer.toGetReady).toEqual([]);
  });

  it('a vital fluid below its reserve now is unfit, even when the stores would fill it', () => {
    const entries = [...wellLookedAt, anEntry('dip', { fluid: 'gear-oil', level: 1.05 }, at - 60_000)];
    const { state, why, answer } = stateOf('gear-oil', { entries });
    expect([state, why[0], answer.verdict]).toEqual(['unfit', 'past limit', 'not ready']);
    expect(answer.items.find(({ id }) => id === 'gear-oil')!.goodUntil).toBeNull();
    expect(answer.toGetReady.map(({ do: what, item }) => [what, item])).toEqual([['top up', 'gear-oil']]);
  });

  it('a vital fluid that would run short on the way is unfit, and refilling it is what gets her ready', () => {
    const fluids = { water: certainFluid(40, 0, 12) };
    const { state, answer } = stateOf('water', { fluids });
    expect([state, answer.verdict]).toEqual(['unfit', 'not ready']);
    expect(answer.toGetReady[0]).toMatchObject({
      do: 'refill',
      item: 'water',
      boatScoreAfter: expect.closeTo(100, 0),
    });
  });

  it('an important thing past its limit is watched, and does not bar leaving', () => {
    const boat = aBoat({ dated: [{ id: 'flares', name: 'Flares', expires: '2026-02-28' }] });
    expect(stateOf('flares', { boat })).toMatchObject({ state: 'watch', why: ['expired'], verdict: 'hold' });
  });

  it('a dated thing is good until the end of its day, UTC', () => {
    const boat = aBoat({ dated: [{ id: 'flares', name: 'Flares', expires: '2026-02-28' }] });
    const late = Date.parse('2026-02-28T23:59:59Z');
    expect(stateOf('flares', { boat, at: late }).why).toContain('expires soon');
    expect(stateOf('flares', { boat, at: late + 1001 }).why).toContain('expired');
  });

  it.each([
    ['never looked at', wellLookedAt.filter((entry) => !('fluid' in entry && entry.fluid === 'water')), at],
    ['looked at long ago', wellLookedAt, at + 6 * day],
  ])('a vital fluid %s is not looked at, which bars leaving', (why, entries, when) => {
    const got = stateOf('water', {
      entries,
      at: when,
      fluids: why === 'never looked at' ? {} : { water: certainFluid(300, 0, 1) },
    });
    expect(got).toMatchObject({ state: 'unseen', verdict: 'not ready' });
    expect(got.why).toContain(why);
    expect(got.answer.toGetReady).toContainEqual(expect.objectContaining({ do: 'look', item: 'water' }));
  });

  it('a check that work has touched bars leaving whatever its consequence, until it is made again', () => {
    const touched = [...wellLookedAt, anEntry('renew', { anode: 'pencil' }, at - 2 * hour)];
    const boat = aBoat({
      checks: sandpiper.checks.map((check) => ({ ...check, consequence: 'minor' as const })),
    });
    expect(stateOf('raw-water', { boat, entries: touched })).toMatchObject({
      state: 'unseen',
      why: ['unsettled'],
      verdict: 'not ready',
    });
    const seen = [...touched, anEntry('check', { check: 'raw-water', ok: true }, at - hour)];
    expect(stateOf('raw-water', { boat, entries: seen })).toMatchObject({ state: 'fit', verdict: 'hold' });
  });

  it('a look before leaving that an arrival made void stands under the verdict and does not spoil it', () => {
    const entries = [
      ...wellLookedAt,
      anEntry('left', {}, at - 3 * day),
      anEntry('arrived', { anchorage: 'heron-bight' }, at - 2 * day),
    ];
    const { state, why, verdict, answer } = stateOf('raw-water', { entries });
    expect([state, why, verdict]).toEqual(['unseen', ['before leaving'], 'hold']);
    expect(answer.beforeLeaving).toEqual([{ check: 'raw-water', made: false, minutes: 1 }]);
  });

  it('a wrong answer to a vital check is unfit', () => {
    const boat = aBoat({ checks: [{ ...sandpiper.checks[0]!, consequence: 'vital' }, sandpiper.checks[1]!] });
    const entries = [...wellLookedAt, anEntry('check', { check: 'house-bank', value: 11.9 }, at - 60_000)];
    const { state, answer } = stateOf('house-bank', { boat, entries });
    expect([state, answer.verdict, answer.score.boat]).toEqual(['unfit', 'not ready', 0]);
    expect(answer.toGetReady[0]).toMatchObject({
      do: 'put right',
      item: 'house-bank',
      boatScoreAfter: expect.closeTo(100, 0),
    });
  });

  it('a number that drifts towards its limit is watched before it gets there', () => {
    const volts = (daysAgo: number) => (daysAgo > 10 ? 12.8 : 12.4) + (daysAgo % 3) / 20;
    const entries = [
      ...wellLookedAt.filter((entry) => !('check' in entry && entry.check === 'house-bank')),
      ...Array.from({ length: 50 }, (_, n) =>
        anEntry('check', { check: 'house-bank', value: volts(49 - n) }, at - (49 - n) * day - hour),
      ),
    ];
    expect(stateOf('house-bank', { entries })).toMatchObject({ state: 'watch', why: ['drifts'] });
  });

  it('what was never entered is said and never bars leaving', () => {
    const entries = wellLookedAt.filter(({ kind }) => kind !== 'service' && kind !== 'count');
    const boat = aBoat({ dated: [{ id: 'flares', name: 'Flares' }] });
    for (const [id, why] of [
      ['impeller-change', 'never done'],
      ['fuses', 'not counted'],
      ['flares', 'not entered'],
    ] as const)
      expect(stateOf(id, { boat, entries })).toMatchObject({ state: 'unseen', why: [why], verdict: 'hold' });
  });

  it('a fuel that leaks is to be stopped, and no more is asked of a tank that is full enough', () => {
    const entries = [
      ...wellLookedAt,
      anEntry('dip', { fluid: 'fuel', level: 150 }, at - 60_000),
      anEntry('leak', { item: 'fuel', class: 'wet' }, at - 30_000),
    ];
    const { state, answer } = stateOf('fuel', { entries });
    expect(state).toBe('unfit');
    expect(answer.toGetReady.map(({ do: what, item }) => [what, item])).toEqual([['stop the leak', 'fuel']]);
  });

  it('a service due every part of a month is due by so many days', () => {
    const boat = aBoat({ services: [{ id: 'bilge-wash', name: 'Bilge wash', everyMonths: 0.5 }] });
    const done = (days: number) => [
      ...wellLookedAt.filter(({ kind }) => kind !== 'service'),
      anEntry('service', { service: 'bilge-wash' }, at - days * day),
    ];
    expect(stateOf('bilge-wash', { boat, entries: done(10) }).state).toBe('fit');
    expect(stateOf('bilge-wash', { boat, entries: done(15.3) }).why).toEqual(['overdue']);
  });

  it('of what nobody has counted nothing is to be bought yet', () => {
    const entries = wellLookedAt.filter((entry) => !('spare' in entry && entry.spare === 'fuses'));
    const { answer } = stateOf('fuses', { entries });
    expect(answer.items.find(({ id }) => id === 'fuses')).toMatchObject({ count: null, buy: 0 });
  });

  it('what is wanted for the work and not aboard is bought first', () => {
    const entries = [
      ...wellLookedAt.filter((entry) => !('spare' in entry && entry.spare === 'gear-oil-can')),
      anEntry('count', { spare: 'gear-oil-can', count: 0 }, at - hour),
      anEntry('dip', { fluid: 'gear-oil', level: 1.05 }, at - 60_000),
    ];
    const { answer } = stateOf('gear-oil', { entries });
    expect(answer.toGetReady).toMatchObject([
      { do: 'buy', item: 'gear-oil-can' },
      { do: 'top up', item: 'gear-oil', takes: [{ spare: 'gear-oil-can', count: 0.25 }] },
    ]);
    expect(answer.toGetReadySuffices).toBe(true);
  });

  it('two fluids never take more of one stock than there is', () => {
    const [gearOil, ...others] = aBoat().fluids;
    const oil = { ...gearOil!, low: 1, full: 2, topUpUnderWay: false };
    const boat = { ...aBoat(), fluids: [oil, { ...oil, id: 'other-oil', name: 'Other oil' }, ...others] };
    const low = ['gear-oil', 'other-oil'].map((fluid) => anEntry('dip', { fluid, level: 0.9 }, at - 60_000));
    const entries = [...wellLookedAt, ...low, anEntry('count', { spare: 'gear-oil-can', count: 1.8 }, at)];
    const { answer } = stateOf('gear-oil', { boat, entries });
    expect(answer.toGetReady.map(({ do: what, takes }) => [what, takes[0]?.count])).toEqual([
      ['top up', 0.9],
      ['top up', 0.9],
    ]);
    expect(answer.toGetReadySuffices).toBe(true);
  });

  it('is held to a boat threshold above 98 too, with the reason: fails too often', () => {
    const limits = { ...sandpiper.limits, boat: 99 };
    const [impellers, ...others] = sandpiper.spares;
    const boat = (consequence: 'vital' | 'important') =>
      aBoat({ limits, spares: [{ ...impellers!, consequence }, ...others] });
    const given = {
      entries: [...wellLookedAt, anEntry('count', { spare: 'impellers', count: 0 }, at)],
      demand: { impellers: { per: 'day', engine: null, shape: 1e6, rate: 1e6 / 0.006 } },
    } as const;
    const [vital, important] = (['vital', 'important'] as const).map((consequence) =>
      stateOf('impellers', { ...given, boat: boat(consequence) }),
    );
    expect([vital!.state, vital!.why[0]]).toEqual(['unfit', 'may fail']);
    expect([important!.state, important!.why[0]]).toEqual(['watch', 'may fail']);
  });

  it('a stick that stands over its full mark is watched, off its end or read above it', () => {
    const overFull = (fields: { share: number } | { off: 'above' }) =>
      stateOf('gear-oil', {
        entries: [...wellLookedAt, anEntry('dip', { fluid: 'gear-oil', ...fields }, at - 60_000)],
      }).why;
    expect(overFull({ off: 'above' })).toContain('over full');
    expect(overFull({ share: 1.6 })).toContain('over full');
    expect(overFull({ share: 1.05 })).not.toContain('over full');
  });

  it('nothing marked vital is not ready, whatever the score', () => {
    const boat = aBoat({ fluids: [], anodes: [], services: [], checks: [] });
    const answer = judged({ boat, entries: wellLookedAt.slice(0, 2), at });
    expect(answer.verdict).toBe('not ready');
    expect(answer.reasons[0]).toEqual({ reason: 'nothing vital' });
  });

  it('an empty log says so', () => {
    expect(judged({ boat: aBoat(), entries: [], at }).reasons[0]).toEqual({ reason: 'nothing entered' });
  });

  it('when no item is unfit but together they fall short, the two failing most often are watched and say why', () => {
    const tank = (id: string) => ({ ...sandpiper.fluids[2]!, id, name: id, vary: 0, loss: {} });
    const fluids = [tank('one'), tank('two'), tank('three')];
    const boat = aBoat({ fluids, checks: [], anodes: [], services: [] });
    /** Fails in the passages whose number ends in `from` to `to`, of 100: no two fluids in the same ones. */
    const short = (from: number, to: number) => ({
      ...certainFluid(300, 0, 0),
      draw: (count: number) => ({
        levelL: Float64Array.from({ length: count }, (_, i) => (i % 100 >= from && i % 100 <= to ? 0 : 300)),
        run: new Float64Array(count),
        rest: new Float64Array(count),
      }),
    });
    const given = { one: short(1, 3), two: short(50, 53), three: short(80, 81) };
    const looks = fluids.map(({ id }) => anEntry('dip', { fluid: id, level: 300 }, at - hour));
    const answer = judged({ boat, entries: [...wellLookedAt, ...looks], at, fluids: given });
    expect(answer.verdict).toBe('not ready');
    const saying = answer.items.filter(({ why }) => why[0]?.why === 'no one thing');
    expect(saying.map(({ id, state }) => [id, state])).toEqual([
      ['one', 'watch'],
      ['two', 'watch'],
    ]);
    expect(answer.reasons[0]!.reason).toBe('boat short');
  });

  it('near the threshold more passages are simulated, and on it that is said', () => {
    const { boat } = {
      boat: aBoat({ fluids: [{ ...sandpiper.fluids[2]!, loss: {}, vary: 0 }], checks: [], anodes: [] }),
    };
    const draw = (count: number) => ({
      levelL: Float64Array.from({ length: count }, (_, i) => (i % 20 === 0 ? 0 : 300)),
      run: new Float64Array(count),
      rest: new Float64Array(count),
    });
    const answer = judged({
      boat,
      entries: wellLookedAt,
      at,
      fluids: { water: { ...certainFluid(300, 0, 0), draw } },
    });
    expect([answer.simulations, answer.onTheLine]).toEqual([65_536, 'boat']);
    expect(answer.reasons.map(({ reason }) => reason)).toContain('on the line');
  });
});
