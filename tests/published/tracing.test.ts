import { describe, expect, it } from 'vitest';
import { entropyBits, expectedBits, noisyOr, normalised, updated } from '../../source/tracing/beliefs.ts';
import { inflowLPerMinute, pumpedLPerMinute } from '../../source/tracing/flooding.ts';
import { causeChances, huntOf } from '../../source/tracing/hunt.ts';
import { repairOrder } from '../../source/tracing/repair-order.ts';
import { ownTables } from '../../source/tracing/tables.ts';
import { floodingFrom } from '../../source/words/flooding.ts';
import { type Cases, expectNear, testPublished } from '../helpers/published.ts';

const US_GALLON_L = 3.785411784;

describe('small Bayesian networks, their joint states taken as hypotheses', () => {
  // Russell and Norvig, Artificial Intelligence, burglary network; 0.284 as printed by aima-python.
  it('two neighbours calling make a burglary 0.284', () => {
    const alarmBy = [
      [0.001, 0.29],
      [0.94, 0.95],
    ];
    const states = [0, 1].flatMap((b) =>
      [0, 1].flatMap((e) =>
        [0, 1].map((a) => ({
          b,
          a,
          prior: (b ? 0.001 : 0.999) * (e ? 0.002 : 0.998) * (a ? alarmBy[b]![e]! : 1 - alarmBy[b]![e]!),
        })),
      ),
    );
    const john = states.map(({ a }) => (a ? 0.9 : 0.05));
    const mary = states.map(({ a }) => (a ? 0.7 : 0.01));
    const prior = states.map((state) => state.prior);
    const after = updated(updated(prior, john, true), mary, true);
    expectNear(
      states.reduce((sum, { b }, h) => sum + b * after[h]!, 0),
      0.28417183536439294,
      { relative: 1e-12 },
    );
  });

  // Murphy, Bayes Net Toolbox, sprinkler: explaining away. Wet grass is a noisy-OR of 0.9 and 0.9 without a leak.
  it('rain explains the wet grass away from the sprinkler', () => {
    const states = [0, 1].flatMap((c) => [0, 1].flatMap((s) => [0, 1].map((r) => ({ c, s, r }))));
    const of = (yes: number, chance: number) => (yes ? chance : 1 - chance);
    const prior = states.map(({ c, s, r }) => 0.5 * of(s, c ? 0.1 : 0.5) * of(r, c ? 0.8 : 0.2));
    const wet = states.map(({ s, r }) => noisyOr([...(s ? [0.9] : []), ...(r ? [0.9] : [])], 0));
    const rain = states.map(({ r }) => r);
    const sprinkler = (beliefs: readonly number[]) =>
      states.reduce((sum, { s }, h) => sum + s * beliefs[h]!, 0);
    const afterWet = updated(prior, wet, true);
    expectNear(sprinkler(afterWet), 0.4297635605006954, { relative: 1e-12 });
    expectNear(sprinkler(updated(afterWet, rain, true)), 0.1944990176817289, { relative: 1e-12 });
    expectNear(sprinkler(updated(prior, wet, false)), 0.062057240011334655, { relative: 1e-12 });
  });
});

// Mitchell, Machine Learning, ch. 3: PlayTennis.
describe('information gains of PlayTennis', () => {
  const play = [9 / 14, 5 / 14];
  it.each([
    [
      'outlook',
      [
        [2, 3],
        [4, 0],
        [3, 2],
      ],
      0.24674981977443916,
    ],
    [
      'temperature',
      [
        [2, 2],
        [4, 2],
        [3, 1],
      ],
      0.029222565658954713,
    ],
    [
      'humidity',
      [
        [3, 4],
        [6, 1],
      ],
      0.1518355013623416,
    ],
    [
      'wind',
      [
        [6, 2],
        [3, 3],
      ],
      0.0481270304082694,
    ],
  ] as const)('%s', (_, counts, gain) => {
    expectNear(entropyBits(play), 0.940285958670631, { relative: 1e-12 });
    const outcomes = counts.map(([yes, no]) => [yes / 9, no / 5]);
    expectNear(expectedBits(play, outcomes), gain, { absolute: 1e-12 });
  });
});

testPublished<
  Cases<
    { probabilities: number[]; costs: number[]; finalCallCost: number },
    { orderByRatio: number[]; minExpectedCost: number }
  >
>(
  'repairs by chance over cost come in the order that costs least',
  'statistics/repair-order-p-over-c.json',
  ({ cases }) => {
    for (const { input, expected } of cases) {
      const { probabilities, costs, finalCallCost } = input;
      const order = repairOrder(probabilities.map((chance, i) => ({ chance, cost: costs[i]! })));
      let [left, cost] = [1, 0];
      for (const i of order) {
        cost += left * costs[i]!;
        left -= probabilities[i]!;
      }
      cost += left * finalCallCost;
      expectNear(cost, expected.minExpectedCost, { relative: 1e-9 });
      expect(order).toEqual(expected.orderByRatio);
    }
  },
);

interface Flood {
  readonly checks: readonly {
    readonly id: string;
    readonly input: Readonly<Record<string, number>>;
    readonly expected: number;
  }[];
}
testPublished<Flood>('the flooding table of a yacht club', 'machinery/09_bilge.json', ({ checks }) => {
  const rows = checks.filter(({ id }) => id.startsWith('flood-'));
  expect(rows.length).toBeGreaterThan(20);
  for (const { id, input, expected } of rows) {
    const litres = inflowLPerMinute(input.diameter_in! * 25.4, input.head_ft! * 0.3048, input.Cd);
    expectNear(litres / US_GALLON_L, expected, { relative: 0.0125, what: id });
  }
});

