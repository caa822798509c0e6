import { describe, expect, it } from 'vitest';
import { textOf } from '../../source/screens/lines.ts';
import { type Model, pageOf } from '../../source/screens/model.ts';
import { spokenLines } from '../../source/screens/spoken.ts';
import { update } from '../../source/screens/update.ts';
import { widthOf } from '../../source/screens/width.ts';
import { bad, good } from '../../source/trouble.ts';
import { aDocument, aLoaded } from '../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../helpers/a-model.ts';

const keysOf = (text: string) => [...text].map((letter) => (letter === ' ' ? 'space' : letter));
/** On the page, with these lines typed, each ended with Enter. */
const typed = (lines: readonly string[], model = aModel()): Model =>
  lines.reduce((next, text) => moved(next, ...keysOf(text), 'enter'), moved(model, 'w', 't'));
const text = (model: Model) => seen(model).join('\n').replace(/\s+/gu, ' ');
const size = SIZES[2];

describe('a forecast typed as it is heard', () => {
  it('has its rows labelled from the clock, and says what was understood beside each', () => {
    const model = typed(['06:00', 'se 15-20 g28 1.2-2m 7s', '=', '.'], aModel({ size }));
    const shown = text(model);
    expect(shown).toContain(
      'rest of today se 15-20 g28 1.2-2m 7s SE, 15 to 20 kn, gusts 28 kn, seas 1.2 to 2 m, period 7 s',
    );
    expect(shown).toContain('tonight = SE, 15 to 20 kn, gusts 28 kn');
    expect(shown).toContain('tomorrow . not heard');
    expect(shown).toContain('issued 06:00 Tue 3 Feb 06:00, 1 h 40 min ago');
  });

  it('warns in place, and of the rows that are understood whatever the others lack', () => {
    const shown = text(typed(['', 'se 20 g12 6 7s', 'so 20 2m'], aModel({ size })));
    expect(shown).toContain('Gusts of 12 kn are less than the wind of 20 kn');
    expect(shown).toContain('Seas of 6 m do not go with the wind or the period beside them; were they feet?');
    expect(shown).toContain('"so" is east in some languages and west in others');
  });

  it('is taken in by Enter on an empty line and Enter again, once the issue time is known', () => {
    const without = typed(['', 'w 12 1m', '']);
    expect(pageOf(without)).toMatchObject({ page: 'heard', at: 0 });
    expect(without.notice).toBe('when was it issued?');
    const asked = typed(['06:00', 'w 12 1m', '']);
    expect(text(asked)).toContain('Enter again takes it in');
    const [saving, requests] = update(asked, { is: 'key', key: 'enter' });
    expect(requests).toMatchObject([
      {
        do: 'take in',
        content: { source: 'typed', issuedAt: '2026-02-03T06:00:00.000Z' },
        text: '06:00\nw 12 1m\n\n\n\n\n',
      },
    ]);
    const [request] = requests;
    if (request?.do !== 'take in') throw new Error('nothing was taken in');
    const { content } = request;
    const [done, loads] = update(saving, { is: 'taken in', content, result: good('forecasts/x.json') });
    expect(pageOf(done).page).toBe('weather');
    expect([done.notice, loads]).toEqual(['the forecast is taken in', [{ do: 'load' }]]);
    const result = bad({ kind: 'cannot write', file: 'forecasts/x.json', code: 'ENOSPC' });
    const [kept] = update(saving, { is: 'taken in', content, result });
    expect(pageOf(kept)).toMatchObject({ page: 'heard', saving: null });
    expect(text(kept)).toContain('w 12 1m');
    expect(text(kept)).toContain('ENOSPC');
  });

  it('asks again once something is typed after all', () => {
    const model = moved(typed(['06:00', 'w 12 1m', '']), 'up', 'backspace', '5');
    expect(pageOf(model)).toMatchObject({ ready: false });
  });

  it('takes nothing in while a row is not understood, and goes to it', () => {
    const [model, requests] = update(typed(['06:00', 'w plenty', 'w 12 1m']), { is: 'key', key: 'enter' });
    expect(requests).toEqual([]);
    expect(pageOf(model)).toMatchObject({ at: 1 });
    expect(text(model)).toContain('"plenty" is not understood');
  });

  it('offers further days as they fill, and a pasted sentence is read as a bulletin', () => {
    const filled = typed(['06:00', ...Array<string>(9).fill('w 12 1m')], aModel({ size }));
    expect(pageOf(filled)).toMatchObject({ at: 10 });
    expect(text(filled)).toContain('Saturday night');
    const pasted = moved(typed(['06:00'], aModel({ size })), {
      is: 'pasted',
      text: 'SW winds 15 to 25 kt.\nSeas 4 to 6 ft.',
    });
    expect(text(pasted)).toContain('SW, 15 to 25 kn, seas 1.2 to 1.8 m');
  });

  it('letters are no keys in it; Escape leaves with nothing taken in', () => {
    expect(pageOf(moved(aModel(), 'w', 't', 'q')).page).toBe('heard');
    expect(pageOf(moved(aModel(), 'w', 't', 'q', 'escape')).page).toBe('weather');
  });

  it('is not opened where nothing can be saved', () => {
    const readOnly = { kind: 'cannot read', file: 'log', code: 'EROFS' } as const;
    const model = moved(aModel({}, aDocument(), aLoaded({ readOnly })), 'w', 't');
    expect([pageOf(model).page, model.notice]).toEqual([
      'weather',
      expect.stringContaining('nothing can be saved'),
    ]);
  });

  it.each(SIZES)('keeps its shape and the line typed in sight at $columns columns', (window) => {
    const lines = ['06:00', 'se 15-20 g12 6 7s', 'f5-6 sw 2.5m', 'so 20', '=', 'nw 8 1m'];
    for (let count = 0; count <= lines.length; count += 1) {
      const shown = seen(typed(lines.slice(0, count), aModel({ size: window })));
      expect(shown).toHaveLength(window.rows);
      for (const line of shown) expect(widthOf(line)).toBe(window.columns);
      expect(shown.some((line) => line.startsWith('  > '))).toBe(true);
    }
  });

  it('is heard line by line', () => {
    const spoken = spokenLines(typed(['06:00', 'se 15 1m'])).map(textOf);
    expect(spoken).toContain('rest of today: se 15 1m, understood as SE, 15 kn, seas 1 m.');
    expect(spoken).toContain('Now typing tonight: nothing yet.');
  });
});
