import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import type { VerdictDocument } from '../../source/words/document.ts';
import type { ItemDocument } from '../../source/words/item-document.ts';
import { verdictPage } from '../../source/words/page.ts';

const spread = (mean: number, sd: number) => ({ mean, sd, p10: mean - sd, p90: mean + sd });

const common = {
  consequence: 'vital',
  state: 'fit',
  chance: 1,
  goodUntil: 'beyond',
  now: null,
  reason: null,
  reasons: [],
  lookedAt: '2026-02-03T07:00:00Z',
} as const;

const items: ItemDocument[] = [
  {
    ...common,
    id: 'gear-oil',
    kind: 'fluid',
    name: 'Gear oil',
    state: 'unfit',
    chance: 0.78,
    goodUntil: null,
    now: { value: 1.12, sd: 0.02, unit: 'L' },
    reason: 'Fails in 22 of 100 passages, where at most 5 may; top it up, or find where it goes.',
    reasons: ['Fails in 22 of 100 passages, where at most 5 may; top it up, or find where it goes.'],
    run: spread(0.04, 0.01),
    rest: spread(0, 0.001),
    usualDay: spread(0.03, 0.01),
    leak: { tight: 0.1, running: 0.8, lying: 0.05, both: 0.05 },
    split: 'known',
    lookAgain: { engineHours: 6 },
    job: null,
    low: 1.1,
    full: 1.3,
    reserve: 1.1,
    atEnd: spread(0.9, 0.1),
    levels: null,
    toSettle: null,
    lasts: null,
  },
  {
    ...common,
    id: 'water',
    kind: 'fluid',
    name: 'Water',
    goodUntil: '2026-02-09T04:00:00Z',
    now: { value: 165, sd: 8, unit: 'L' },
    run: spread(0, 0),
    rest: spread(12, 3),
    usualDay: spread(12, 3),
    leak: { tight: 1, running: 0, lying: 0, both: 0 },
    split: 'known',
    lookAgain: { days: 4 },
    job: null,
    low: 0,
    full: 300,
    reserve: 18,
    atEnd: spread(100, 10),
    levels: null,
    toSettle: null,
    lasts: null,
  },
  {
    ...common,
    id: 'pencil',
    kind: 'anode',
    name: 'Heat exchanger',
    state: 'watch',
    now: { value: 0.4, sd: 0.08, unit: 'share' },
    reason: 'Fails in 3 of 100 passages; renew it.',
    reasons: ['Fails in 3 of 100 passages; renew it.'],
    wear: { mean: 0.006, sd: 0.002 },
    reachesLimit: { p10: '2026-02-06T00:00:00Z', p50: '2026-02-14T00:00:00Z', p90: '2026-03-01T00:00:00Z' },
    limit: 0.333333,
    currentA: null,
  },
  {
    ...common,
    id: 'impeller',
    kind: 'spare',
    name: 'Impeller',
    now: { value: 1, sd: 0, unit: 'each' },
    count: 1,
    rate: null,
    shortChance: 0.041,
    cover95: 1,
    buy: 1,
    cost: null,
    unit: 'each',
    locker: 'port settee',
  },
  {
    ...common,
    id: 'hose',
    kind: 'spare',
    name: 'Hose',
    state: 'unseen',
    goodUntil: null,
    reason: 'Not entered yet; count what is aboard.',
    reasons: ['Not entered yet; count what is aboard.'],
    lookedAt: null,
    count: null,
    rate: null,
    shortChance: null,
    cover95: null,
    buy: 0,
    cost: null,
    unit: 'm',
    locker: null,
  },
  {
    ...common,
    id: 'oil-change',
    kind: 'service',
    name: 'Oil and filter',
    dueHours: 3473.6,
    dueOn: '2026-09-04T00:00:00Z',
    dueInHours: 61,
  },
  {
    ...common,
    id: 'belt',
    kind: 'service',
    name: 'Drive belt',
    state: 'watch',
    reason: '38 h overdue; do it, then enter it.',
    reasons: ['38 h overdue; do it, then enter it.'],
    dueHours: 3374.6,
    dueOn: null,
    dueInHours: -38,
  },
  {
    ...common,
    id: 'blanket',
    kind: 'check',
    name: 'Fire blanket',
    consequence: 'important',
    state: 'unseen',
    lookedAt: '2025-12-25T09:00:00Z',
    reason: 'Not looked at for 40 days; every 30 days is wanted: look at it and enter what you find.',
    reasons: ['Not looked at for 40 days; every 30 days is wanted: look at it and enter what you find.'],
    ok: true,
    when: 'stopped',
  },
  {
    ...common,
    id: 'raw-water',
    kind: 'check',
    name: 'Raw water flows',
    state: 'unseen',
    lookedAt: null,
    reason: 'Looked at before every departure, and not yet for this one.',
    reasons: ['Looked at before every departure, and not yet for this one.'],
    ok: null,
    when: 'leaving',
  },
  { ...common, id: 'flares', kind: 'dated', name: 'Flares', expires: '2027-03-31' },
];