testPublished<Flood>(
  'the same table as it is asked for, sizes as typed: a sharp-edged hole passes 0.6 of it',
  'machinery/09_bilge.json',
  ({ checks }) => {
    const sharp = checks.find(({ id }) => id === 'cd-value')!.expected;
    for (const { id, input, expected } of checks.filter((one) => one.id.startsWith('flood-'))) {
      const asked = { opening: `${input.diameter_in} in`, depth: `${input.head_ft} ft`, pump: null };
      const read = floodingFrom(asked);
      if (!read.ok) throw new Error(`${id} was not understood`);
      expectNear(read.value.inflow / US_GALLON_L, sharp * expected, { relative: 0.0125, what: id });
    }
  },
);

describe('pumps and openings as published', () => {
  it('a square inch 18 inches down lets in 18.4 US gallons a minute past a sharp edge', () => {
    const side = Math.sqrt(4 / Math.PI) * 25.4;
    expectNear(inflowLPerMinute(side, 18 * 0.0254) / US_GALLON_L, 18.4, { absolute: 0.1 });
  });

  it('a pump of 2,000 gallons an hour by its label moves 1,000', () => {
    expectNear(pumpedLPerMinute(2000 * US_GALLON_L) * 60, 1000 * US_GALLON_L, { relative: 1e-12 });
  });
});

interface Evidence {
  readonly causes: readonly {
    readonly cause: string;
    readonly prior: number;
    readonly p_evidence: Readonly<Record<string, number>>;
  }[];
}
/** Clues of that table, and the top cause that naive Bayes gives for each set of them, with its chance. */
const SETS = [
  { seen: { e1: true, e2: false, e4: true }, top: 'input shaft seal (into bell housing)', p: 0.754 },
  { seen: { e6: true, e7: true }, top: 'oil cooler core to raw water', p: 0.905 },
  { seen: { e9: true, e10: true, e2: true, e1: false }, top: 'drain or filler plug washer', p: 0.742 },
  { seen: { e9: true, e1: true, e2: false }, top: 'filter/strainer cap O-ring', p: 0.229 },
  { seen: { e2: true, e10: true, e1: false, e9: false }, top: 'case or pump joint (gasket)', p: 0.385 },
];
testPublished<Evidence>(
  'sets of clues about a leaking gearbox lead to the same cause by the same table',
  'machinery/data_cause_evidence.json',
  ({ causes }) => {
    for (const { seen, top, p } of SETS) {
      const beliefs = Object.entries(seen).reduce(
        (so, [clue, is]) =>
          updated(
            so,
            causes.map((cause) => cause.p_evidence[clue]!),
            is,
          ),
        normalised(causes.map(({ prior }) => prior))!,
      );
      const most = Math.max(...beliefs);
      expect(causes[beliefs.indexOf(most)]!.cause).toBe(top);
      expectNear(most, p, { absolute: 0.002 });
    }
  },
);

describe('our own tables', () => {
  const leading = (id: string, clues: Readonly<Record<string, boolean>>) => {
    const hunt = huntOf(ownTables().find((table) => table.id === id)!);
    const beliefs = Object.entries(clues).reduce(
      (so, [clue, seen]) => updated(so, hunt.shown.get(clue)!, seen),
      hunt.prior,
    );
    const chances = causeChances(hunt, beliefs);
    return hunt.table.causes[chances.indexOf(Math.max(...chances))]!.id;
  };

  // Colours of leaking fluids as printed for motorists (carparts.com), the rest trade practice.
  it.each([
    [{ floats: true, 'smells-fuel': true, soot: false }, ['fuel']],
    [{ floats: true, 'red-ring': true, 'smells-fuel': false, soot: false }, ['gear-oil']],
    [{ floats: true, soot: true, 'smells-fuel': false }, ['engine-oil']],
    [{ floats: false, coloured: true }, ['coolant']],
    [{ floats: false, coloured: false, crystals: true }, ['gland', 'raw-water', 'fitting', 'deck']],
    [{ floats: false, coloured: false, crystals: false, 'pump-runs': true }, ['fresh']],
  ])('tell the liquid in the bilge by %j', (clues, expected) => {
    expect(expected).toContain(leading('bilge', clues));
  });

  // NSWC-11 base rates: 22.8 failures of a rotating seal to 2.4 of a static one in a million running hours. Boats stray from industry by 3 and more.
  it('hold the rotating seal of a gearbox likelier than one of its two joints or plugs, by the published ratio within a factor of 3', () => {
    const { causes } = ownTables().find(({ id }) => id === 'gear-oil')!;
    const prior = (id: string) => causes.find((cause) => cause.id === id)!.prior;
    for (const pair of ['joint', 'plug']) {
      const ratio = prior('output-seal') / (prior(pair) / 2);
      expect(ratio, pair).toBeGreaterThan(22.8 / 2.4 / 3);
      expect(ratio, pair).toBeLessThan((22.8 / 2.4) * 3);
    }
  });

  it('hold a rotating seal likelier than any one static one', () => {
    const { causes } = ownTables().find(({ id }) => id === 'gear-oil')!;
    const prior = (id: string) => causes.find((cause) => cause.id === id)!.prior;
    for (const still of ['joint', 'plug', 'selector', 'strainer-cap'])
      expect(prior('output-seal')).toBeGreaterThan(prior(still));
  });
});
