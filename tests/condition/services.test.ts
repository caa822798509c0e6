import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const on = (day: number) => Date.UTC(2026, 0, 1) + day * 86_400_000;
const service = (day: number) => anEntry('service', { service: 'impeller-change' }, on(day));
const hours = (day: number, reading: number) => anEntry('hours', { engine: 'main', reading }, on(day));
const done = (entries: readonly Entry[], boat = aBoat()) =>
  conditionAt(boat, entries, on(100)).services.get('impeller-change')!.done;

describe('a service', () => {
  it('never done has nothing on record', () => {
    expect(done([hours(0, 100)])).toEqual([]);
  });

  it('stands at the engine hours it was done at', () => {
    expect(done([hours(0, 100), hours(10, 200), service(5), service(50)])).toEqual([
      { at: on(5), hours: 150 },
      { at: on(50), hours: 200 },
    ]);
  });

  it('has no hours without an engine, or before any reading', () => {
    expect(done([service(5)])).toEqual([{ at: on(5), hours: null }]);
    expect(done([service(5)], aBoat({ engines: [] }))).toEqual([{ at: on(5), hours: null }]);
  });
});
