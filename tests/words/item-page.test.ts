import { describe, expect, it } from 'vitest';
import type { ItemDocument } from '../../source/words/item-document.ts';
import { itemLines } from '../../source/words/item-page.ts';

const AT = Date.UTC(2026, 1, 3, 7, 40);
const spread = (mean: number, half: number) => ({ mean, sd: half, p10: mean - half, p90: mean + half });
const common = {
  consequence: 'vital',
  state: 'fit',
  chance: 0.991,
  goodUntil: 'beyond',
  now: null,
  reason: null,
  reasons: [],
  lookedAt: '2026-02-03T07:00:00Z',
} as const;

const gearOil: ItemDocument = {
  ...common,
  id: 'gear-oil',
  kind: 'fluid',
  name: 'gear oil',
  state: 'watch',
  chance: 0.96,
  goodUntil: '2026-02-08T04:00:00Z',
  reason: 'Leaks, drops form; look at the level more often until it is dry.',
  reasons: ['Leaks, drops form; look at the level more often until it is dry.'],
  now: { value: 1.182, sd: 0.021, unit: 'L' },
  run: spread(0.04, 0.02),
  rest: spread(0.001, 0.0005),
  usualDay: spread(0.03, 0.01),
  leak: { tight: 0.05, running: 0.9, lying: 0.02, both: 0.03 },
  split: 'cannot tell',
  lookAgain: { engineHours: 6 },
  job: {
    at: '2026-01-28T10:00:00Z',
    text: 'new seal',
    lowerChance: 0.81,
    ratio: { p10: 0.1, p50: 0.33, p90: 1.2 },
    daysToSettle: 3.2,
  },
  low: 1.1,
  full: 1.3,
  reserve: 1.1,
  atEnd: spread(0.9, 0.1),
  levels: null,
  toSettle: { runs: 3, hours: 1.4 },
  lasts: { days: 2.6, withStores: 'beyond' },
};

describe('an item in sentences', () => {
  it('tells of a fluid how it stands, how it goes, whether the job helped and when to look again', () => {
    expect(itemLines(gearOil, AT, 'UTC')).toEqual([
      'Gear oil: watch; vital.',
      'Leaks, drops form; look at the level more often until it is dry.',
      'Holds until things can next be put right in 96 of 100; good until Sun 8 Feb 04:00.',
      'Last looked at Tue 3 Feb 07:00.',
      'Low mark 1.1 L, full mark 1.3 L, to be kept 1.1 L.',
      'About 1.18 L now, give or take 0.021 L.',
      'Loses 0.04 L an hour running and 0.001 L a day lying: 0.03 L on a usual day, 8 times in 10 between 0.02 L and 0.04 L.',
      'Tight: 5 in 100. Leaks running: 90 in 100; lying: 2 in 100; both: 3 in 100.',
      'Running and lying cannot be told apart yet: dip before and after each of 3 charging runs of 1.4 h.',
      'Since the job on 28 Jan 2026 (new seal): 81 in 100 that it loses less; 0.33 times what it was, 8 times in 10 between 0.1 and 1.2. About 4 more days of readings would settle it.',
      'About 0.9 L when things can next be put right, leaving now.',
      'On usual days what is in it lasts 2.6 days, down to 1.1 L; with what is in the stores, more than ten years (9 times in 10).',
      'Dip every 6 h under way.',
    ]);
  });

  it('gives every reason there is, not the worst alone', () => {
    const reasons = [
      'Goes at another rate since 28 Jan 2026, and no job explains it; find out why.',
      'Leaks.',
    ];
    expect(itemLines({ ...gearOil, reasons }, AT, 'UTC').slice(1, 3)).toEqual(reasons);
  });

  it('tells of a fluid never read only what is known', () => {
    const unread: ItemDocument = {
      ...gearOil,
      ...{ now: null, run: null, rest: null, usualDay: null, leak: null, split: null, lookAgain: null },
      ...{
        job: null,
        atEnd: null,
        lasts: null,
        lookedAt: null,
        reason: null,
        reasons: [],
        goodUntil: null,
        chance: 0,
        state: 'unseen',
      },
    };
    expect(itemLines(unread, AT, 'UTC')).toEqual([
      'Gear oil: not looked at; vital.',
      'Nothing is known of it, so nothing is reckoned against it either.',
      'Low mark 1.1 L, full mark 1.3 L, to be kept 1.1 L.',
    ]);
  });

  it('tells of an anode when it is finished', () => {
    const lines = itemLines(
      {
        ...common,
        id: 'pencil',
        kind: 'anode',
        name: 'Pencil',
        now: { value: 0.6, sd: 0.05, unit: 'share' },
        wear: { mean: 0.006, sd: 0.002 },
        reachesLimit: {
          p10: '2026-02-20T00:00:00Z',
          p50: '2026-03-14T00:00:00Z',
          p90: '2026-05-01T00:00:00Z',
        },
        limit: 0.333333,
        currentA: 0.00468,
      },
      AT,
      'UTC',
    );
    expect(lines.slice(3)).toEqual([
      'About 60 % left; finished at 33 %.',
      'Wears 18 % in 30 days; finished about 14 Mar 2026, 8 times in 10 between 20 Feb 2026 and 1 May 2026.',
      'A mean galvanic current of about 4.7 mA eats it.',
    ]);
  });

  it('tells of a spare what is aboard, what is short, what to buy and where it lies', () => {
    const lines = itemLines(
      {
        ...common,
        id: 'hose',
        kind: 'spare',
        name: 'Hose',
        count: 1.5,
        rate: { mean: 0.004, sd: 0.002, per: 'day' },
        shortChance: 0.12,
        cover95: 2,
        buy: 0.5,
        cost: 7.5,
        unit: 'm',
        locker: 'port settee',
      },
      AT,
      'UTC',
    );
    expect(lines.slice(3)).toEqual([
      '1.5 m aboard.',
      'Used unplanned about once in 250 days (0.004, give or take 0.002).',
      'Runs short on this passage: 12 in 100.',
      '2 m would do in 95 of 100.',
      'Buy 0.5 m, about 7.50.',
      'Stowed: port settee.',
    ]);
  });

  it('tells of a service when it is due, of a check what it read, of a date its last day', () => {
    const service = {
      ...common,
      id: 's',
      kind: 'service',
      name: 'Belt',
      dueHours: 100,
      dueOn: null,
    } as const;
    expect(itemLines({ ...service, dueInHours: 61 }, AT, 'UTC').at(-1)).toBe('Due in 61 engine hours.');
    expect(itemLines({ ...service, dueInHours: -38 }, AT, 'UTC').at(-1)).toBe('38 h overdue.');
    expect(itemLines({ ...service, dueInHours: null, dueOn: '2026-09-04T00:00:00Z' }, AT, 'UTC').at(-1)).toBe(
      'Due by 4 Sep 2026.',
    );
    const check = { ...common, id: 'c', kind: 'check', name: 'Bank', ok: true, when: 'stopped' } as const;
    expect(itemLines({ ...check, now: { value: 12.61, sd: 0, unit: 'V' } }, AT, 'UTC').at(-1)).toBe(
      'It read 12.6 V.',
    );
    const dated = { ...common, id: 'd', kind: 'dated', name: 'Flares', expires: '2027-03-31' } as const;
    expect(itemLines(dated, AT, 'UTC').at(-1)).toBe('Good until 31 Mar 2027.');
  });
});
