import { type Aboard, dip, meterRead, rounded, shareOf, truths } from './sample-aboard.ts';
import {
  dayAfter,
  gearJob,
  gearTopUps,
  hurriedMorning,
  lastFortnight,
  slipMorning,
  trips,
  wholeRounds,
} from './sample-calendar.ts';
import { entryAt, type Happening, type Said } from './sample-happenings.ts';

const MINUTE = 60_000;

/** The morning look, a minute an entry, in the order of the boat file. `wakes` in ms since 1970 UTC. */
export function round(aboard: Aboard, day: string, wakes: number, by: string): Happening[] {
  const { rounds, checks } = aboard.chance;
  const entered: Happening[] = [];
  const enter = (...all: readonly Said[]) => {
    for (const said of all) entered.push({ draft: entryAt(wakes + entered.length * MINUTE, by, said) });
  };
  const looked = (chance: number) => rounds.uniform() < chance || wholeRounds.has(day);

  if (rounds.uniform() < 0.3 && day < lastFortnight) enter(weatherSeen(aboard));
  if (aboard.engineHours > aboard.hoursEntered) enter(meterRead(aboard));
  if (looked(0.75)) enter(...oil(aboard, day, 'engine-oil', { refillAt: 0.35, amount: 0.5 }));
  if (looked(0.8) || day in gearTopUps || motorsSoon(day)) enter(...gearOil(aboard, day));
  if (looked(0.5)) enter(...oil(aboard, day, 'coolant', { refillAt: 0.4, amount: 0.25 }));
  if (looked(0.4)) enter(dip(aboard, 'fuel', day));
  if (looked(0.45) || day === slipMorning) {
    const read = dip(aboard, 'water', day);
    if (day === slipMorning) entered.push(...slip(read, wakes + entered.length * MINUTE, by));
    enter(read);
  }
  if (looked(0.5)) enter(measured('start-battery', Math.max(12.53, 12.68 + 0.04 * checks.normal()), 2));
  if (looked(0.6)) enter(measured('house-bank', Math.max(12.22, 12.42 + 0.07 * checks.normal()), 2));
  if (looked(0.45)) enter(measured('bilge-pump', 1 + Math.floor(2.3 * checks.uniform()), 0));
  if (looked(0.15)) enter(measured('gland-stopped', 0, 0));
  return entered;
}

export function measured(check: string, value: number, digits: number): Said {
  return { kind: 'check', check, value: Number(value.toFixed(digits)) };
}

/** Looked at, and topped up from the can by a measured amount when low. */
function oil(
  aboard: Aboard,
  day: string,
  fluid: 'engine-oil' | 'coolant',
  { refillAt, amount }: { refillAt: number; amount: number },
): Said[] {
  const read = dip(aboard, fluid, day);
  if ((read.share ?? 1) > refillAt) return [read];
  const poured = rounded(Math.min(amount, truths[fluid].full - aboard.levels[fluid]), 0.05);
  aboard.levels[fluid] += poured;
  const share = rounded(shareOf(fluid, aboard.levels[fluid]), 0.05);
  return [read, { kind: 'topup', fluid, amount: poured, share, from: `${fluid}-can` }];
}

/** Before the job it is filled whenever it is low or she leaves soon, after it when the calendar says so. */
function gearOil(aboard: Aboard, day: string): Said[] {
  const { low, full } = truths['gear-oil'];
  const level = aboard.levels['gear-oil'];
  const offTheStick = level < low - 0.01;
  const read: Said = offTheStick
    ? { kind: 'dip', fluid: 'gear-oil', off: 'below' }
    : dip(aboard, 'gear-oil', day);
  const wanted =
    gearTopUps[day] ?? (day < gearJob ? fillsBeforeJob(day, shareOf('gear-oil', level)) : undefined);
  if (wanted === undefined) return [read];
  const amount = rounded(low + wanted * (full - low) - level, 0.01);
  aboard.levels['gear-oil'] += amount * (1 + 0.02 * aboard.chance.errors.normal());
  return [
    read,
    { kind: 'topup', fluid: 'gear-oil', amount, share: rounded(wanted, 0.05), from: 'gear-oil-can' },
  ];
}

function fillsBeforeJob(day: string, share: number): number | undefined {
  if (day === hurriedMorning) return undefined;
  return share < (motorsSoon(day) ? 0.9 : 0.35) ? 1 : undefined;
}

function motorsSoon(day: string): boolean {
  const soon = [day, dayAfter(day)];
  return trips.some(({ leaves, motored }) => motored > 3 && soon.includes(leaves.slice(0, 10)));
}

function slip(read: Said & { level?: number | undefined }, at: number, by: string): Happening[] {
  const wrong = { ...read, level: (read.level ?? 0) / 10 } as Said;
  const strike: Said = { kind: 'strike', entry: 'slip', why: 'The point does not belong there.' };
  return [
    { draft: entryAt(at, by, wrong), mark: 'slip' },
    { draft: entryAt(at + MINUTE / 2, by, strike), strikes: 'slip' },
  ];
}

/** Wind and glass as seen from the cockpit. */
function weatherSeen(aboard: Aboard): Said {
  const { weather } = aboard.chance;
  aboard.pressure += 0.35 * (1014 - aboard.pressure) + 5 * weather.normal();
  const wind = Math.max(2, Math.round(11 + 5 * weather.normal() - 0.3 * (aboard.pressure - 1014)));
  return {
    kind: 'weather',
    wind,
    gust: Math.round(wind * 1.3),
    dir: 10 * Math.floor(36 * weather.uniform()),
    seas: rounded(Math.max(0.1, wind * 0.04 + 0.1 * weather.normal()), 0.1),
    pressure: Math.round(aboard.pressure),
  };
}
