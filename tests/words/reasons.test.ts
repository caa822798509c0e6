import { describe, expect, it } from 'vitest';
import type { Answer, ItemAnswer, Reason, Why } from '../../source/readiness/answer.ts';
import { reasonSentence } from '../../source/words/reasons.ts';
import { aBoat } from '../helpers/a-boat.ts';

const boat = aBoat();
const at = Date.UTC(2026, 1, 3, 7, 40);

const facts = {
  consequence: 'vital',
  state: 'watch',
  chance: 0.9,
  goodUntil: null,
  now: null,
  lookedAt: null,
} as const;

function anItem(id: string, why: Why): ItemAnswer {
  const common = { ...facts, id, why: [why] };
  switch (id) {
    case 'pencil':
      return { ...common, kind: 'anode', name: 'Heat-exchanger pencil anode', belief: null };
    case 'impellers':
      return {
        ...common,
        kind: 'spare',
        name: 'Raw-water impellers',
        count: 1,
        rate: null,
        shortChance: 0.1,
        cover95: 2,
        buy: 1,
      };
    case 'impeller-change':
      return {
        ...common,
        kind: 'service',
        name: 'Raw-water impeller',
        dueHours: null,
        dueOn: null,
        dueInHours: null,
      };
    case 'house-bank':
      return {
        ...common,
        kind: 'check',
        name: 'House bank at dawn',
        ok: false,
        leaving: false,
        unsettled: false,
      };
    case 'flares':
      return { ...common, kind: 'dated', name: 'Flares', expires: '2026-03-31' };
    default:
      return {
        ...common,
        kind: 'fluid',
        name: boat.fluids.find((one) => one.id === id)!.name,
        belief: null,
        lookAgain: null,
        endL: null,
        endsAt: null,
        lasts: null,
      };
  }
}

function answerWith(items: readonly ItemAnswer[]): Answer {
  return {
    at,
    passage: null,
    forecast: null,
    verdict: 'not ready',
    reasons: [],
    threshold: { boat: 95, go: 85 },
    score: { now: null, boat: 97.3, weather: null, error: 0.3 },
    onTheLine: null,
    windows: [],
    weatherAlone: null,
    best: null,
    endurance: null,
    staying: null,
    shelter: [],
    curve: [],
    items,
    toGetReady: [],
    toGetReadySuffices: true,
    whileHeld: [],
    beforeLeaving: [],
    trouble: [],
    simulations: 4096,
    seed: 1,
    sky: null,
    weather: null,
  };
}

const day = (month: number, date: number) => Date.UTC(2026, month - 1, date, 12);

