import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import type { Loaded } from '../../source/screens/model.ts';
import type { VerdictDocument } from '../../source/words/document.ts';
import type { ItemDocument } from '../../source/words/item-document.ts';
import { aBoat } from './a-boat.ts';
import { anEntry } from './an-entry.ts';

type Of<K extends ItemDocument['kind']> = Extract<ItemDocument, { kind: K }>;
type Given<K extends ItemDocument['kind']> = Partial<Of<K>> & { id: string; name: string };

/** The moment the invented document speaks of. */
export const AT = '2026-02-03T07:40:00Z';
const HOUR_MS = 3_600_000;
const FORECAST = '20260203T0240Z-aaaaaaaaaaaa';

/** An invented answer that shows all kinds and all four states, held for the weather. `overrides` replace whole top-level fields. */
export function aDocument(overrides: Partial<VerdictDocument> = {}): VerdictDocument {
  return {
    format: 1,
    boat: 'Sandpiper',
    at: AT,
    passage: { id: 'to-otter-cay', name: 'Heron Bight to Otter Cay', nm: 60, hours: 11.6, toGo: null },
    forecast: {
      issuedAt: '2026-02-03T02:40:00Z',
      ageHours: 5,
      source: 'typed',
      age: 'fresh',
      name: FORECAST,
      issuer: '',
      chosen: false,
    },
    verdict: 'hold',
    reasons: ['She is fit, the weather is not yet; it opens Thu 5 Feb 06:00 UTC.'],
    threshold: { boat: 95, go: 85 },
    score: { now: 22.1, boat: 97.3, weather: 22.6, error: 0.25 },
    windows: [
      {
        at: '2026-02-05T06:00:00Z',
        until: '2026-02-05T15:00:00Z',
        score: 91.2,
        opens: null,
        closes: 'gusts pass 28 kn off Scarva Head',
      },
    ],
    weatherAlone: null,
    best: { at: '2026-02-05T09:00:00Z', score: 91.2 },
    endurance: { until: '2026-02-09T05:00:00Z', item: 'water' },
    staying: null,
    shelter: [],
    curve: aCurve(),
    items: someItems(),
    toGetReady: [],
    whileHeld: [
      {
        do: 'renew',
        item: 'pencil',
        takes: [{ spare: 'pencils', count: 1 }],
        minutes: 20,
        boatScoreAfter: 97.4,
        buys: null,
      },
      { do: 'service', item: 'impeller-change', takes: [], minutes: 45, boatScoreAfter: 97.9, buys: null },
    ],
    beforeLeaving: [
      { check: 'raw-water', made: false, minutes: 1 },
      { check: 'seacocks', made: true, minutes: 2 },
    ],
    trouble: [],
    toGetReadySuffices: true,
    engines: [
      { id: 'main', name: 'Main engine', hours: 3412.6, readAt: '2026-02-03T07:00:00Z', perDay: 0.7 },
    ],
    underWaySince: null,
    anchorage: { id: 'heron-bight', name: 'Heron Bight', since: '2026-02-01T16:00:00Z' },
    simulations: 4096,
    seed: 1,
    reasonKinds: ['fit'],
    sky: { nights: [3, 4, 5].map(aNight), sun: 'rises and sets' },
    weather: someWeather(),
    forecasts: [],
    now: null,
    met: { looks: 0, wanted: 30, by: [], own: null },
    decision: null,
    ...overrides,
  };
}

/** A hundred and twenty hours of it, the hard part a day before and after the good spell; the same on both legs. */
function someWeather(): NonNullable<VerdictDocument['weather']> {
  const hours = Array.from({ length: 120 }, (_, hour) => hour);
  const wind = hours.map((hour) => 14 + 10 * Math.abs(Math.sin(((hour - 55) * Math.PI) / 90)));
  const leg = { courseDeg: 40, lastsHours: 5.8, forecast: 0, nm: 30 };
  return {
    from: AT,
    limits: { wind: 20, gust: 28, seas: 2, headwind: 15, overHours: 3 },
    legs: [
      { ...leg, place: 'Scarva Head', startsHours: 0 },
      { ...leg, place: 'Otter Sound', startsHours: 5.8 },
    ],
    forecasts: [
      {
        wind,
        windSd: hours.map((hour) => 2.5 + hour / 30),
        gust: wind.map((knots) => knots * 1.3),
        dir: hours.map((hour) => 200 + hour),
        seas: wind.map((knots) => knots / 11),
        seasSd: wind.map((knots) => knots / 90),
        period: hours.map((hour) => (hour < 100 ? 6 : null)),
        derivedGust: false,
      },
    ],
    departures: aCurve().map(({ weather }) => [
      { leg: 0, what: 'gust', share: (100 - weather!) / 200 },
      { leg: 1, what: 'wind', share: (100 - weather!) / 400 },
    ]),
  };
}

