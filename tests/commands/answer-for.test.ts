import { expect, it } from 'vitest';
import { readBoat } from '../../source/boat/read.ts';
import { answerFor, answering } from '../../source/commands/answer-for.ts';
import { conditionAt } from '../../source/condition/condition-at.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';

it('an answer taken in turns is the one taken in one go; there is a turn for every item, hour and block of passages', () => {
  const boat = readBoat(JSON.stringify(sandpiper), 'boat.json');
  if (!boat.ok) throw new Error('no boat');
  const at = Date.parse('2026-03-01T06:00:00Z');
  const entries = [anEntry('dip', { fluid: 'water', level: 200 }, '2026-02-28T06:00:00Z')];
  const loaded = {
    boat: boat.value,
    entries,
    troubles: [],
    forecasts: [steadyForecast(at, [{ hours: 48 }])],
  };
  const turnsOf = (simulations: number) => {
    const question = { at, seed: 1, simulations };
    const work = answering({ ...loaded, condition: conditionAt(loaded.boat, entries, at) }, question);
    let turns = 0;
    for (;;) {
      const turn = work.next();
      if (turn.done) {
        expect(turn.value.document).toEqual(answerFor(loaded, question).document);
        return turns;
      }
      turns += 1;
    }
  };
  const [few, more] = [turnsOf(256), turnsOf(1024)];
  expect(few).toBeGreaterThan(150);
  expect(more).toBe(few + (1024 - 256) / 64);
});
