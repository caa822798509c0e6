import { describe, expect, it } from 'vitest';
import { countdown } from '../../../source/screens/panels/leaving.ts';
import { sightOf } from '../../../source/screens/sight.ts';
import type { VerdictDocument } from '../../../source/words/document.ts';
import { AT, aDocument } from '../../helpers/a-document.ts';
import { aModel } from '../../helpers/a-model.ts';

const told = (changes: Partial<VerdictDocument>) => countdown(sightOf(aModel({}, aDocument(changes)))!);

const alone = {
  at: '2026-02-05T06:00:00Z',
  until: '2026-02-05T15:00:00Z',
  startWorkBy: '2026-02-05T05:00:00Z',
};
const work = [
  { do: 'top up', item: 'gear-oil', takes: [], minutes: 10, boatScoreAfter: 94, buys: null },
  { do: 'renew', item: 'pencil', takes: [], minutes: 20, boatScoreAfter: 96, buys: null },
  { do: 'look', item: 'fire-blanket', takes: [], minutes: 30, boatScoreAfter: 97, buys: null },
];
const notReady = { verdict: 'not ready', toGetReady: work, weatherAlone: alone } as const;

describe('the countdown', () => {
  it('says when, for how long, and what ends it', () => {
    expect(told({})).toBe('Opens in 1 d 22 h, Thu 06:00, for 9 h; closes: gusts pass 28 kn off Scarva Head.');
  });

  it('open now is said plainly with go, and as the forecast has it where something else holds her', () => {
    const [window] = aDocument().windows;
    const windows = [{ ...window!, at: AT, until: '2026-02-03T16:40:00Z', closes: null }];
    expect(told({ verdict: 'go', windows })).toBe('Open now, for 9 h; open to the end of the forecast.');
    expect(told({ windows })).toContain('By this forecast open now, for 9 h');
  });

  it('of a boat that is not ready the weather alone opens, with the work to be done by then and when to start', () => {
    expect(told(notReady)).toBe(
      'The weather alone opens in 1 d 22 h, Thu 06:00, for 9 h; by then: top up Gear oil, renew Heat-exchanger pencil anode, 1 more, 1 h; start by Thu 05:00.',
    );
    expect(
      told({ ...notReady, weatherAlone: { ...alone, at: AT, startWorkBy: '2026-02-03T06:40:00Z' } }),
    ).toMatch(/The weather alone is open now, .* start now\.$/u);
    expect(told({ ...notReady, toGetReadySuffices: false })).toContain('and that is not enough');
    expect(told({ ...notReady, toGetReady: [] })).toContain('no work known here makes her ready by then');
  });

  it('of a boat that is ready the weather alone is said only where her stores run short before it', () => {
    expect(told({ weatherAlone: alone })).not.toContain('alone');
    expect(told({ weatherAlone: { ...alone, startWorkBy: null }, windows: [] })).toBe(
      'The weather alone opens in 1 d 22 h, Thu 06:00, for 9 h; but she can wait until Mon 05:00; then Fresh water runs short.',
    );
  });

  it('says what is missing where no window can be told, and nothing it does not know', () => {
    const unjudged = { now: null, boat: 97, weather: null, error: 0.3 };
    expect(told({ passage: null })).toBe('No passage is planned: no window can be told.');
    expect(told({ forecast: null, score: unjudged })).toBe('No forecast: no window can be told.');
    expect(told({ score: unjudged })).toBe(
      'No window can be told: the forecast says nothing of this passage.',
    );
    expect(told({ windows: [] })).toBe('No window in this forecast.');
  });
});
