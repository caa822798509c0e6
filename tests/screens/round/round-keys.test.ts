import { describe, expect, it } from 'vitest';
import { readDraft } from '../../../source/logbook/drafts.ts';
import { stream } from '../../../source/maths/stream.ts';
import { keysOf } from '../../../source/screens/keys.ts';
import { lineWidth, textOf } from '../../../source/screens/lines.ts';
import { pageOf } from '../../../source/screens/model.ts';
import { screenLines } from '../../../source/screens/screen.ts';
import { aWorld, dueBoat, type World } from '../../helpers/a-round.ts';
import { HOSTILE } from '../../helpers/hostile-texts.ts';

/** What is struck at random, the keys of the round more often than what ends it. */
const STRUCK = [
  '\r',
  '\r',
  '\r',
  '\t',
  '\t',
  'a',
  'u',
  'u',
  '1',
  '1/2',
  '+.2',
  '-1',
  'full',
  'off',
  ' drops',
  ' +300ml',
  'y',
  'n',
  'x',
  '12.5',
  '9999',
  '\u007f',
  '\u0015',
  ' ',
  '?',
  '\u001b',
];

const BOAT = dueBoat();

/** The chunks as a terminal might send them; `settles` whether the disk answers before the next. */
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

/** All of it but the line that answers the last key, and the ids, which are given in the order of the disk. */
function outcome(world: World) {
  const top = pageOf(world.model());
  const round =
    top.page === 'round'
      ? { ...top, saves: top.saves.map(({ row, drafts, typed, struck }) => ({ row, drafts, typed, struck })) }
      : top;
  return { round, depth: world.model().pages.length, log: world.log() };
}

describe('keys typed into the round', () => {
  it('500 scripts come to the same whatever the chunks, and whenever the disk answers', () => {
    const chance = stream(7, 'round keys');
    const below = (most: number) => Math.floor(chance.uniform() * most);
    let saved = 0;
    for (let script = 0; script < 500; script += 1) {
      const text = Array.from({ length: 5 + below(15) }, () => STRUCK[below(STRUCK.length)]!).join('');
      const chunks: string[] = [];
      for (let from = 0; from < text.length; ) {
        const length = 1 + below(6);
        chunks.push(text.slice(from, from + length));
        from += length;
      }
      const late = outcome(played([...text], () => false));
      expect(outcome(played(chunks, (chunk) => chunk % 2 === 0)), JSON.stringify(text)).toEqual(late);
      saved += late.log.length;
    }
    expect(saved).toBeGreaterThan(500);
  });

  it('nothing typed breaks the page, and only what an entry may hold is saved', () => {
    const texts = [
      '',
      ' ',
      'soup',
      '1e9',
      '-1',
      '+',
      '+-',
      '1/0',
      '9'.repeat(70),
      'a page\n'.repeat(400),
      ...HOSTILE,
    ];
    for (const row of ['when', 'main', 'gear-oil', 'pencil', 'house-bank', 'bilge']) {
      for (const text of texts) {
        const world = aWorld(BOAT);
        world.send({ is: 'resized', size: { columns: 40, rows: 12 } });
        world.press('r', 'up');
        while (world.round().at !== 1 + world.round().rows.findIndex(({ look }) => look.id === row))
          world.press('down');
        world.send({ is: 'pasted', text });
        const drawn = screenLines(world.model());
        expect(drawn).toHaveLength(12);
        for (const line of drawn) {
          expect(lineWidth(line)).toBe(40);
          expect(textOf(line)).not.toMatch(/\p{Cc}/u);
        }
        world.press('enter');
        world.settle();
        for (const draft of world.log()) expect(readDraft(draft).ok).toBe(true);
        if (/^(?:soup|1e9|\+|\+-|1\/0|9{70}|a page)/u.test(text)) expect(world.log()).toEqual([]);
      }
    }
  });
});