const whys: readonly (readonly [id: string, why: Why, said: string])[] = [
  [
    'gear-oil',
    { why: 'past limit', value: 0.8543, limit: 1.1, unit: 'L' },
    'Gear oil: about 0.854 L now, under the low mark at 1.1 L; top it up.',
  ],
  [
    'gear-oil',
    { why: 'past limit', value: 1.0961, limit: 1.1, unit: 'L' },
    'Gear oil: about 1.1 L now, just under the low mark at 1.1 L; top it up.',
  ],
  [
    'fuel',
    { why: 'past limit', value: 31, limit: 40, unit: 'L' },
    'Fuel: about 31 L now, under the 40 L to be kept; top it up.',
  ],
  [
    'pencil',
    { why: 'past limit', value: 0.3, limit: 1 / 3, unit: 'share' },
    'Heat-exchanger pencil anode: about 30 % of its metal left, and it is finished at 33 %; renew it.',
  ],
  [
    'fuel',
    { why: 'may fail', chance: 0.22, threshold: 0.95 },
    'Fuel: fails in 22 of 100 passages, where at most 5 may; top it up, or find where it goes.',
  ],
  [
    'fuel',
    { why: 'may fail', chance: 0.012, threshold: 0.995 },
    'Fuel: fails in 2 of 100 passages, where at most 0.5 may; top it up, or find where it goes.',
  ],
  [
    'fuel',
    { why: 'may fail', chance: 0.03, threshold: 0.95 },
    'Fuel: fails in 3 of 100 passages; top it up, or find where it goes.',
  ],
  [
    'house-bank',
    { why: 'drifts', at: day(2, 10), way: 'down', before: 12.71, after: 12.42, unit: 'V' },
    'House bank at dawn: reads lower since 10 Feb 2026, about 12.4 V where it was 12.7 V; find out why.',
  ],
  [
    'impellers',
    { why: 'may fail', chance: 0.1, threshold: 0.95 },
    'Raw-water impellers: fails in 10 of 100 passages, where at most 5 may; buy 1.',
  ],
  [
    'house-bank',
    { why: 'wrong answer', value: 11.9, unit: 'V', atLeast: 12.2, atMost: null },
    'House bank at dawn: reads 11.9 V, where at least 12.2 V is wanted; put it right and look again.',
  ],
  [
    'house-bank',
    { why: 'wrong answer', value: 15, unit: 'V', atLeast: 12.2, atMost: 14.7 },
    'House bank at dawn: reads 15 V, where at most 14.7 V is wanted; put it right and look again.',
  ],
  [
    'house-bank',
    { why: 'wrong answer', value: null, unit: null, atLeast: null, atMost: null },
    'House bank at dawn: not as it should be; put it right and look again.',
  ],
  ['gear-oil', { why: 'never looked at' }, 'Gear oil: not looked at yet; dip it and enter what you find.'],
  [
    'house-bank',
    { why: 'looked at long ago', days: 12.4, everyDays: 1 },
    'House bank at dawn: not looked at for 12 days; every day is wanted: look at it and enter what you find.',
  ],
  [
    'pencil',
    { why: 'looked at long ago', days: 40, everyDays: 30 },
    'Heat-exchanger pencil anode: not looked at for 40 days; every 30 days is wanted: look at it and enter what you find.',
  ],
  [
    'house-bank',
    { why: 'unsettled', by: 'pencil', at: day(1, 28) },
    'House bank at dawn: not looked at since the work on Heat-exchanger pencil anode on 28 Jan 2026; look again: after work nothing is taken for granted.',
  ],
  [
    'house-bank',
    { why: 'before leaving' },
    'House bank at dawn: looked at before every departure, and not yet for this one.',
  ],
  [
    'gear-oil',
    { why: 'changed', at: day(1, 12) },
    'Gear oil: goes at another rate since 12 Jan 2026, and no job explains it; find out why.',
  ],
  [
    'gear-oil',
    { why: 'rising', chance: 0.95 },
    'Gear oil: has risen with nothing poured in (95 in 100 that it did): water or fuel may be getting in; find out before the engine runs.',
  ],
  [
    'gear-oil',
    { why: 'leak', class: 'drops' },
    'Gear oil: leaks, drops form; look at the level more often until it is dry.',
  ],
  [
    'fuel',
    { why: 'fuel leak' },
    'Fuel: leaks, and of a fuel any leak is too much; find it, stop it, and look again.',
  ],
  [
    'gear-oil',
    { why: 'over full' },
    'Gear oil: stands over its full mark, which itself makes leaks; take some out.',
  ],
  [
    'flares',
    { why: 'expired', expires: '2026-01-31' },
    'Flares: good until 31 Jan 2026 and no longer; replace.',
  ],
  [
    'flares',
    { why: 'expires soon', expires: '2026-02-28', days: 25 },
    'Flares: good until 28 Feb 2026, 25 days more; time to replace.',
  ],
  [
    'impeller-change',
    { why: 'overdue', hours: 38, days: null },
    'Raw-water impeller: 38 h overdue; do it, then enter it.',
  ],
  [
    'impeller-change',
    { why: 'overdue', hours: 38, days: 1 },
    'Raw-water impeller: 38 h and 1 day overdue; do it, then enter it.',
  ],
  [
    'impeller-change',
    { why: 'parts not aboard', spare: 'impellers', wants: 1, aboard: 0 },
    'Raw-water impeller: takes 1 from Raw-water impellers, and there is 0 aboard.',
  ],
  [
    'impeller-change',
    { why: 'never done' },
    'Raw-water impeller: not entered yet; enter when it was last done.',
  ],
  ['impellers', { why: 'below wanted', count: 1, wanted: 2 }, 'Raw-water impellers: 1 aboard, 2 wanted.'],
  ['impellers', { why: 'not counted' }, 'Raw-water impellers: not entered yet; count what is aboard.'],
  ['flares', { why: 'not entered' }, 'Flares: not entered yet; enter the date it is good until.'],
  [
    'impellers',
    { why: 'used twice', hours: 61 },
    'Raw-water impellers: used twice within 61 h; find what ate the last one.',
  ],
  [
    'pencil',
    { why: 'wears fast', chance: 0.92 },
    'Heat-exchanger pencil anode: wears half as fast again as those before it, or faster (92 in 100); look for stray or shore current, or a lost bond.',
  ],
  [
    'pencil',
    { why: 'no wear', days: 34 },
    'Heat-exchanger pencil anode: has not worn in 34 days; it may have no contact, be painted over, or have coated itself.',
  ],
  [
    'pencil',
    { why: 'wrong alloy', metal: 'magnesium', water: 'salt' },
    'Heat-exchanger pencil anode: magnesium is the wrong metal for salt water.',
  ],
  [
    'pencil',
    { why: 'flakes' },
    'Heat-exchanger pencil anode: flakes when tapped, and is finished whatever its size; renew it.',
  ],
  ['fuel', { why: 'no one thing', boat: 78.9 }, 'Fuel: no one thing: together 78 of 100.'],
];

