import { describe, expect, it } from 'vitest';
import { textOf } from '../../source/screens/lines.ts';
import type { Model } from '../../source/screens/model.ts';
import { spokenLines } from '../../source/screens/spoken.ts';
import { aDocument } from '../helpers/a-document.ts';
import { aFirstModel, aModel, moved } from '../helpers/a-model.ts';

const heard = (model: Model) => spokenLines(model).map(textOf);

describe('the board for a screen reader', () => {
  it('says the answer first, in sentences', () => {
    const lines = heard(aModel());
    expect(lines[0]).toContain('SANDPIPER at Heron Bight, day 2');
    expect(lines[1]).toBe('Verdict: hold. Boat 97 in 100 with the weather 22 in 100.');
    expect(lines).toContain(
      'Opens in 1 d 22 h, Thu 06:00, for 9 h; closes: gusts pass 28 kn off Scarva Head.',
    );
    expect(lines).toContain('To get ready: nothing more.');
    expect(lines).toContain(
      'While held, 1 of 2: renew Heat-exchanger pencil anode, takes 1 x Pencil anodes, 20 min, then the boat 97 in 100.',
    );
  });

  it('says the place the choice rests on, and how many there are', () => {
    expect(heard(aModel()).join('\n')).toMatch(/\d+ places on the board; down goes to the first\./u);
    const there = heard({ ...aModel(), chosen: 'item:gear-oil' });
    expect(there.join('\n')).toMatch(/\d+ of \d+: Gear oil, watch\. Goes at another rate/u);
    expect(there.join('\n')).toContain('good until Sun 04:00');
  });

  it('has no pictures and no columns on any page', () => {
    const item = { ...aModel(), chosen: 'item:gear-oil' };
    for (const model of [
      aModel(),
      moved(item, 'enter'),
      moved(aModel(), 'enter'),
      moved(aModel(), '!'),
      aFirstModel(),
    ]) {
      for (const line of heard(model)) {
        expect(line).not.toMatch(/[\u2800-\u28ff─]| {2}/u);
        expect(line).not.toBe('');
      }
    }
  });

  it('leaves out the caret, and headings over what is in sight alone', () => {
    const stores = heard(moved(aModel(), 's'));
    expect(stores.join('\n')).not.toContain('▏');
    const headings = stores.filter((text) => text === text.toUpperCase());
    expect(headings.length).toBeLessThan(3);
    expect(heard(moved(aModel(), '?')).join('\n')).not.toMatch(/[↑↓←→▪▫]/u);
  });

  it('a history is its sentence', () => {
    const page = heard(moved({ ...aModel(), chosen: 'item:gear-oil' }, 'enter'));
    expect(page.join('\n')).toContain(
      '20 readings since 14 Jan 2026, 1 top-up, a job on 24 Jan 2026; by the line through them 1.18 L',
    );
  });

  it('the danger of staying comes first', () => {
    const staying = { until: '2026-02-04T22:00:00Z', why: 'wind over 30 kn' };
    expect(heard(aModel({}, aDocument({ staying })))[1]).toBe(
      'Untenable from Wed 22:00, in 1 d 14 h: wind over 30 kn.',
    );
  });
});