const document: VerdictDocument = {
  format: 1,
  boat: 'Whimbrel',
  at: '2026-02-03T07:40:00Z',
  passage: { id: 'p', name: 'Port Halloran', nm: 62.4, hours: 12.1, toGo: null },
  forecast: null,
  verdict: 'not ready',
  reasons: [
    'Gear oil: fails in 22 of 100 passages, where at most 5 may; top it up, or find where it goes.',
    'There is no forecast, so the weather is not judged and the answer is never go.',
  ],
  threshold: { boat: 95, go: 85 },
  score: { now: null, boat: 77.9, weather: null, error: 0.6 },
  windows: [],
  weatherAlone: null,
  best: null,
  endurance: { until: '2026-02-09T04:00:00Z', item: 'water' },
  staying: null,
  shelter: [],
  curve: [],
  items,
  toGetReady: [
    {
      do: 'top up',
      item: 'gear-oil',
      takes: [
        { spare: 'hose', count: 0.3 },
        { spare: 'impeller', count: 1 },
      ],
      minutes: 10,
      boatScoreAfter: 97.2,
      buys: null,
    },
  ],
  whileHeld: [{ do: 'service', item: 'belt', takes: [], minutes: 45, boatScoreAfter: 97.2, buys: null }],
  beforeLeaving: [
    { check: 'raw-water', made: false, minutes: 1 },
    { check: 'blanket', made: true, minutes: 5 },
  ],
  trouble: ['log/a.ndjson, line 3: this is not a line of the log\n   scribble\nTry: hoveshort inspect'],
  engines: [
    { id: 'main', name: 'Main engine', hours: 3412.6, readAt: '2026-02-03T07:00:00Z', perDay: 0.697 },
  ],
  underWaySince: null,
  anchorage: { id: 'sound', name: 'Ardlish Sound', since: '2026-02-01T12:00:00Z' },
  simulations: 4096,
  seed: 1,
  toGetReadySuffices: true,
  reasonKinds: ['item', 'no forecast'],
  sky: null,
  weather: null,
  forecasts: [],
  now: null,
  met: { looks: 0, wanted: 30, by: [], own: null },
  decision: null,
};

