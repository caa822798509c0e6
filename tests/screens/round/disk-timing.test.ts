import { describe, expect, it } from 'vitest';
import { stream } from '../../../source/maths/stream.ts';
import { keysOf } from '../../../source/screens/keys.ts';
import { pageOf } from '../../../source/screens/model.ts';
import { enteredAt } from '../../../source/screens/round/round.ts';
import { aWorld, dueBoat, type World } from '../../helpers/a-round.ts';

/** What is struck at random. */
const STRUCK = [
  '\r',
  '\r',
  '\r',
  '\t',
  'a',
  'u',
  'u',
  '1',
  '1/2',
  '+.2',
  '-1',
  'full',
  ' +300ml',
  'y',
  'n',
  '9999',
  '\u007f',
  '\u0015',
  ' wet',
];

const BOAT = dueBoat();

/** Plays the keys in these chunks; `settles` whether the disk answers before the next. */
function played(chunks: readonly string[], settles: (chunk: number) => boolean): World {
  const world = aWorld(BOAT);
  world.press('r');
  chunks.forEach((chunk, index) => {
    world.press(...keysOf(chunk, {}));
    if (settles(index)) world.settle();
  });
  world.settle();
  return world;
}

/** The log, strikes applied, and how the round stands; not the ids, which are given in the order of the disk. */
function outcome(world: World) {
  const page = pageOf(world.model());
  const round =
    page.page === 'round'
      ? {
          at: page.at,
          fields: page.fields,
          told: page.told,
          rows: page.rows.map(({ look }) => enteredAt(page, look.id)?.entered.drafts ?? null),
        }
      : page.page;
  return { round, log: world.log() };
}

describe('a round and a slow disk', () => {
  it('come to the same log and the same page whenever the disk answers: 300 scripts', () => {
    let saved = 0;
    for (let script = 0; script < 300; script += 1) {
      const chance = stream(script, 'slow disk');
      const below = (most: number) => Math.floor(chance.uniform() * most);
      const typed = Array.from({ length: 5 + below(12) }, () => STRUCK[below(STRUCK.length)]!);
      if (below(3) === 0) typed.push('\u001b', '\u001b');
      const late = outcome(played(typed, () => false));
      expect(outcome(played(typed, () => true)), JSON.stringify(typed)).toEqual(late);
      expect(outcome(played(typed, (chunk) => chunk % 3 === 0)), JSON.stringify(typed)).toEqual(late);
      saved += late.log.length;
    }
    expect(saved).toBeGreaterThan(300);
  });
});
