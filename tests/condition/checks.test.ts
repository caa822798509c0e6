import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const on = (day: number) => Date.UTC(2026, 0, 1) + day * 86_400_000;
const rawWater = (day: number, fields: object = {}) =>
  anEntry('check', { check: 'raw-water', ok: true, ...fields }, on(day));
const now = (entries: readonly Entry[], boat = aBoat()) => conditionAt(boat, entries, on(100));
const check = (id: string, entries: readonly Entry[]) => now(entries).checks.get(id)!;

describe('the answer of a check', () => {
  const bank = (value: number, limits: object) =>
    now(
      [anEntry('check', { check: 'house-bank', value }, on(1))],
      aBoat({
        checks: [{ id: 'house-bank', name: 'House bank', ask: 'number', ...limits }, sandpiper.checks[1]!],
      }),
    ).checks.get('house-bank')!.answers[0]!.ok;

  it('is as given', () => {
    expect(check('raw-water', [rawWater(1), rawWater(2, { ok: false })])).toMatchObject({
      answers: [
        { at: on(1), ok: true, value: null },
        { at: on(2), ok: false, value: null },
      ],
      lookedAt: on(2),
    });
  });

  it('that is a number is judged by its limits, both of them good', () => {
    const limits = { atLeast: 12.2, atMost: 14.7 };
    expect([12.1, 12.2, 13, 14.7, 14.8].map((value) => bank(value, limits))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    expect([bank(12, { atLeast: 12.2 }), bank(15, { atMost: 14.7 })]).toEqual([false, false]);
  });

  it('that is a number with no limits is neither good nor bad', () => {
    expect(bank(12, {})).toBeNull();
  });

  it('is none where it was never made', () => {
    expect(check('raw-water', [])).toEqual({
      answers: [],
      unsettledBy: null,
      madeSinceArrival: false,
      lookedAt: null,
    });
  });
});

describe('work on what unsettles a check', () => {
  const renew = (day: number) => anEntry('renew', { anode: 'pencil' }, on(day));

  it('voids it, whether a renewal, a job or a service', () => {
    const works = [
      anEntry('renew', { anode: 'pencil' }, on(5)),
      anEntry('job', { item: 'pencil', text: 'Cleaned the plug' }, on(5)),
      anEntry('service', { service: 'impeller-change' }, on(5)),
      anEntry('job', { item: 'impeller-change', text: 'Looked at the impeller' }, on(5)),
    ];
    const voided = works.map((work) => check('raw-water', [rawWater(1), work]).unsettledBy);
    expect(voided).toEqual(
      ['pencil', 'pencil', 'impeller-change', 'impeller-change'].map((item) => ({ item, at: on(5) })),
    );
  });

  it('voids it no longer once it is made again, at the same instant too', () => {
    expect(check('raw-water', [renew(5), rawWater(6)]).unsettledBy).toBeNull();
    expect(check('raw-water', [renew(5), rawWater(5)]).unsettledBy).toBeNull();
    expect(check('raw-water', [rawWater(5), renew(5)]).unsettledBy).toEqual({ item: 'pencil', at: on(5) });
  });

  it('is named by the newest', () => {
    const service = anEntry('service', { service: 'impeller-change' }, on(7));
    expect(check('raw-water', [rawWater(1), renew(5), service]).unsettledBy).toEqual({
      item: 'impeller-change',
      at: on(7),
    });
  });

  it('leaves other checks alone, and so does a mere look', () => {
    const bank = anEntry('check', { check: 'house-bank', value: 12.6 }, on(1));
    expect(check('house-bank', [bank, renew(5)]).unsettledBy).toBeNull();
    const look = anEntry('anode', { anode: 'pencil', share: 0.5 }, on(5));
    expect(check('raw-water', [rawWater(1), look]).unsettledBy).toBeNull();
  });
});

describe('a check made since she arrived', () => {
  const arrived = anEntry('arrived', {}, on(5));

  it('is one answered after the last arrival', () => {
    expect(check('raw-water', [rawWater(4), arrived]).madeSinceArrival).toBe(false);
    expect(check('raw-water', [rawWater(4), arrived, rawWater(6)]).madeSinceArrival).toBe(true);
  });

  it('is any, where the log has no arrival', () => {
    expect(check('raw-water', [rawWater(4)]).madeSinceArrival).toBe(true);
  });
});
