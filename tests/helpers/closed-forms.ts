import { conditionAt } from '../../source/condition/condition-at.ts';
import { believe } from '../../source/inference/believe.ts';
import { normalCdf } from '../../source/maths/normal.ts';
import { stream } from '../../source/maths/stream.ts';
import { type Filled, fluidAhead, heldOnSharedStock, lostL } from '../../source/readiness/fluids.ts';
import { drawPassages } from '../../source/readiness/passages.ts';
import { aBoat, sandpiper } from './a-boat.ts';
import { anEntry } from './an-entry.ts';
import { certainFluid, judged } from './beliefs.ts';

/** A case with one thing that drives it, whose answer is known on paper. Kept apart from the runner, so that faults can be planted under it. */
export interface ClosedForm {
  readonly title: string;
  /** What the model says, what it should say, and by how much the two may differ. */
  run(): { readonly got: number; readonly expected: number; readonly within: number };
}

const at = Date.parse('2026-03-01T08:00:00Z');
const msADay = 86_400_000;
const simulations = 65_536;
const legs = [{ from: [41.2, -30.4] as [number, number], to: [41.9, -29.5] as [number, number], nm: 60 }];
const passage = { ...sandpiper.passages[0]!, legs, reserveDays: 1 };
const water = { id: 'water', name: 'Fresh water', low: 0, full: 300, reserve: 30, vary: 0 };

export const closedForms: readonly ClosedForm[] = [
  ...[
    { mean: 5, sd: 2.5, part: 1.1 },
    { mean: 5, sd: 2.5, part: 0.6 },
    { mean: 6, sd: 1, part: 1 },
  ].map(fluidAgainstSpeed),
  {
    title: 'a fluid goes below its reserve, not its low mark, at the hour that arithmetic says',
    run() {
      const boat = aBoat({ fluids: [water], passages: [{ ...passage, speed: { mean: 5, sd: 0 } }] });
      const { items } = judged({ boat, at, fluids: { water: certainFluid(78, 0, 12) } });
      const hours = 24 * ((78 - 30) / 12 - 60 / 5 / 24 - 1);
      return { got: (Number(items[0]!.goodUntil) - at) / 3_600_000, expected: hours, within: 0 };
    },
  },
  ...[
    { count: 8, shape: 2, rate: 56.88, days: 69.53, expected: 0.9767308238692477 },
    { count: 21, shape: 2, rate: 57.63, days: 255.3, expected: 0.9426271395931963 },
    { count: 41, shape: 4, rate: 72.55, days: 669.7, expected: 0.6528637190067615 },
    { count: 0, shape: 2, rate: 22.97, days: 3.609, expected: 0.7468694855840513 },
  ].map(sparesAgainstNegativeBinomial),
  {
    title: 'a service holds while the hours motored stay within what is left to it and its grace',
    run: serviceAgainstMotoring,
  },
  {
    title:
      'fluids on one stock fail in the very passages and hours that adding up their shortfalls says, for any stock',
    run: sharedStockAgainstBruteForce,
  },
];

/** Four standard errors of a chance over the passages simulated. */
function fourErrors(chance: number): number {
  return 4 * Math.sqrt((chance * (1 - chance)) / simulations);
}

function chanceOf(answer: ReturnType<typeof judged>, id: string): number {
  return answer.items.find((item) => item.id === id)!.chance;
}

function fluidAgainstSpeed({ mean, sd, part }: { mean: number; sd: number; part: number }): ClosedForm {
  return {
    title: `a fluid lost by the day holds when the speed, normal(${mean}, ${sd}) above a quarter of its mean, is fast enough`,
    run() {
      const boat = aBoat({ fluids: [water], passages: [{ ...passage, speed: { mean, sd } }] });
      const needed = part * mean;
      const levelL = water.reserve + 100 * (60 / needed / 24 + passage.reserveDays);
      const answer = judged({ boat, at, simulations, fluids: { water: certainFluid(levelL, 0, 100) } });
      const expected = normalCdf((mean - needed) / sd) / normalCdf((0.75 * mean) / sd);
      return { got: chanceOf(answer, 'water'), expected, within: fourErrors(expected) };
    },
  };
}

