import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Condition } from '../../source/condition/condition.ts';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Draft, Entry } from '../../source/logbook/entries.ts';
import { foldLog } from '../../source/logbook/order.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { aLaptop } from '../helpers/a-laptop.ts';
import { anEntry } from '../helpers/an-entry.ts';

const HOUR = 3_600_000;
const start = Date.UTC(2026, 0, 1);
const end = start + 500 * HOUR;
const boat = aBoat();

const number = (max: number) => fc.double({ min: 0, max, noNaN: true });
const spare = fc.constantFrom('impellers', 'gear-oil-can', 'pencils', 'fuses', 'none-such');
const fluid = fc.constantFrom('gear-oil', 'fuel', 'water', 'none-such');
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
const share = fc.double({ min: -1, max: 3, noNaN: true });

/** What a careless crew may write: every kind that counts, sound and unsound, with nothing absent spelt out. */
const written: fc.Arbitrary<Partial<Draft>> = fc
  .oneof(
    fc.record({
      kind: fc.constant('hours'),
      engine: fc.constant('main'),
      reading: number(600),
      swapped: maybe(fc.boolean()),
    }),
    fc.record({ kind: fc.constant('dip'), fluid, share }),
    fc.record({ kind: fc.constant('dip'), fluid, off: fc.constantFrom('below', 'above') }),
    fc.record({
      kind: fc.constant('topup'),
      fluid,
      amount: number(5),
      share: maybe(share),
      from: maybe(spare),
    }),
    fc.record({ kind: fc.constant('change'), fluid, from: maybe(spare) }),
    fc.record({
      kind: fc.constant('job'),
      item: fc.constantFrom('gear-oil', 'pencil', 'main'),
      text: fc.constant('x'),
    }),
    fc.record({ kind: fc.constant('leak'), item: fluid, class: fc.constantFrom('dry', 'falls') }),
    fc.record({ kind: fc.constant('anode'), anode: fc.constant('pencil'), massKg: number(0.1) }),
    fc.record({ kind: fc.constant('renew'), anode: fc.constant('pencil'), from: maybe(spare) }),
    fc.record({ kind: fc.constantFrom('use', 'stow', 'count'), spare, count: fc.nat(9) }),
    fc.record({ kind: fc.constant('service'), service: fc.constant('impeller-change') }),
    fc.record({ kind: fc.constant('check'), check: fc.constant('house-bank'), value: number(15) }),
    fc.record({ kind: fc.constant('check'), check: fc.constant('raw-water'), ok: fc.boolean() }),
    fc.record({
      kind: fc.constant('dated'),
      item: fc.constant('flares'),
      expires: fc.constantFrom('2027-01-01', '2028-01-01'),
    }),
    fc.record({
      kind: fc.constant('plan'),
      passage: fc.constantFrom('to-otter-cay', 'none-such'),
      crew: maybe(fc.integer({ min: 1, max: 9 })),
    }),
    fc.record({ kind: fc.constantFrom('left', 'arrived'), anchorage: maybe(fc.constant('heron-bight')) }),
    fc.record({ kind: fc.constant('weather'), wind: number(50) }),
  )
  .map((fields) => Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)));

/** Drafts on whole hours, so that several fall on one instant. */
const drafts = fc
  .array(fc.tuple(written, fc.nat(500)), { maxLength: 60 })
  .map((list) =>
    list.map(([fields, hour]) => ({ ...fields, at: new Date(start + hour * HOUR).toISOString() }) as Draft),
  );
const logs = drafts.map((list) =>
  list.map(({ kind, at, ...fields }) => anEntry(kind, fields as never, at) as Entry),
);

/** A condition as plain values, to compare. */
function plain(condition: Condition): unknown {
  return JSON.parse(JSON.stringify(condition, (_, value) => (value instanceof Map ? [...value] : value)));
}

const at = (entries: readonly Entry[], moment = end) => plain(conditionAt(boat, entries, moment));