/** Twenty days of a level that goes, a top-up and a job in them. */
function someLevels(): NonNullable<Of<'fluid'>['levels']> {
  const days = Array.from({ length: 20 }, (_, day) => ({
    at: new Date(Date.UTC(2026, 0, 14 + day, 7)).toISOString(),
    level: 1.28 - 0.0045 * day,
  }));
  const point = (at: string, mean: number, apart: number) => ({
    at,
    mean,
    p10: mean - apart,
    p90: mean + apart,
  });
  return {
    readings: days.map(({ at, level }) => ({ at, value: level, off: 'on' })),
    done: [
      { at: '2026-01-20T08:00:00Z', kind: 'topup', amount: 0.01 },
      { at: '2026-01-24T15:00:00Z', kind: 'job' },
    ],
    line: [...days.map(({ at, level }) => point(at, level, 0.01)), point(AT, 1.18, 0.01)],
    ahead: [point(AT, 1.18, 0.01), point('2026-02-06T07:40:00Z', 1.12, 0.03)],
  };
}

/** From half past five in the evening of a day of February to seven the next morning. */
function aNight(day: number): { from: string; until: string } {
  return { from: `2026-02-0${day}T17:30:00Z`, until: `2026-02-0${day + 1}T07:00:00Z` };
}

/** The small boat, a few weeks of her log, and her condition at the document's moment. */
export function aLoaded(overrides: Partial<Loaded> = {}): Loaded {
  const boat = overrides.boat ?? aBoat();
  const entries = overrides.entries ?? someEntries();
  const condition = conditionAt(boat, entries, Date.parse(AT));
  return {
    boat,
    entries,
    condition,
    own: { tables: [], troubles: [] },
    struck: [],
    quiet: [],
    forecasts: [],
    troubles: [],
    readOnly: null,
    seenUntil: null,
    ...overrides,
  };
}

/** The same boat once these entries have been read too. */
export function withEntries(loaded: Loaded, more: readonly Entry[]): Loaded {
  const all = [...loaded.entries, ...more];
  const struck = new Set(all.flatMap((entry) => (entry.kind === 'strike' ? [entry.entry] : [])));
  const entries = all.filter(({ id }) => !struck.has(id));
  return { ...loaded, entries, condition: conditionAt(loaded.boat, entries, Date.parse(AT)) };
}

export function aFluid(given: Given<'fluid'>): Of<'fluid'> {
  const spread = (mean: number) => ({ mean, sd: mean / 10, p10: mean * 0.87, p90: mean * 1.13 });
  return {
    ...common,
    kind: 'fluid',
    consequence: 'vital',
    low: 0,
    full: 200,
    reserve: 40,
    now: { value: 165, sd: 2, unit: 'L' },
    run: null,
    rest: spread(12),
    usualDay: spread(12),
    leak: null,
    split: null,
    lookAgain: { days: 3 },
    job: null,
    atEnd: spread(140),
    levels: null,
    toSettle: null,
    lasts: null,
    ...given,
  };
}

const common = {
  consequence: 'important' as const,
  state: 'fit' as const,
  chance: 1,
  goodUntil: 'beyond' as const,
  now: null,
  reason: null,
  reasons: [],
  lookedAt: '2026-02-03T07:00:00Z',
};

function aSpare(given: Given<'spare'>): Of<'spare'> {
  const rate = { mean: 0.002, sd: 0.001, per: 'engine hour' as const };
  const rest = {
    unit: 'each',
    count: 2,
    rate,
    shortChance: 0.01,
    cover95: 1,
    buy: 0,
    cost: null,
    locker: 'port settee',
  };
  return { ...common, kind: 'spare', ...rest, ...given };
}

function aCheck(given: Given<'check'>): Of<'check'> {
  return { ...common, kind: 'check', ok: true, when: 'stopped', ...given };
}

function aService(given: Given<'service'>): Of<'service'> {
  return {
    ...common,
    kind: 'service',
    dueHours: 3473,
    dueOn: '2026-09-04T00:00:00Z',
    dueInHours: 60.4,
    ...given,
  };
}