describe('the verdict as a page', () => {
  it('says how much is to be bought', () => {
    const buy = { do: 'buy', item: 'impeller', takes: [], minutes: 60, boatScoreAfter: 97, buys: 2 };
    expect(verdictPage({ ...document, toGetReady: [buy] }, 80, 'UTC')).toContain(
      '1. Buy: 2 x Impeller, 1 h; then the boat is 97 in 100.',
    );
  });

  it('counts on a look being found well, and says so', () => {
    const look = { do: 'look', item: 'gear-oil', takes: [], minutes: 5, boatScoreAfter: 97, buys: null };
    expect(verdictPage({ ...document, toGetReady: [look] }, 80, 'UTC')).toContain(
      '1. Look at: Gear oil, 5 min; if found well the boat is 97 in 100.',
    );
  });

  it('reads in the order a skipper asks: as of when, may we leave, why, what first, then how everything is', () => {
    expect(verdictPage(document, 80, 'UTC')).toBe(`WHIMBREL, lying at Ardlish Sound, day 2
As of Tue 3 Feb 2026 07:40 (UTC). No forecast.

NOT READY
  Boat score 3 in 4 (77 in 100); she is ready from 95.
  Gear oil: fails in 22 of 100 passages, where at most 5 may; top it up, or find
    where it goes.
  There is no forecast, so the weather is not judged and the answer is never go.

LEAVING: Port Halloran, 62 nm, about 12 h
  When to leave is not known: no forecast.
  She can wait until Mon 9 Feb 04:00; then Water runs short.

TO GET READY: 10 min
  1. Top up: Gear oil, 10 min, takes 0.3 m Hose, 1 x Impeller; then the boat is
     97 in 100.

WORTH DOING WHILE HELD: 45 min
  1. Do: Drive belt, 45 min; then the boat is 97 in 100.

BEFORE THE ANCHOR COMES UP: 1 look, 1 min
  to do: Raw water flows
  made: Fire blanket

ENGINE HOURS
  Main engine  3412.6 h  read Tue 3 Feb 07:00  0.7 h a day lying

FLUIDS             now     low    full   good until
  unfit  Gear oil  1.12 L  1.1 L  1.3 L  not now
      Fails in 22 of 100 passages, where at most 5 may; top it up, or find where
      it goes.
  fit    Water     165 L   0 L    300 L  Mon 9 Feb 04:00

ANODES                   left  reaches its limit
  watch  Heat exchanger  40 %  about 14 Feb 2026  (6 Feb 2026 to 1 Mar 2026)
      Fails in 3 of 100 passages; renew it.

STORES            aboard  short this passage
  fit   Impeller  1       4 in 100            buy 1
  not entered yet (1): Hose

SERVICES                  due
  fit     Oil and filter  in 61 h or 4 Sep 2026
  watch   Drive belt      38 h overdue
      38 h overdue; do it, then enter it.

CHECKS                         answer  looked at
  not looked at  Fire blanket  yes     25 Dec 2025
      Not looked at for 40 days; every 30 days is wanted: look at it and enter
      what you find.
  before leaving: 1, listed above

DATES          good until
  fit  Flares  31 Mar 2027

TROUBLE
  log/a.ndjson, line 3: this is not a line of the log
       scribble
    Try: hoveshort inspect

This is an aid: it knows the log, not the boat. The skipper decides. Makers'
manuals, local rules and licensed people come first.
`);
  });

  it('begins with the danger where staying is one', () => {
    const danger = {
      ...document,
      staying: { until: '2026-02-04T20:00:00Z', why: 'Ardlish Sound: wind 34 kn from the north' },
    };
    const lines = verdictPage(danger, 80, 'UTC').split('\n');
    expect(lines[3]).toBe('STAYING: untenable from Wed 4 Feb 20:00. Ardlish Sound: wind 34 kn from the');
  });

  it('says with the windows how long she may lie there, where she can leave before', () => {
    const later = { ...document, staying: { until: '2026-02-09T20:00:00Z', why: 'wind from the north' } };
    const windows = [{ at: document.at, until: document.at, score: 90, opens: null, closes: null }];
    const page = verdictPage({ ...later, verdict: 'go', windows, toGetReady: [] }, 80, 'UTC');
    expect(page).not.toContain('STAYING');
    expect(page).toContain('\n  Where she lies is untenable from Mon 9 Feb 20:00. Wind from the north.\n');
  });

  it('says how old the forecast is, when it opens and closes, and when the work must start', () => {
    const page = verdictPage(
      {
        ...document,
        forecast: {
          ...{ issuedAt: '2026-02-03T02:40:00Z', ageHours: 5, source: 'bulletin', age: 'fresh' },
          ...{ name: '20260203T0240Z-aaaaaaaaaaaa', issuer: 'Harbour Office', chosen: true },
        },
        score: { now: 22.3, boat: 97, weather: 23, error: 0.5 },
        windows: [
          {
            at: '2026-02-05T06:00:00Z',
            until: '2026-02-05T15:00:00Z',
            score: 91.2,
            opens: null,
            closes: 'gusts pass 28 kn off Scarva Head',
          },
        ],
        weatherAlone: {
          at: '2026-02-05T06:00:00Z',
          until: '2026-02-05T15:00:00Z',
          startWorkBy: '2026-02-04T15:00:00Z',
        },
        shelter: [{ passage: 'inner-bight', verdict: 'go', score: 93.1, name: 'Inner Bight' }],
      },
      80,
      'Europe/Paris',
    );
    expect(page).toContain(
      'As of Tue 3 Feb 2026 08:40 (Europe/Paris). The forecast, a bulletin from Harbour\nOffice, by your choice, is 5 h old.\n',
    );
    expect(page).toContain(
      '  Boat score 19 in 20 (97 in 100); she is ready from 95; with the weather 22 in\n',
    );
    expect(page).toContain(
      '  Window: Thu 5 Feb 07:00, for 9 h, 91 in 100.\n  It closes: gusts pass 28 kn off Scarva Head.\n',
    );
    expect(page).toContain('  The weather alone opens Thu 5 Feb 07:00: start the work by Wed 4 Feb 16:00.\n');
    expect(page).toContain('  Shelter: Inner Bight: go, 93 in 100.\n');
  });

  it('keeps its sentences inside the width, and says the same in any width', () => {
    const words = (columns: number) => verdictPage(document, columns, 'UTC').split(/\s+/).join(' ');
    expect(words(40)).toBe(words(120));
    const noTables = { ...document, items: [], engines: [], trouble: [] };
    for (const columns of [40, 60, 80, 120]) {
      const wide = verdictPage(noTables, columns, 'UTC')
        .split('\n')
        .filter((line) => stringWidth(line) > columns);
      expect(wide).toEqual([]);
    }
  });

  it('says when no work known here would make her ready', () => {
    const page = verdictPage({ ...document, toGetReadySuffices: false }, 80, 'UTC');
    expect(page).toContain('     97 in 100.\n  That is not enough: nothing known here brings her to 95.\n');
    const none = { ...document, toGetReady: [], toGetReadySuffices: false };
    expect(verdictPage(none, 80, 'UTC')).toContain('TO GET READY\n  Nothing known here brings her to 95.\n');
  });

  it('shows the first five troubles and counts the rest', () => {
    const page = verdictPage(
      { ...document, trouble: Array.from({ length: 8 }, (_, i) => `trouble ${i + 1}`) },
      80,
      'UTC',
    );
    expect(page).toContain('  trouble 5\n  and 3 more: hoveshort inspect\n');
    expect(page).not.toContain('trouble 6');
  });

  it('leaves out what the boat does not have, and still says it is an aid', () => {
    const bare = {
      ...document,
      items: [],
      engines: [],
      beforeLeaving: [],
      whileHeld: [],
      toGetReady: [],
      trouble: [],
      passage: null,
      endurance: null,
      anchorage: null,
    };
    expect(verdictPage(bare, 80, 'UTC')).toBe(`WHIMBREL, lying
As of Tue 3 Feb 2026 07:40 (UTC). No forecast.

NOT READY
  Boat score 3 in 4 (77 in 100); she is ready from 95.
  Gear oil: fails in 22 of 100 passages, where at most 5 may; top it up, or find
    where it goes.
  There is no forecast, so the weather is not judged and the answer is never go.

LEAVING
  When to leave is not known: no forecast.

TO GET READY: nothing

This is an aid: it knows the log, not the boat. The skipper decides. Makers'
manuals, local rules and licensed people come first.
`);
  });

  it('cannot be made to move the cursor by a name', () => {
    const hostile = {
      ...document,
      boat: 'a\u001b[2J\u202eb',
      items: items.map((item) => ({ ...item, name: 'x\u009by\nz' })),
    };
    expect(verdictPage(hostile, 80, 'UTC')).not.toMatch(/[\u001b\u009b\u202e]/);
  });
});
