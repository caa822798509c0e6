import { type Aboard, atLaunch, dayPasses, meterRead, rounded, run, truths } from './sample-aboard.ts';
import {
  dayAfter,
  firstMorning,
  flu,
  gearJob,
  gearTopUps,
  lastMorning,
  meterChange,
  slipMorning,
  type Trip,
  trips,
  wholeRounds,
} from './sample-calendar.ts';
import { entryAt, type Happening, happenings, type Said } from './sample-happenings.ts';
import { measured, round } from './sample-round.ts';

const MINUTE = 60_000;

/** Everything entered aboard in eight months, by when it happened: the scripted entries and the daily life between them. The same every time. */
export function sampleLife(): readonly Happening[] {
  const aboard = atLaunch();
  const lived = [...happenings];
  for (let day = dayAfter(firstMorning); day <= lastMorning; day = dayAfter(day)) {
    lived.push(...dayAboard(aboard, day));
  }
  return lived.toSorted((one, other) => Date.parse(one.draft.at) - Date.parse(other.draft.at));
}

function dayAboard(aboard: Aboard, day: string): Happening[] {
  const { rounds } = aboard.chance;
  const trip = trips.find(({ leaves }) => leaves.startsWith(day));
  const by = rounds.uniform() < 0.6 ? 'Nell' : 'Josef';
  const usual = at(day, '06:50') + Math.floor(20 * rounds.uniform()) * MINUTE;
  const wakes = trip ? Math.min(usual, left(trip) - 55 * MINUTE) : usual;
  dayPasses(aboard, day);
  const looks = rounds.uniform() < chanceOfRound(day, trip);
  const morning = looks ? round(aboard, day, wakes, by) : [];
  if (day === lastMorning) return morning;
  if (meterChange.startsWith(day)) morning.push(...newMeter(aboard));
  return [...morning, ...(trip ? underWay(aboard, trip, by) : lying(aboard, day, by))];
}

function chanceOfRound(day: string, trip: Trip | undefined): number {
  if (wholeRounds.has(day) || day in gearTopUps || day === slipMorning) return 1;
  if (trip && trip.motored > 3) return 1;
  if (day >= flu.from && day <= flu.to) return 0;
  if (day >= '2026-05-08') return 0.9;
  return day >= '2025-12-01' && day < '2026-03-01' ? 0.4 : 0.55;
}

function newMeter(aboard: Aboard): Happening[] {
  const changed = Date.parse(`${meterChange}Z`);
  const last = meterRead(aboard);
  aboard.meterStart = -aboard.engineHours;
  return [
    entered(changed - 2 * MINUTE, 'Josef', last),
    entered(changed, 'Josef', { kind: 'hours', engine: 'main', reading: 0, swapped: true }),
  ];
}

function underWay(aboard: Aboard, trip: Trip, by: string): Happening[] {
  const { checks } = aboard.chance;
  const leaves = left(trip);
  const arrives = leaves + Math.round(trip.hours * 60) * MINUTE;
  const day = trip.leaves.slice(0, 10);
  const lived = looksBeforeLeaving(trip)
    .filter(() => checks.uniform() < 0.93)
    .map((check, i) => entered(leaves - (12 - i) * MINUTE, by, { kind: 'check', check, ok: true }));
  if (trip.to === 'wicketholm') {
    lived.push(entered(leaves - 20 * MINUTE, by, { kind: 'plan', passage: 'to-wicketholm' }));
  }
  lived.push(entered(leaves, by, { kind: 'left' }));
  if (trip.motored > 1 && checks.uniform() < 0.7) {
    lived.push(
      entered(leaves + 45 * MINUTE, by, measured('gland-turning', 2 + Math.floor(3 * checks.uniform()), 0)),
    );
  }
  run(aboard, day, trip.motored, 'under way');
  lived.push(entered(arrives, by, { kind: 'arrived', anchorage: trip.to }));
  lived.push(entered(arrives + 4 * MINUTE, by, meterRead(aboard)));
  if (trip.to !== aboard.place) {
    const passage = trip.to === 'candlefold' ? 'candlefold-dovetail' : 'dovetail-candlefold';
    lived.push(entered(arrives + 90 * MINUTE, by, { kind: 'plan', passage }));
  }
  aboard.place = trip.to;
  aboard.arrivedOn = day;
  return lived;
}

function looksBeforeLeaving({ hours }: Trip): string[] {
  const always = ['raw-water', 'seacocks-set', 'steering', 'anchor-ready'];
  return hours < 8 ? always : [...always, 'decks-hatches', 'dinghy', 'lights-radio', 'float-plan'];
}

/** A day lying: tanks filled, the engine run for the batteries in the evening. */
function lying(aboard: Aboard, day: string, by: string): Happening[] {
  const { usage, checks } = aboard.chance;
  const lived = aboard.place === 'candlefold' ? fillTanks(aboard, day, by) : carryWater(aboard, day, by);
  if (gearJob.startsWith(day)) lived.push(fillAfterJob(aboard, day));
  const hours = usage.uniform() < 0.15 ? 0 : Math.max(0.3, 0.85 + 0.25 * usage.normal());
  run(aboard, day, hours, 'lying');
  const looks = checks.uniform() < (day < '2026-05-30' ? 0.3 : 0.8);
  if (hours > 0 && looks && !(day >= flu.from && day <= flu.to)) {
    lived.push(entered(at(day, '17:40'), by, measured('charging', 14.2 + 0.08 * checks.normal(), 1)));
  }
  return lived;
}

/** Fuel on the first day at the quay, water then and on the last. */
function fillTanks({ levels, arrivedOn }: Aboard, day: string, by: string): Happening[] {
  const lived: Happening[] = [];
  const fresh = arrivedOn !== '' && day === dayAfter(arrivedOn);
  const diesel = Math.round(172 - levels.fuel);
  if (fresh && diesel > 25) {
    levels.fuel += diesel;
    lived.push(entered(at(day, '10:20'), by, { kind: 'topup', fluid: 'fuel', amount: diesel }));
  }
  const leaves = trips.some((trip) => trip.leaves.startsWith(dayAfter(day)));
  const water = rounded(truths.water.full - levels.water, 5);
  if ((fresh || leaves) && water > 15) {
    levels.water = truths.water.full;
    lived.push(entered(at(day, '16:30'), by, { kind: 'topup', fluid: 'water', amount: water, share: 1 }));
  }
  return lived;
}

/** Four jugs of 20 litres, rowed out from a spring when the tank is getting low. */
function carryWater({ levels }: Aboard, day: string, by: string): Happening[] {
  if (levels.water >= 105) return [];
  levels.water += 80;
  return [entered(at(day, '11:30'), by, { kind: 'topup', fluid: 'water', amount: 80 })];
}

function fillAfterJob({ levels }: Aboard, day: string): Happening {
  const amount = rounded(truths['gear-oil'].full - levels['gear-oil'], 0.01);
  levels['gear-oil'] += amount;
  const said: Said = { kind: 'topup', fluid: 'gear-oil', amount, share: 1, from: 'gear-oil-can' };
  return entered(at(day, '15:40'), 'Josef', said);
}

function entered(instant: number, by: string, said: Said): Happening {
  return { draft: entryAt(instant, by, said) };
}

function left({ leaves }: Trip): number {
  return Date.parse(`${leaves}Z`);
}

function at(day: string, time: string): number {
  return Date.parse(`${day}T${time}Z`);
}
