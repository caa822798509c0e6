import { describe, expect, it } from 'vitest';
import { textOf } from '../../source/screens/lines.ts';
import { pageOf } from '../../source/screens/model.ts';
import { spokenLines } from '../../source/screens/spoken.ts';
import { turnedPage } from '../../source/screens/turned.ts';
import { widthOf } from '../../source/screens/width.ts';
import type { VerdictDocument } from '../../source/words/document.ts';
import { aDocument } from '../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../helpers/a-model.ts';

const pageAt = (size: { columns: number; rows: number }, document?: VerdictDocument, keys: string[] = []) => {
  const model = moved(aModel({ size }, document), 'w', ...keys);
  const page = pageOf(model);
  if (page.page !== 'weather') throw new Error('not on the weather page');
  return turnedPage(model, page).lines.map(textOf);
};
const flat = (lines: readonly string[]) => lines.join(' ').replace(/\s+/gu, ' ');

describe('the way to the weather', () => {
  it('w turns to it from any page, Escape goes back', () => {
    for (const keys of [['w'], ['enter', 'w'], ['!', 'w']]) {
      const model = moved(aModel(), ...keys);
      expect(pageOf(model)).toMatchObject({ page: 'weather', hour: 0, from: 0 });
      expect(pageOf(moved(model, 'escape'))).toEqual(pageOf(moved(aModel(), ...keys.slice(0, -1))));
    }
  });

  it('the arrows point at later and earlier departures, never past those looked at', () => {
    const hourAfter = (...keys: string[]) => pageOf(moved(aModel(), 'w', ...keys));
    expect(hourAfter('right', 'l', 'h')).toMatchObject({ hour: 1 });
    expect(hourAfter('left', '<')).toMatchObject({ hour: 0 });
    expect(hourAfter('>', '>', '<')).toMatchObject({ hour: 6 });
    expect(hourAfter(...Array.from({ length: 30 }, () => '>'))).toMatchObject({ hour: 96 });
  });
});

describe.each(SIZES.map((size) => [`${size.columns}x${size.rows}`, size] as const))(
  'the weather at %s',
  (_, size) => {
    const lines = pageAt(size);

    it('no line is wider than the window', () => {
      for (const line of lines) expect(widthOf(line), line).toBeLessThanOrEqual(size.columns);
    });

    it('says how the hour pointed at ends and what breaks first, in sight without scrolling', () => {
      const now = flat(seen(moved(aModel({ size }), 'w')));
      expect(now).toContain('LEAVING now: 10 in 100');
      expect(now).toContain('Breaks first: gusts pass 28 kn, Scarva Head, in 45 of 100 passages.');
      const later = flat(seen(moved(aModel({ size }), 'w', ...Array.from({ length: 8 }, () => '>'))));
      expect(later).toContain('LEAVING Thu 07:40, in 2 d: 88 in 100');
    });

    it('has each leg with what it meets, and each chart with its sentence', () => {
      const text = flat(lines);
      expect(text).toContain('BY LEG, leaving now');
      expect(text).toMatch(/Scarva Head,? Tue 07:40 to 13:28/u);
      expect(text).toMatch(/Otter Sound,? Tue 13:28 to 19:16/u);
      expect(text).toMatch(/23\.8 kn \(21 to 27\) SSW/u);
      expect(text).toContain('FORECAST AGAINST THE LIMITS, Scarva Head, Otter Sound');
      expect(text).toMatch(/Wind 23\.4 kn now; most .*; over the limit of 20 kn now to /u);
      expect(text).toMatch(/Gusts 30\.4 kn now; .*over the limit of 28 kn/u);
      expect(text).toMatch(/Seas 2\.13 m now; .*over the limit of 2 m/u);
      expect(text).toContain('limit 20 kn');
    });
  },
);

describe('what the weather page says', () => {
  const size = SIZES[2];

  it('the table follows the hour pointed at', () => {
    expect(flat(pageAt(size, undefined, ['>', 'right']))).toMatch(/Scarva Head Tue 14:40 to 20:28/u);
  });

  it('wind forward of 60 degrees off the bow is said to be ahead', () => {
    const { weather } = aDocument();
    const [one, ...others] = weather!.legs;
    const legs = [{ ...one!, courseDeg: 250 }, ...others];
    const text = flat(pageAt(size, aDocument({ weather: { ...weather!, legs } })));
    expect(text).toMatch(/Scarva Head .*SSW, ahead .*Otter Sound/u);
    expect(text).not.toMatch(/Otter Sound Tue[^,]*, ahead/u);
  });

  it('what is not said has no figure, and is not calm', () => {
    const { weather } = aDocument();
    const silent = weather!.forecasts.map((said) => ({
      ...said,
      seas: said.seas.map(() => null),
      seasSd: said.seasSd.map(() => null),
    }));
    const text = flat(pageAt(SIZES[1], aDocument({ weather: { ...weather!, forecasts: silent } })));
    expect(text).toContain('seas not said');
    expect(text).toContain('Nothing is said of seas: that is not calm.');
  });

  it('without a limit it says that none is set', () => {
    const { weather } = aDocument();
    const limits = { ...weather!.limits, seas: null };
    expect(flat(pageAt(size, aDocument({ weather: { ...weather!, limits } })))).toMatch(
      /Seas [^.]*\.[^;]*; [^;]*; no limit is set\./u,
    );
  });

  it('without a forecast it says so, and still draws the boat alone', () => {
    const curve = aDocument().curve.map((point) => ({ ...point, score: null, weather: null }));
    const score = { now: null, boat: 97.3, weather: null, error: 0.2 };
    const text = flat(pageAt(size, aDocument({ forecast: null, weather: null, windows: [], curve, score })));
    expect(text).toContain('LEAVING now: boat 97 in 100, the weather not judged');
    expect(text).toContain('There is no forecast; hoveshort forecast takes one in.');
    expect(text).toContain('fit from 95');
    expect(text).not.toContain('AGAINST THE LIMITS');
  });

  it('a screen reader hears a sentence for each leg and each chart, and no picture', () => {
    const heard = spokenLines(moved(aModel({ size }), 'w')).map(textOf);
    const text = heard.join('\n');
    expect(text).not.toMatch(/[\u2800-\u28ff─↑]| {2}/u);
    expect(heard).toContainEqual(
      expect.stringMatching(
        /^Scarva Head, Tue 07:40 to 13:28: wind 23\.8 kn .*; stands in the way: gusts pass 28 kn, 45 in 100\.$/u,
      ),
    );
    expect(text).toContain('Wind 23.4 kn now');
    expect(text).toContain('left and right hour');
  });
});