function someItems(): ItemDocument[] {
  return [
    aFluid({
      id: 'gear-oil',
      name: 'Gear oil',
      state: 'watch',
      chance: 0.97,
      goodUntil: '2026-02-08T04:00:00Z',
      low: 1.1,
      full: 1.3,
      reserve: 1.1,
      now: { value: 1.18, sd: 0.01, unit: 'L' },
      atEnd: { mean: 1.12, sd: 0.02, p10: 1.09, p90: 1.15 },
      levels: someLevels(),
      reason: 'goes at another rate since 28 Jan 2026, and no job explains it; find out why',
      reasons: ['goes at another rate since 28 Jan 2026, and no job explains it; find out why'],
    }),
    aFluid({
      id: 'coolant',
      name: 'Coolant',
      low: 4,
      full: 6.5,
      now: { value: 6, sd: 0.1, unit: 'L' },
      atEnd: null,
    }),
    aFluid({
      id: 'fuel',
      name: 'Fuel',
      goodUntil: '2026-02-10T06:00:00Z',
      now: { value: 120, sd: 3, unit: 'L' },
      atEnd: { mean: 62, sd: 4, p10: 57, p90: 67 },
    }),
    aFluid({ id: 'water', name: 'Fresh water', full: 300, goodUntil: '2026-02-09T05:00:00Z' }),
    {
      ...common,
      kind: 'anode',
      id: 'pencil',
      name: 'Heat-exchanger pencil anode',
      state: 'watch',
      chance: 0.96,
      goodUntil: '2026-02-09T00:00:00Z',
      now: { value: 0.4, sd: 0.08, unit: 'share' },
      reason: 'holds to the end in 96 in 100, where 95 are wanted; renew it',
      reasons: ['holds to the end in 96 in 100, where 95 are wanted; renew it'],
      wear: { mean: 0.006, sd: 0.002 },
      reachesLimit: { p10: '2026-02-07T00:00:00Z', p50: '2026-02-12T00:00:00Z', p90: '2026-02-25T00:00:00Z' },
      limit: 1 / 3,
      currentA: 0.0032,
    },
    aSpare({
      id: 'impellers',
      name: 'Raw-water impellers',
      state: 'watch',
      count: 1,
      shortChance: 0.04,
      buy: 1,
      cost: null,
      reason: '1 aboard, 2 wanted',
      reasons: ['1 aboard, 2 wanted'],
    }),
    aSpare({
      id: 'gear-oil-can',
      name: 'Gear oil in cans',
      unit: 'L',
      count: 2,
      now: { value: 2, sd: 0, unit: 'L' },
    }),
    aSpare({ id: 'pencils', name: 'Pencil anodes', count: 3 }),
    aSpare({
      id: 'fuses',
      name: 'Fuses',
      state: 'unseen',
      count: null,
      shortChance: null,
      reason: 'not entered yet; count what is aboard',
      reasons: ['not entered yet; count what is aboard'],
    }),
    aService({ id: 'oil-filter', name: 'Oil and filter' }),
    aService({
      id: 'impeller-change',
      name: 'Raw-water impeller',
      state: 'unfit',
      consequence: 'vital',
      dueInHours: -38,
      dueOn: null,
      goodUntil: null,
      chance: 0,
      reason: '38 h overdue; do it, then enter it',
      reasons: ['38 h overdue; do it, then enter it'],
    }),
    aCheck({ id: 'house-bank', name: 'House bank at dawn', now: { value: 12.7, sd: 0, unit: 'V' } }),
    aCheck({
      id: 'fire-blanket',
      name: 'Fire blanket in its place',
      state: 'unseen',
      ok: true,
      lookedAt: '2025-12-25T08:00:00Z',
      reason: 'not looked at for 40 days, where every 14 days is wanted; look at it and enter what you find',
      reasons: [
        'not looked at for 40 days, where every 14 days is wanted; look at it and enter what you find',
      ],
    }),
    aCheck({
      id: 'raw-water',
      name: 'Raw water flows',
      when: 'leaving',
      state: 'unseen',
      ok: null,
      lookedAt: null,
      reason: 'looked at before every departure, and not yet for this one',
      reasons: ['looked at before every departure, and not yet for this one'],
    }),
    aCheck({ id: 'seacocks', name: 'Seacocks open', when: 'leaving' }),
    { ...common, kind: 'dated', id: 'flares', name: 'Flares', expires: '2027-03-31' },
  ];
}

/** Four days of departures, one good spell in them. */
function aCurve(): VerdictDocument['curve'] {
  return Array.from({ length: 97 }, (_, hour) => {
    const weather = 10 + 82 * Math.exp(-(((hour - 50) / 9) ** 2));
    const boat = Math.max(0, 97.3 - Math.max(0, hour - 70) * 0.6);
    const at = new Date(Date.parse(AT) + hour * HOUR_MS).toISOString();
    return { at, boat, weather, score: Math.min(boat, weather) };
  });
}

function someEntries(): Entry[] {
  const day = (count: number) => Date.parse(AT) - count * 24 * HOUR_MS;
  const days = Array.from({ length: 20 }, (_, index) => 20 - index);
  return [
    ...days.flatMap((count) => [
      anEntry('hours', { engine: 'main', reading: 3412.6 - count * 0.7 }, day(count)),
      anEntry('dip', { fluid: 'gear-oil', level: 1.28 - (20 - count) * 0.005 }, day(count)),
      anEntry('dip', { fluid: 'water', level: 290 - (20 - count) * 6 }, day(count) + HOUR_MS),
    ]),
    anEntry('anode', { anode: 'pencil', share: 0.7 }, day(60)),
    anEntry('anode', { anode: 'pencil', share: 0.4 }, day(5)),
    anEntry('count', { spare: 'impellers', count: 2 }, day(100)),
    anEntry('use', { spare: 'impellers', count: 1, for: 'raw-water pump' }, day(12)),
    anEntry('job', { item: 'gear-oil', text: 'new shaft seal' }, day(6)),
  ].sort((a, b) => (a.at < b.at ? -1 : 1));
}
