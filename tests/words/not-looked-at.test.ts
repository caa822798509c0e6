import { describe, expect, it } from 'vitest';
import { briefOf } from '../../source/words/brief.ts';
import type { VerdictDocument } from '../../source/words/document.ts';
import { nothingLookedAt, notLookedAt } from '../../source/words/not-looked-at.ts';
import { verdictPage } from '../../source/words/page.ts';
import { aDocument } from '../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../helpers/a-model.ts';

/** The answer of a boat on which `seen` of the vital things were looked at. */
function lookedAt(count: number): VerdictDocument {
  const document = aDocument();
  let left = count;
  const items = document.items.map((item) => {
    if (item.consequence !== 'vital' || left-- > 0) return { ...item, state: 'fit' as const };
    return { ...item, state: 'unseen' as const, lookedAt: null };
  });
  return { ...document, verdict: 'not ready', items, score: { ...document.score, boat: 100 } };
}

const words = (text: string) => text.replace(/\s+/gu, ' ');
const pages = (document: VerdictDocument) => [
  verdictPage(document, 80, 'UTC'),
  briefOf(document, 'UTC').join(' '),
  ...[[], ['enter'], ['w'], ['r']].map((keys) =>
    seen(moved({ ...aModel({}, document), size: { columns: 120, rows: 60 } }, ...keys)).join(' '),
  ),
];

describe('the score of a boat nobody looked at', () => {
  it('is no score: no page shows a certain-looking one', () => {
    const document = lookedAt(0);
    expect(nothingLookedAt(document)).toBe(true);
    for (const page of pages(document)) {
      expect(words(page)).not.toMatch(/boat (?:is at )?100 in 100|score nearly all/u);
      expect(words(page)).toMatch(/not looked at|was looked at/u);
    }
    expect(document.score.boat).toBe(100);
  });

  it('says how many vital things it takes for good, while some were looked at', () => {
    const document = lookedAt(1);
    const count = notLookedAt(document);
    expect(count).toBeGreaterThan(0);
    expect(nothingLookedAt(document)).toBe(false);
    expect(words(verdictPage(document, 80, 'UTC'))).toContain(`${count} vital thing`);
    expect(words(seen(aModel({ size: { columns: 120, rows: 36 } }, document)).join(' '))).toContain(
      `${count} not looked at boat 100 in 100`,
    );
  });

  it('says nothing of it once all was looked at', () => {
    const document = lookedAt(1000);
    expect(notLookedAt(document)).toBe(0);
    expect(words(verdictPage(document, 80, 'UTC'))).toContain(
      'Boat score nearly all (100 in 100); she is ready',
    );
  });

  it('keeps the score where there is no room for what it takes for good', () => {
    for (const size of SIZES.filter(({ columns }) => columns >= 80))
      expect(words(seen(aModel({ size }, lookedAt(1))).join(' '))).toContain('boat 100 in 100');
  });
});
