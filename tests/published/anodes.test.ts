// Sums of sacrificial anodes from manuals, standards and trade pages; the source of each stands beside it.
import { describe, expect, test } from 'vitest';
import type { Anode } from '../../source/boat/anode.ts';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { believeAnode } from '../../source/inference/anode.ts';
import { isWrongAlloy, meanCurrentA } from '../../source/inference/anode-current.ts';
import { wearSeen } from '../../source/inference/wear.ts';
import { positiveCdf } from '../../source/maths/positive-normal.ts';
import { stream } from '../../source/maths/stream.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { expectNear, testPublished } from '../helpers/published.ts';

const DAY = 86_400_000;
const FARADAY = 96485.33212;

describe('the current that eats an anode', () => {
  test.each<[Anode['metal'], number, number, number, string]>([
    ['zinc', 0.016094 * 0.5, 150, 1.744, 'half a 16.1 g pencil in 150 days, at 780 Ah/kg'],
    ['zinc', 0.01, 100, 3.25, '10 g in 100 days, at 780 Ah/kg'],
    ['aluminium', 0.01, 100, 8.333, '10 g in 100 days, at 2000 Ah/kg'],
    ['magnesium', 0.01, 100, 4.583, '10 g in 100 days, at 1100 Ah/kg'],
    ['zinc', 0.016094, 523.1, 1, 'a whole 16.1 g pencil at 1 mA: 523.1 days'],
    ['zinc', 0.016094, 5.2, 100, 'a whole 16.1 g pencil at 100 mA: 5.2 days'],
    ['zinc', 11.231, 365, 1000, '1 A for a year of 8760 h'],
    ['aluminium', 4.38, 365, 1000, '1 A for a year of 8760 h'],
    ['magnesium', 7.964, 365, 1000, '1 A for a year of 8760 h'],
  ])('%s, %f kg in %f days: %f mA (%s; worked out from the capacity)', (metal, kg, days, mA) => {
    expectNear(1000 * meanCurrentA(metal, kg, days), mA, { relative: 0.01 });
  });

  test.each<[Anode['metal'], number, string]>([
    ['zinc', 780, 'MIL-A-18001K, trade summary (solentanodes.co.uk)'],
    ['aluminium', 2000, 'DNV-RP-B401, tables 10-6 and 10-8, as quoted in a design abstract'],
    ['magnesium', 1100, '"Corrosion Engineering: Principles and Practice", ch. 13, p. 554'],
  ])('a kilogram of %s gives %d Ah: %s', (metal, capacity) => {
    expectNear(24 * meanCurrentA(metal, 1, 1), capacity, { relative: 0.002 });
  });

  test.each<[Anode['metal'], number, number, number]>([
    ['zinc', 65.38, 2, 820],
    ['aluminium', 26.981538, 3, 2980],
    ['magnesium', 24.305, 2, 2205],
  ])(
    "and no more than Faraday's law allows: %s (CODATA 2018, IUPAC weights)",
    (metal, grams, valence, most) => {
      const limit = (1000 * valence * FARADAY) / (3600 * grams);
      expectNear(limit, most, { relative: 0.001 });
      expect(24 * meanCurrentA(metal, 1, 1)).toBeLessThan(limit);
    },
  );
});

interface AlloyCase {
  readonly group: string;
  readonly input: { readonly anode?: Anode['metal']; readonly water?: Anode['water'] };
  readonly expected: { readonly verdict: string };
}

testPublished<readonly AlloyCase[]>(
  'alloy and water: what is called wrong is told so, nothing else',
  'anodes/checks.json',
  (checks) => {
    const cases = checks.filter(
      ({ group, input }) => group === 'alloy and water' && input.anode !== undefined,
    );
    expect(cases.length).toBeGreaterThan(5);
    for (const { input, expected } of cases)
      expect(
        isWrongAlloy({ metal: input.anode!, water: input.water! }),
        `${input.anode} in ${input.water} water: ${expected.verdict}`,
      ).toBe(expected.verdict.startsWith('wrong'));
  },
);