describe('the reason an item is not plainly fit', () => {
  it.each(whys)('is one sentence with its figure: %s, $why', (id, why, said) => {
    const answer = answerWith([anItem(id, why)]);
    expect(reasonSentence({ reason: 'item', item: id, state: 'watch' }, { boat, answer })).toBe(said);
  });

  it('falls back on the state where no more is known', () => {
    const answer = answerWith([{ ...anItem('fuel', { why: 'fuel leak' }), why: [] }]);
    expect(reasonSentence({ reason: 'item', item: 'fuel', state: 'unseen' }, { boat, answer })).toBe(
      'Fuel: not looked at.',
    );
  });
});

const reasons: readonly (readonly [reason: Reason, said: string])[] = [
  [
    { reason: 'nothing vital' },
    'Nothing aboard is marked vital, so nothing here can bar leaving and no answer can be given; mark in boat.json what she depends on ("consequence": "vital").',
  ],
  [
    { reason: 'nothing entered' },
    'The log is empty, so nothing is known of her; look round once and enter what you find.',
  ],
  [
    { reason: 'boat short', boat: 78.96, threshold: 95 },
    'Of 100 passages like this one 78 end with nothing vital past its limit; 95 are wanted.',
  ],
  [
    { reason: 'on the line', which: 'boat', score: 94.96, threshold: 95 },
    'The boat score is on the line: 94.96 where 95 is wanted, too near to tell apart.',
  ],
  [
    { reason: 'on the line', which: 'go', score: 85.2, threshold: 85 },
    'The score with the weather is on the line: 85.2 where 85 is wanted, too near to tell apart.',
  ],
  [
    { reason: 'no passage' },
    'No passage is planned; name one: "passage" in boat.json, or record plan passage=<id>.',
  ],
  [
    { reason: 'no forecast' },
    'There is no forecast, so the weather is not judged and the answer is never go.',
  ],
  [{ reason: 'forecast old', hours: 26.2 }, 'The forecast is 1 d 2 h old; get a newer one.'],
  [
    { reason: 'no weather limits', missing: ['wind', 'seas'] },
    'No limit is set for wind and seas; give each a number, or false, under "limits" in boat.json: until then the answer is never go.',
  ],
  [{ reason: 'no window' }, 'No window in this forecast.'],
  [
    {
      reason: 'waits for window',
      window: {
        at: Date.UTC(2026, 1, 5, 6),
        until: Date.UTC(2026, 1, 5, 15),
        score: 91,
        opens: null,
        closes: { hindrance: 'gust', place: 'Otter Cay', limit: 28 },
      },
    },
    'It opens in 1 d 22 h, Thu 5 Feb 06:00 UTC, for 9 h; closes: gusts pass 28 kn, Otter Cay.',
  ],
  [
    { reason: 'weather now', what: 'gust', value: 34, limit: 30, at: at - 1_200_000 },
    'Gusts of 34 kn 20 min ago, over your limit of 30 kn; no leaving on this forecast, get a newer one.',
  ],
  [
    { reason: 'forecast elsewhere', places: ['PZZ575', 'PZZ576', 'PZZ577', 'PZZ578'] },
    'The forecast speaks of PZZ575, PZZ576, PZZ577 and 1 more, and no leg of this passage is called that or lies near; give the legs their "place" in boat.json by the forecast\'s name, or get one for these waters.',
  ],
  [
    { reason: 'warning to mind', text: 'SMALL CRAFT ADVISORY' },
    'In force on the way, without barring leaving: SMALL CRAFT ADVISORY.',
  ],
  [
    { reason: 'period not said' },
    'The forecast leaves out the period of some seas on the way, so how short they are is not judged.',
  ],
  [
    { reason: 'beyond forecast', hours: 5 },
    'The last 5 h of the passage lie beyond the forecast and are not judged; hear it again under way.',
  ],
  [
    { reason: 'pressure falls', hPa: 3.4 },
    'Pressure is down 3.4 hPa in 3 h or less; no leaving on this forecast, get a newer one.',
  ],
  [
    { reason: 'under the score', score: 41.2, threshold: 85, edge: { item: 'water' } },
    'Leaving now ends well in 41 in 100 passages, where 85 are wanted: Fresh water runs short.',
  ],
  [
    { reason: 'log damaged', count: 1 },
    '1 place in the log is damaged or missing, so something may be unknown here; hoveshort inspect shows where.',
  ],
  [
    { reason: 'log damaged', count: 3 },
    '3 places in the log are damaged or missing, so something may be unknown here; hoveshort inspect shows where.',
  ],
  [{ reason: 'fit' }, 'She is fit: of 100 passages like this one 97 end with nothing vital past its limit.'],
];

describe('the reason for a verdict', () => {
  it.each(reasons)('is one sentence a person would say: $reason', (reason, said) => {
    expect(reasonSentence(reason, { boat, answer: answerWith([]) })).toBe(said);
  });
});