describe('the condition', () => {
  it('of an empty log has every item of the boat, nothing known, and no trouble', () => {
    const condition = conditionAt(boat, [], end);
    expect(condition).toMatchObject({
      at: end,
      lastEntryAt: null,
      weather: [],
      gates: [],
      clues: [],
      troubles: [],
    });
    const { engines, fluids, anodes, spares, services, checks, dated } = condition;
    const counted = [engines, fluids, anodes, spares, services, checks, dated].map(({ size }) => size);
    expect(counted).toEqual([1, 3, 1, 4, 1, 2, 1]);
  });

  it('keeps what was said of weather, gates and clues, oldest first', () => {
    const gate = {
      passage: 'to-otter-cay',
      leg: 1,
      from: '2026-01-02T00:00:00Z',
      to: '2026-01-02T03:00:00Z',
    };
    const [later, earlier, tide, clue] = [
      anEntry('weather', { wind: 20 }, start + 2 * HOUR),
      anEntry('weather', { wind: 10 }, start + HOUR),
      anEntry('gate', gate, start),
      anEntry('clue', { item: 'main', clue: 'white-smoke', seen: true }, start),
    ] as const;
    const { weather, gates, clues, lastEntryAt } = conditionAt(boat, [later, earlier, tide, clue], end);
    expect([weather.map(({ entry }) => entry), gates, clues, lastEntryAt]).toEqual([
      [earlier, later],
      [tide],
      [clue],
      start + 2 * HOUR,
    ]);
  });

  it('is the same in whatever order the entries arrive', () => {
    const shuffled = logs.chain((log) =>
      fc.tuple(fc.constant(log), fc.shuffledSubarray(log, { minLength: log.length })),
    );
    fc.assert(
      fc.property(shuffled, ([log, other]) => {
        expect(at(other)).toEqual(at(log));
      }),
    );
  });

  it('does not see what happened after its moment', () => {
    fc.assert(
      fc.property(logs, fc.nat(500), (log, hour) => {
        const moment = start + hour * HOUR;
        const seen = log.filter((entry) => Date.parse(entry.at) <= moment);
        expect(at(log, moment)).toEqual(at(seen, moment));
      }),
    );
  });

  it('with everything struck is that of an empty log, but for the strikes being the newest entries', () => {
    fc.assert(
      fc.property(drafts, (list) => {
        const laptop = aLaptop('k7m2q9xd');
        const ids = list.map((draft) => laptop.write(draft).id);
        const strikes = ids.map((entry) =>
          laptop.write({ kind: 'strike', at: new Date(start).toISOString(), entry }),
        );
        const { entries } = foldLog([laptop.file()]);
        const lastEntryAt = strikes.length > 0 ? start : null;
        expect(at(entries)).toEqual({ ...(at([]) as object), lastEntryAt });
      }),
      { numRuns: 50 },
    );
  });

  it('loses nothing: each reading stands in a record or is told as a trouble', () => {
    fc.assert(
      fc.property(logs, (log) => {
        const { engines, fluids, anodes, troubles } = conditionAt(boat, log, end);
        const told = new Set(troubles.map((trouble) => 'entry' in trouble && trouble.entry));
        const untold = (kind: Entry['kind']) =>
          log.filter((entry) => entry.kind === kind && !told.has(entry.id)).length;
        expect(engines.get('main')!.readings).toHaveLength(untold('hours'));
        const events = [...fluids.values()].flatMap((record) => record.events);
        expect(events.filter((event) => event.kind === 'reading' && event.after === null)).toHaveLength(
          untold('dip'),
        );
        const looks = anodes.get('pencil')!.fittings.flatMap((fitting) => fitting.looks);
        expect(looks).toHaveLength(untold('anode'));
      }),
    );
  });

  it('holds no number that is not one, and no stock below nothing', () => {
    const check = (value: unknown): void => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      else if (value instanceof Map) for (const one of value.values()) check(one);
      else if (typeof value === 'object' && value !== null)
        for (const one of Object.values(value)) check(one);
    };
    fc.assert(
      fc.property(logs, (log) => {
        const condition = conditionAt(boat, log, end);
        check(condition);
        for (const { count, exposure } of condition.spares.values()) {
          expect(count ?? 0).toBeGreaterThanOrEqual(0);
          expect(exposure).toBeGreaterThanOrEqual(0);
        }
        const { lately } = condition.engines.get('main')!;
        expect(lately.hours).toBeGreaterThanOrEqual(0);
        expect(lately.days).toBeGreaterThanOrEqual(0);
        expect(lately.days).toBeLessThanOrEqual(14);
      }),
    );
  });
});