describe('wear from looks', () => {
  test.each([
    [0.25, 5.5, 0.5, 11, 'shaft zinc 25 % gone after 5.5 months (rec.boats, J. F. Hughes, 1992-11-16)'],
    [0.25, 5.5, 2 / 3, 14.67, 'the same, to a third left'],
    [0.5, 8, 2 / 3, 10.67, 'heat exchanger anode half gone in 8 months (c34.org, Engine Zinc)'],
    [0.5, 61, 0.5, 61, 'magnesium half gone in 5.08 years (windborneinpugetsound)'],
  ])('by the looks alone: %f gone in %f months, so %f gone in %f: %s', (gone, months, wanted, in_) => {
    const at = months * DAY;
    const look = { at, share: 1 - gone, sd: 0.08, flakes: false };
    const { pull, information } = wearSeen({ fittedAt: 0, looks: [look] });
    expectNear(wanted / (pull / information), in_, { absolute: 0.05 });
  });

  const fitted = Date.UTC(2025, 0, 10);
  const pencil = (looks: readonly (readonly [string, number])[], days: number) => {
    const boat = aBoat({ anodes: [{ ...sandpiper.anodes[0]!, limit: 0.5, usualLifeDays: 150 }] });
    const entries = looks.map(([on, share]) =>
      anEntry('anode', { anode: 'pencil', massKg: share * 0.05 }, `${on}T00:00:00Z`),
    );
    const renew = anEntry('renew', { anode: 'pencil' }, fitted);
    return believeAnode(boat.anodes[0]!, conditionAt(boat, [renew, ...entries], fitted + days * DAY))!;
  };

  test('a clean straight line of a tenth in 30 days reaches a half on 9 June 2025 (constructed)', () => {
    const belief = pencil(
      [
        ['2025-02-09', 0.9],
        ['2025-03-11', 0.8],
        ['2025-04-10', 0.7],
      ],
      90,
    );
    const looks = [0, 30, 60, 90].map((day) => ({
      at: day * DAY,
      share: 1 - day / 300,
      sd: 0.02,
      flakes: false,
    }));
    const { pull, information } = wearSeen({ fittedAt: 0, looks });
    expectNear(pull / information, 0.003333, { absolute: 1e-6 });
    expectNear(fitted + (0.5 / (pull / information)) * DAY, Date.UTC(2025, 5, 9), { absolute: 0.5 * DAY });
    // What the boat file expects pulls at it a little.
    expectNear(belief.reachesLimit.p50, Date.UTC(2025, 5, 9), { absolute: DAY });
  });

  test('a later look higher than an earlier one is measuring error, not growth: no wear drawn is negative (constructed)', () => {
    const belief = pencil(
      [
        ['2025-03-11', 0.8],
        ['2025-04-10', 0.85],
      ],
      90,
    );
    const { wear, share } = belief.draw(4096, (part) => stream(1, part));
    expect(belief.wear.mean).toBeGreaterThan(0);
    expect(Math.min(...wear)).toBeGreaterThan(0);
    expect(Math.max(...share)).toBeLessThan(1);
  });

  test.each([
    [12, 0],
    [24, 0.3694],
    [30, 0.9705],
  ])(
    '0.58 left, limit 0.5, wear 0.0032333 with sd 0.0003: past it in %d days with a chance of %f (constructed)',
    (days, chance) => {
      expectNear(1 - positiveCdf(0.0032333, 0.0003, 0.08 / days), chance, { absolute: 0.01 });
    },
  );
});

describe('size and metal', () => {
  const left = (fields: object) => {
    const boat = aBoat({ anodes: [{ ...sandpiper.anodes[0]!, diameterMm: 9, lengthMm: 43 }] });
    const entries = [
      anEntry('renew', { anode: 'pencil' }, fitted),
      anEntry('anode', { anode: 'pencil', ...fields }, fitted + 90 * DAY),
    ];
    return conditionAt(boat, entries, fitted + 91 * DAY).anodes.get('pencil')!.fittings[0]!.looks[0]!.share;
  };
  const fitted = Date.UTC(2025, 0, 10);

  test('half the diameter is a quarter of the metal, half the length a half: 9 mm by 43 mm, renewed below a half of either (Kohler TP-6390, 3.7.5)', () => {
    expectNear(left({ diameterMm: 4.5 }), 0.25, { absolute: 1e-12 });
    expectNear(left({ lengthMm: 21.5 }), 0.5, { absolute: 1e-12 });
    expectNear(left({ diameterMm: 4.5, lengthMm: 21.5 }), 0.125, { absolute: 1e-12 });
  });
});
