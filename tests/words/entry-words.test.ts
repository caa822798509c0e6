import { describe, expect, it } from 'vitest';
import { entryKinds } from '../../source/logbook/entries.ts';
import { entryWords } from '../../source/words/entry-words.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const boat = aBoat();
const at = '2026-02-03T07:00:00Z';

const said = [
  [anEntry('hours', { engine: 'main', reading: 3412.6 }, at), 'Main engine: meter at 3412.6 h'],
  [
    anEntry('hours', { engine: 'main', reading: 3, swapped: true }, at),
    'Main engine: meter at 3 h, the first reading of a new meter',
  ],
  [anEntry('dip', { fluid: 'fuel', level: 180 }, at), 'Fuel: 180 L'],
  [anEntry('dip', { fluid: 'gear-oil', share: 0 }, at), 'Gear oil: at the low mark'],
  [
    anEntry('dip', { fluid: 'gear-oil', share: 0.75, how: 'stick-resting', rough: true }, at),
    'Gear oil: 75 % of the way from low to full (stick-resting), boat rolling',
  ],
  [anEntry('dip', { fluid: 'gear-oil', off: 'below' }, at), 'Gear oil: nothing on the stick'],
  [anEntry('dip', { fluid: 'gear-oil', off: 'above' }, at), 'Gear oil: over the full mark'],
  [
    anEntry('topup', { fluid: 'gear-oil', amount: 0.3, share: 1, from: 'gear-oil-can' }, at),
    'Gear oil: 0.3 L poured in, now at the full mark, from Gear oil in cans',
  ],
  [anEntry('change', { fluid: 'gear-oil' }, at), 'Gear oil: drained and refilled'],
  [anEntry('job', { item: 'gear-oil', text: 'new seal', minutes: 90 }, at), 'Gear oil: new seal, 90 min'],
  [
    anEntry('leak', { item: 'gear-oil', class: 'falls', dropsPerMinute: 4 }, at),
    'Gear oil: drops fall, 4 drops a minute',
  ],
  [
    anEntry('anode', { anode: 'pencil', share: 0.4, flakes: true }, at),
    'Heat-exchanger pencil anode: 40 % left, flakes when tapped',
  ],
  [
    anEntry('anode', { anode: 'pencil', diameterMm: 12, lengthMm: 40 }, at),
    'Heat-exchanger pencil anode: 12 mm thick, 40 mm long',
  ],
  [
    anEntry('renew', { anode: 'pencil', from: 'pencils' }, at),
    'Heat-exchanger pencil anode: renewed, from Pencil anodes',
  ],
  [anEntry('use', { spare: 'fuses', count: 2, for: 'the windlass' }, at), 'Fuses: 2 used for the windlass'],
  [
    anEntry('stow', { spare: 'gear-oil-can', count: 1, cost: 12 }, at),
    'Gear oil in cans: 1 L put aboard, cost 12',
  ],
  [anEntry('count', { spare: 'fuses', count: 7 }, at), 'Fuses: 7 aboard by count'],
  [
    anEntry('service', { service: 'impeller-change', uses: [{ spare: 'impellers', count: 1 }] }, at),
    'Raw-water impeller: done, with 1 Raw-water impellers',
  ],
  [anEntry('check', { check: 'house-bank', value: 12.6 }, at), 'House bank at dawn: 12.6 V'],
  [
    anEntry('check', { check: 'raw-water', ok: false }, at),
    'Raw water flows, no weep at the plugs: not as it should be',
  ],
  [anEntry('dated', { item: 'flares', expires: '2029-03-31' }, at), 'Flares: good until 2029-03-31'],
  [anEntry('clue', { item: 'gear-oil', clue: 'milky', seen: true }, at), 'Gear oil: clue milky seen'],
  [
    anEntry('plan', { passage: 'to-otter-cay', crew: 1 }, at),
    'Passage planned: Heron Bight to Otter Cay, 1 aboard',
  ],
  [
    anEntry('gate', { passage: 'to-otter-cay', leg: 0, from: at, to: '2026-02-03T09:00:00Z' }, at),
    'Gate on Heron Bight to Otter Cay, leg 1: open Tue 3 Feb 2026 07:00 UTC to Tue 3 Feb 2026 09:00 UTC',
  ],
  [anEntry('left', { anchorage: 'heron-bight' }, at), 'Left Heron Bight'],
  [anEntry('arrived', {}, at), 'Arrived'],
  [anEntry('weather', { wind: 18, seas: 1.2 }, at), 'Weather: wind 18 kn, seas 1.2 m'],
  [
    anEntry('forecast', { counts: '20260203T0600Z-0123456789ab' }, at),
    'Forecast: that of Tue 3 Feb 2026 06:00 UTC counts',
  ],
  [
    anEntry('decision', { verdict: 'hold', score: 81.25, choice: 'stay', text: 'rest' }, at),
    'Decided to stay: the verdict was hold at 81.3; rest',
  ],
  [anEntry('remark', { text: 'fog', item: 'fuel' }, at), 'Fuel: fog'],
  [anEntry('strike', { entry: 'aaaaaaaa-4', why: 'slip' }, at), 'Struck: entry aaaaaaaa-4, because slip'],
] as const;

describe('an entry in words', () => {
  it.each(said)('says what happened: $kind', (entry, words) => {
    expect(entryWords(entry, boat)).toBe(words);
  });

  it('is tested for every kind there is', () => {
    expect(new Set(said.map(([{ kind }]) => kind))).toEqual(new Set(Object.keys(entryKinds)));
  });

  it('names what the boat does not have by its id', () => {
    expect(entryWords(anEntry('dip', { fluid: 'old-tank', level: 3 }, at), boat)).toBe('Old-tank: 3 L');
  });
});
