import { stream } from '../../source/maths/stream.ts';
import { inChunks, type Key, keyScript } from '../helpers/key-scripts.ts';
import { aPlayer, type Chunk, DRAWN_MS } from '../helpers/player.ts';
import { anOutcome, type Campaign, found } from './campaign.ts';

/** What is typed quickly comes in chunks some milliseconds apart. */
const mostPauseMs = 12;
/** A key is read, and what it changes is changed. */
const READ_MS = 12;
/** After these something may be asked of the disk, or held back. */
const HELD_BACK = /^[\r\u001b\f]$/u;
/** Most of a script is waiting. */
const lanes = 2;
const mostShown = 400;

/**
 * The same keys one by one and in chunks by chance into the built program: the screens, and all that is on the disk, must be the same.
 * What is typed ahead of an answer that is still being worked out may fall on the page as it was: where the two differ, what follows
 * an entry waits for its answer, and is compared once more. A script is shown again by its seed and number.
 */
export const keyChunks: Campaign = {
  name: 'the same keys one by one and in chunks: screens, entries',
  count: 500,
  async run(count, seed) {
    const outcome = anOutcome();
    let ahead = 0;
    const lane = async (first: number) => {
      const [slow, fast] = [aPlayer(), aPlayer()];
      for (let n = first; n < count; n += lanes) {
        outcome.count += 1;
        const script = keyScript(stream(seed, `keys ${n}`));
        const pieces = inChunks(script, stream(seed, `chunks ${n}`));
        const pauses = stream(seed, `pauses ${n}`);
        const quickly = (keys: string): Chunk => ({
          keys,
          rest: { pauseMs: pauses.uniform() * mostPauseMs },
        });
        const [one, other] = await Promise.all([
          slow.play(script.map(oneByOne)),
          fast.play(pieces.map((keys) => quickly(keys.join('')))),
        ]);
        if (one.end === other.end) continue;
        const waited = cutAfter(pieces, one.wrote).map(({ keys, rests }) =>
          rests ? { keys, rest: { asleepMs: DRAWN_MS } } : quickly(keys),
        );
        const again = await fast.play(waited);
        if (one.end === again.end) ahead += 1;
        else found(outcome, 'lost', `${shown(seed, n, script)}${differenceOf(one.end, again.end)}`);
      }
      slow.leave();
      fast.leave();
    };
    await Promise.all(Array.from({ length: lanes }, (_, first) => lane(first)));
    if (ahead > 0) outcome.notes.push(`${ahead} typed ahead of an answer, the same once they wait for it`);
    return outcome;
  },
};

function oneByOne(keys: Key): Chunk {
  return { keys, rest: { asleepMs: HELD_BACK.test(keys) ? DRAWN_MS : READ_MS } };
}

/** The same chunks, cut as well after each key that wrote something. */
function cutAfter(
  pieces: readonly (readonly Key[])[],
  wrote: readonly number[],
): { readonly keys: string; readonly rests: boolean }[] {
  const cut: { keys: string; rests: boolean }[] = [];
  let at = 0;
  for (const piece of pieces) {
    let keys = '';
    for (const key of piece) {
      keys += key;
      if (wrote.includes(at)) {
        cut.push({ keys, rests: true });
        keys = '';
      }
      at += 1;
    }
    if (keys !== '') cut.push({ keys, rests: false });
  }
  return cut;
}

function shown(seed: number, n: number, script: readonly Key[]): string {
  return `seed ${seed}, script ${n}: ${JSON.stringify(script.join('')).slice(0, mostShown)}`;
}

function differenceOf(one: string, other: string): string {
  const [lines, others] = [one.split('\n'), other.split('\n')];
  const at = lines.findIndex((line, index) => line !== others[index]);
  return `\n      one by one: ${lines[at]}\n      in chunks:  ${others[at]}`;
}
