import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../source/readiness/actions.ts';
import { bitsAt } from '../../source/readiness/bits.ts';
import type { Requirement, Work } from '../../source/readiness/requirements.ts';
import { toGetReady } from '../../source/readiness/to-get-ready.ts';

const passages = 64;

/** One item: it holds in the first `held` passages, once its work is done in `mended`. */
function anItem(id: string, held: number, mended: number): Requirement {
  const holding = (work: Work) => {
    const upTo = work.done.has(id) ? mended : held;
    const latest = Float64Array.from({ length: passages }, (_, i) => (i < upTo ? 0 : -Infinity));
    return { latest, heldAt: (hour: number) => [bitsAt(latest, hour)] };
  };
  return { items: [id], stores: [], holding };
}

function work(item: string, minutes: number): Candidate {
  return { do: 'service', item, takes: [], minutes, pouredL: null, buys: null };
}

function taskOf(items: readonly { held: number; mended: number; minutes: number }[], enough: number) {
  return {
    vital: items.map(({ held, mended }, i) => ({
      requirement: anItem(`item-${i}`, held, mended),
      places: [0],
    })),
    passages,
    hour: 0,
    enough,
    owed: [],
    candidates: items.map(({ minutes }, i) => work(`item-${i}`, minutes)),
    aboard: () => 0,
  };
}

const anything = fc.record({
  held: fc.integer({ min: 0, max: passages }),
  mended: fc.integer({ min: 0, max: passages }),
  minutes: fc.integer({ min: 1, max: 90 }),
});

describe('what to do to get ready', () => {
  it('is the shortest list that suffices, then the one with the fewest minutes: no other list does better', () => {
    fc.assert(
      fc.property(
        fc.array(anything, { minLength: 1, maxLength: 7 }),
        fc.integer({ min: 1, max: passages }),
        (items, enough) => {
          const { actions, suffices } = toGetReady(taskOf(items, enough));
          const scoreOf = (done: readonly number[]) =>
            Math.min(...items.map(({ held, mended }, i) => (done.includes(i) ? mended : held)));
          const lists = Array.from({ length: 2 ** items.length }, (_, mask) =>
            items.flatMap((_, i) => (mask & (1 << i) ? [i] : [])),
          );
          const enoughLists = lists.filter((list) => scoreOf(list) >= enough);
          const minutes = (list: readonly number[]) => list.reduce((sum, i) => sum + items[i]!.minutes, 0);
          const chosen = actions.map(({ item }) => Number(item.slice(5)));
          expect(suffices).toBe(enoughLists.length > 0);
          if (!suffices) {
            expect(scoreOf(chosen)).toBe(Math.max(...lists.map(scoreOf)));
            return;
          }
          expect(scoreOf(chosen)).toBeGreaterThanOrEqual(enough);
          const shortest = Math.min(...enoughLists.map((list) => list.length));
          expect(chosen.length).toBe(shortest);
          expect(minutes(chosen)).toBe(
            Math.min(...enoughLists.filter((list) => list.length === shortest).map(minutes)),
          );
        },
      ),
    );
  });

  it('above twelve candidates still finds a list that suffices and from which nothing can be left out', () => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: 13, maxLength: 20 }), (drawn) => {
        const items = drawn.map((item) => ({ ...item, mended: passages }));
        const { actions, suffices } = toGetReady(taskOf(items, 60));
        expect(suffices).toBe(true);
        expect(actions.map(({ item }) => item).sort()).toEqual(
          items.flatMap(({ held }, i) => (held < 60 ? [`item-${i}`] : [])).sort(),
        );
      }),
    );
  });

  it('says what helps when nothing suffices, with the score each step reaches', () => {
    const { actions, suffices } = toGetReady(
      taskOf(
        [
          { held: 10, mended: 32, minutes: 5 },
          { held: 16, mended: 16, minutes: 5 },
        ],
        60,
      ),
    );
    expect(suffices).toBe(false);
    expect(actions).toEqual([expect.objectContaining({ item: 'item-0', boatScoreAfter: 25 })]);
  });
});