/** Expected: R 4.2.2, pnbinom(count, size = shape, prob = rate / (rate + exposure)), recomputed to 60 digits. */
function sparesAgainstNegativeBinomial(given: {
  count: number;
  shape: number;
  rate: number;
  days: number;
  expected: number;
}): ClosedForm {
  const { count, shape, rate, days, expected } = given;
  return {
    title: `${count} spares at a gamma(${shape}, ${rate}) rate over ${days} days last as R's pnbinom says`,
    run() {
      const entries = [anEntry('count', { spare: 'fuses', count }, at - 1000)];
      const demand = { fuses: { per: 'day' as const, engine: null, shape, rate } };
      const condition = { passage: null, reserveDays: days };
      const answer = judged({ boat: aBoat(), entries, at, simulations, demand, condition });
      return { got: chanceOf(answer, 'fuses'), expected, within: fourErrors(expected) };
    },
  };
}

function serviceAgainstMotoring() {
  const boat = aBoat({
    engines: [{ id: 'main', name: 'Main engine', usualHoursPerDay: 0 }],
    passages: [{ ...passage, speed: { mean: 5, sd: 0 }, motoring: { main: { mean: 0.4, sd: 0.2 } } }],
    services: [{ id: 'belt', name: 'Belt', everyHours: 100, graceHours: 5 }],
  });
  const entries = [
    anEntry('hours', { engine: 'main', reading: 1000 }, at - 100 * msADay),
    anEntry('service', { service: 'belt' }, at - 100 * msADay),
    anEntry('hours', { engine: 'main', reading: 1098.6 }, at - 50 * msADay),
    anEntry('hours', { engine: 'main', reading: 1098.6 }, at),
  ];
  const below = (share: number) => normalCdf((share - 0.4) / 0.2);
  const expected = (below((105 - 98.6) / (60 / 5)) - below(0)) / (below(1) - below(0));
  return {
    got: chanceOf(judged({ boat, entries, at, simulations }), 'belt'),
    expected,
    within: fourErrors(expected),
  };
}

/** `got`: departures judged otherwise than by adding up; none should be. */
function sharedStockAgainstBruteForce() {
  const oil = { ...sandpiper.fluids[0]!, low: 1, full: 2 };
  const boat = aBoat({
    fluids: [
      { ...oil, id: 'one', topUpUnderWay: true },
      { ...oil, id: 'two', topUpUnderWay: true, atAnchor: 1 },
      { ...oil, id: 'three', topUpUnderWay: false },
    ],
  });
  const condition = conditionAt(boat, [], at);
  const count = 512;
  const options = { count, seed: 3, lastHour: 168, threshold: 0.95 };
  const passages = drawPassages(boat, condition, believe(boat, condition), options);
  const chance = stream(3, 'shared stock');
  const group: readonly Filled[] = boat.fluids.map((fluid) => {
    const draws = {
      levelL: Float64Array.from({ length: count }, () => 1 + 0.8 * chance.uniform()),
      run: Float64Array.from({ length: count }, () => 0.05 * chance.uniform()),
      rest: Float64Array.from({ length: count }, () => (chance.uniform() < 0.2 ? 0 : 0.2 * chance.uniform())),
    };
    const ahead = fluidAhead(fluid, { ...certainFluid(0, 0, 0), draw: () => draws }, passages);
    return { ahead, pouredL: 0 };
  });
  const lost = group.map(({ ahead }) => lostL(ahead, 0, passages));
  let wrong = 0;
  for (const stockL of [0, 0.3, 1.5])
    for (let hour = 0; hour <= 168; hour += 1) {
      const held = heldOnSharedStock(group, stockL, hour, passages);
      for (let i = 0; i < count; i += 1) {
        const all = held.every((bits) => bits[i >>> 5]! & (1 << (i & 31)));
        if (all !== allHold(group, lost, stockL, i, hour)) wrong += 1;
      }
    }
  return { got: wrong, expected: 0, within: 0 };
}

function allHold(
  group: readonly Filled[],
  lost: readonly Float64Array[],
  stockL: number,
  i: number,
  hour: number,
): boolean {
  let wanted = 0;
  for (const [j, { ahead }] of group.entries()) {
    const { low, topUpUnderWay } = ahead.fluid;
    const atEnd = ahead.draws.levelL[i]! - lost[j]![i]!;
    if (!topUpUnderWay && atEnd < low) return false;
    wanted += Math.max(0, low - (atEnd - ahead.waitingL[i]! * hour));
  }
  return wanted <= stockL;
}
