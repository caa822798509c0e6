import { describe, expect, it } from 'vitest';
import { briefOf } from '../../source/words/brief.ts';
import type { VerdictDocument } from '../../source/words/document.ts';
import { aDocument } from '../helpers/a-document.ts';

const brief = (own: Partial<VerdictDocument> = {}) => briefOf(aDocument(own), 'UTC');

describe('the answer in half a page', () => {
  it('says the verdict and why, what first, what to keep an eye on, the weather, and what it is', () => {
    expect(brief()).toEqual([
      'Sandpiper, Tue 3 Feb 2026 07:40 (UTC).',
      'Hold: she is fit, the weather is not, or is not known. The boat is at 97 in 100, with the weather at 22 in 100. She is fit, the weather is not yet; it opens Thu 5 Feb 06:00 UTC.',
      'Worth doing while held, 1 h 5 min in all: renew Heat-exchanger pencil anode; do Raw-water impeller. Before the anchor comes up there is 1 look to make.',
      expect.stringMatching(/^Keep an eye on 3 things\. Gear oil: goes at another rate since 28 Jan 2026/),
      'The forecast, rows typed as they were heard, is 5 h old. For Heron Bight to Otter Cay the first window is from Thu 5 Feb 06:00 until Thu 5 Feb 15:00, when gusts pass 28 kn off Scarva Head: 91 in 100 end well. She can wait until Mon 9 Feb 05:00; then Fresh water runs short.',
      expect.stringContaining('The skipper decides.'),
    ]);
  });

  it('begins with the danger of staying', () => {
    const staying = { until: '2026-02-04T20:00:00Z', why: 'wind from the north at Heron Bight' };
    expect(brief({ staying })[0]).toBe(
      'Sandpiper, Tue 3 Feb 2026 07:40 (UTC). Where she lies is untenable from Wed 4 Feb 20:00. Wind from the north at Heron Bight.',
    );
  });

  it('ends with how long she may lie there, where she can leave before', () => {
    const staying = { until: '2026-02-06T20:00:00Z', why: 'wind from the north at Heron Bight' };
    expect(brief({ staying }).at(-2)).toMatch(
      /runs short\. Where she lies is untenable from Fri 6 Feb 20:00\. Wind from the north/u,
    );
  });

  it('under way says how much of the passage is left, not that there is no window', () => {
    const passage = { ...aDocument().passage!, toGo: { nm: 15.2, hours: 2.6 } };
    expect(brief({ passage, windows: [] }).at(-2)).toContain(
      'is 5 h old. Under way for Heron Bight to Otter Cay, 60 nm, 15 nm to go, about 3 h.',
    );
  });

  it('says what to do first, and when even that is not enough', () => {
    const actions = ['look', 'top up', 'stop the leak', 'buy', 'renew'].map((what) => ({
      do: what,
      item: 'gear-oil',
      takes: [],
      minutes: 10,
      boatScoreAfter: 80,
      buys: null,
    }));
    const said = brief({
      verdict: 'not ready',
      toGetReady: actions,
      toGetReadySuffices: false,
      whileHeld: [],
    });
    expect(said[2]).toContain(
      'First, 50 min in all: look at Gear oil; top up Gear oil; stop the leak of Gear oil; buy Gear oil; 1 more. That is not enough: nothing known here brings her to 95.',
    );
    const weatherAlone = { at: '2026-02-05T06:00:00Z', until: '2026-02-05T15:00:00Z', startWorkBy: null };
    const later = brief({ toGetReady: [], toGetReadySuffices: false, weatherAlone });
    expect(later[2]).toContain(
      'Nothing known here brings her to 95 by Thu 5 Feb 06:00, when the weather alone opens.',
    );
  });

  it('says that there is no forecast, no window, or no passage', () => {
    expect(brief({ forecast: null, windows: [] }).at(-2)).toContain('No forecast is aboard');
    expect(brief({ windows: [] }).at(-2)).toContain('For Heron Bight to Otter Cay there is no window in it.');
    expect(brief({ passage: null }).join(' ')).not.toContain('window is');
  });

  it('stays half a page, whatever there is to say', () => {
    const { items } = aDocument();
    const many = items.map((item) => ({ ...item, state: 'watch' as const }));
    const reasons = Array.from({ length: 30 }, (_, n) => `Reason ${n}.`);
    const said = brief({ items: many, reasons });
    expect(said[1]).toContain('Reason 3. And 26 more reasons.');
    expect(said[3]).toContain(`And ${many.length - 3} more.`);
  });

  it('names nothing to keep an eye on where all is well', () => {
    const items = aDocument().items.map((item) => ({ ...item, state: 'fit' as const }));
    expect(brief({ items }).join(' ')).not.toContain('Keep an eye');
  });
});
