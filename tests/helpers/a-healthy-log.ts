import type { Draft } from '../../source/logbook/entries.ts';

const MORNING = '2026-02-03T07:00:00Z';

/** Entries that leave the boat of `a-boat.ts` with nothing to be done: everything looked at this morning, full, counted and in date. */
export const healthyLog: readonly Draft[] = [
  { kind: 'hours', at: '2026-01-20T07:00:00Z', engine: 'main', reading: 1000 },
  { kind: 'arrived', at: '2026-01-31T12:00:00Z', anchorage: 'heron-bight' },
  { kind: 'service', at: '2026-02-01T10:00:00Z', service: 'impeller-change' },
  { kind: 'renew', at: '2026-02-01T11:00:00Z', anode: 'pencil' },
  { kind: 'hours', at: MORNING, engine: 'main', reading: 1010 },
  { kind: 'dip', at: MORNING, fluid: 'gear-oil', share: 1 },
  { kind: 'dip', at: MORNING, fluid: 'fuel', level: 200 },
  { kind: 'dip', at: MORNING, fluid: 'water', level: 300 },
  { kind: 'anode', at: MORNING, anode: 'pencil', share: 1 },
  { kind: 'count', at: MORNING, spare: 'impellers', count: 2 },
  { kind: 'count', at: MORNING, spare: 'gear-oil-can', count: 2 },
  { kind: 'count', at: MORNING, spare: 'pencils', count: 4 },
  { kind: 'count', at: MORNING, spare: 'fuses', count: 9 },
  { kind: 'check', at: MORNING, check: 'house-bank', value: 12.7 },
  { kind: 'check', at: MORNING, check: 'raw-water', ok: true },
];
