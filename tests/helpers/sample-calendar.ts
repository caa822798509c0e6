/** Where Pennywhin went and what the rounds had to reckon with, invented by hand. Instants are UTC to the minute; hours under way and hours motored. */
export const firstMorning = '2025-10-14';
export const lastMorning = '2026-06-14';

export type Place = 'dovetail-bight' | 'wicketholm' | 'candlefold';

export interface Trip {
  readonly leaves: string;
  readonly hours: number;
  readonly motored: number;
  readonly to: Place;
}

const C = 'candlefold';
const D = 'dovetail-bight';
const W = 'wicketholm';

export const startsAt: Place = C;

export const trips: readonly Trip[] = [
  trip('2025-10-19T09:10', 4.2, 2.6, C),
  trip('2025-10-26T06:00', 11.6, 4.1, D),
  trip('2025-11-03T09:30', 2.4, 1.9, W),
  trip('2025-11-12T10:00', 2.3, 1.2, D),
  trip('2025-11-13T06:10', 11.9, 6.4, C),
  trip('2025-11-22T06:20', 11.2, 3.3, D),
  trip('2025-11-30T10:20', 2.5, 2.5, W),
  trip('2025-12-14T10:10', 2.2, 0.9, D),
  trip('2025-12-15T05:50', 12.4, 6.2, C),
  trip('2025-12-20T06:30', 10.9, 2.8, D),
  trip('2025-12-21T11:00', 2.6, 1.7, W),
  trip('2026-01-09T10:30', 2.3, 2.1, D),
  trip('2026-01-10T06:00', 12.1, 5.4, C),
  trip('2026-01-17T06:20', 11.5, 4.7, D),
  trip('2026-01-18T10:40', 2.4, 1.3, W),
  trip('2026-02-06T10:00', 2.5, 2.5, D),
  trip('2026-02-07T05:50', 11.8, 5.9, C),
  trip('2026-02-16T06:10', 10.7, 3.9, D),
  trip('2026-02-24T09:40', 2.2, 1.1, W),
  trip('2026-03-06T10:15', 2.6, 2.2, D),
  trip('2026-03-12T05:50', 11.4, 4.4, C),
  trip('2026-03-19T06:00', 11.0, 5.1, D),
  trip('2026-03-29T11:00', 5.1, 1.8, D),
  trip('2026-04-07T09:30', 2.3, 2.3, W),
  trip('2026-04-11T10:00', 2.4, 1.0, D),
  trip('2026-04-16T05:45', 11.7, 6.0, C),
  trip('2026-04-24T06:00', 10.8, 4.2, D),
  trip('2026-05-02T05:50', 11.3, 5.7, C),
  trip('2026-05-07T05:30', 12.2, 9.4, D),
  trip('2026-05-13T09:00', 2.4, 1.9, W),
  trip('2026-05-16T10:20', 2.2, 1.6, D),
  trip('2026-05-20T06:00', 11.1, 3.8, C),
  trip('2026-05-24T05:50', 11.6, 4.6, D),
  trip('2026-06-02T06:00', 10.9, 3.4, C),
  trip('2026-06-06T05:40', 12.0, 6.6, D),
  trip('2026-06-11T09:10', 3.3, 3.2, W),
  trip('2026-06-13T09:20', 3.2, 3.2, D),
];

/** From here on the log is in the hands of the mornings the README names: flat water for the readings, weather as scripted. */
export const lastFortnight = '2026-06-01';

/** Mornings with a whole round, whatever the chance of it: those the README names, and the ones before them. */
export const wholeRounds: ReadonlySet<string> = new Set([
  '2025-10-16',
  '2026-05-31',
  '2026-06-01',
  '2026-06-02',
  '2026-06-09',
  '2026-06-10',
  '2026-06-11',
  '2026-06-13',
  '2026-06-14',
]);

/** Days nobody looked at anything: both had the flu. */
export const flu = { from: '2026-01-23', to: '2026-01-30' };

/** The morning the water was typed with a point in the wrong place, and struck. */
export const slipMorning = '2025-12-05';

/** The old meter stopped; the new one begins at 0. */
export const meterChange = '2026-02-17T10:00';

/** The job on the gear-oil loss. */
export const gearJob = '2026-05-10T14:30';

/** Gear oil poured in at the round of the day, to this share. On other mornings before the job the stick decides; after it nothing goes in. */
export const gearTopUps: Readonly<Record<string, number>> = {
  '2026-01-22': 1,
  '2026-05-06': 0.6,
  '2026-05-08': 1,
  '2026-05-19': 1,
  '2026-06-01': 0.92,
  '2026-06-06': 0.8,
};

/** The morning they left in a hurry and poured nothing in. */
export const hurriedMorning = '2026-05-07';

function trip(leaves: string, hours: number, motored: number, to: Place): Trip {
  return { leaves, hours, motored, to };
}

/** The day after, as year-month-day. */
export function dayAfter(day: string): string {
  return new Date(Date.parse(day) + 86_400_000).toISOString().slice(0, 10);
}

/** The mornings the README names. */
export const namedInstants = {
  notReady: '2026-06-14T07:30:00Z',
  hold: '2026-06-10T07:30:00Z',
  go: '2026-06-02T05:30:00Z',
  shelter: '2026-06-11T07:30:00Z',
  forecastOver: '2026-06-08T07:30:00Z',
} as const;
