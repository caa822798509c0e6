import { describe, expect, test } from 'vitest';
import type { Boat } from '../../source/boat/boat.ts';
import { type Template, templates } from '../../source/boat/template-answers.ts';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { believe } from '../../source/inference/believe.ts';
import type { Draft, Entry } from '../../source/logbook/entries.ts';
import type { Answer } from '../../source/readiness/answer.ts';
import { judge } from '../../source/readiness/judge.ts';
import { aTemplateBoat } from '../helpers/template-boat.ts';

const at = '2026-02-03T07:00:00Z';

/** A first round: everything full, new, serviced and as it should be. */
function firstRound(boat: Boat): readonly Entry[] {
  const drafts: readonly Draft[] = [
    ...boat.engines.map(({ id }): Draft => ({ kind: 'hours', at, engine: id, reading: 3000 })),
    ...boat.fluids.map(({ id }): Draft => ({ kind: 'dip', at, fluid: id, share: 1 })),
    ...boat.anodes.map(({ id }): Draft => ({ kind: 'renew', at, anode: id })),
    ...boat.spares.map(({ id, wanted }): Draft => ({ kind: 'count', at, spare: id, count: wanted ?? 2 })),
    ...boat.services.map(({ id }): Draft => ({ kind: 'service', at, service: id })),
    ...boat.dated.map(({ id }): Draft => ({ kind: 'dated', at, item: id, expires: '2028-12-31' })),
    ...boat.checks.map(
      ({ id, ask, atLeast, atMost }): Draft =>
        ask === 'number'
          ? { kind: 'check', at, check: id, value: atLeast ?? atMost ?? 2 }
          : { kind: 'check', at, check: id, ok: true },
    ),
  ];
  return drafts.map((draft, i) => ({
    ...draft,
    id: `aaaaaaaa-${i + 1}`,
    writer: 'aaaaaaaa',
    n: i + 1,
    lc: i + 1,
    rec: at,
  }));
}

function answerFor(boat: Boat): Answer {
  const condition = conditionAt(boat, firstRound(boat), Date.parse(at) + 3_600_000);
  return judge({
    forecast: null,
    boat,
    condition,
    beliefs: believe(boat, condition),
    seed: 1,
    simulations: 4096,
    trouble: [],
  });
}

describe('a healthy, full boat from the template on day one', () => {
  test.each(Object.keys(templates) as Template[])(
    'is fit in every item, and her boat score is at least 95: %s',
    (template) => {
      const { items, score } = answerFor(aTemplateBoat({ template }));
      expect(items.filter(({ state }) => state !== 'fit').map(({ id, state }) => `${id} ${state}`)).toEqual(
        [],
      );
      expect(score.boat).toBeGreaterThanOrEqual(95);
    },
  );

  test('is fit to motor for thirty hours', () => {
    const boat = aTemplateBoat();
    const [passage] = boat.passages;
    const leg = { ...passage!.legs[0]!, nm: 156 };
    const motoring = { main: { mean: 1, sd: 0 } };
    const { score } = answerFor({ ...boat, passages: [{ ...passage!, legs: [leg], motoring }] });
    expect(score.boat).toBeGreaterThanOrEqual(95);
  });

  test('is not, once the fuel is down to its reserve', () => {
    const boat = aTemplateBoat();
    const fluids = boat.fluids.map((fluid) => (fluid.fuel ? { ...fluid, reserve: 195 } : fluid));
    expect(answerFor({ ...boat, fluids }).score.boat).toBeLessThan(95);
  });
});
