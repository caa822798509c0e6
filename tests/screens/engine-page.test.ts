import { describe, expect, it } from 'vitest';
import { textOf } from '../../source/screens/lines.ts';
import { type Model, pageOf } from '../../source/screens/model.ts';
import { spokenLines } from '../../source/screens/spoken.ts';
import { aModel, moved, SIZES, seen } from '../helpers/a-model.ts';

const text = (model: Model) => seen(model).join('\n');

/** The choice moved down to the engine, and its page opened. */
function engine(size: Model['size'] = { columns: 120, rows: 60 }): Model {
  let model = moved(aModel({ size }), 'j');
  for (let steps = 0; model.chosen !== 'engine:main' && steps < 60; steps += 1) model = moved(model, 'j');
  return moved(model, 'enter');
}

describe('the page of an engine', () => {
  it('is turned to from its line on the board, at every size', () => {
    for (const size of SIZES) {
      const model = engine(size);
      expect(pageOf(model)).toEqual({ page: 'engine', id: 'main', from: 0 });
      expect(text(model)).toContain('MAIN ENGINE');
    }
  });

  it('has its hours, what falls due by them, what it can be traced by and what can be logged', () => {
    const page = text(engine());
    for (const words of [
      'hours',
      'a day lying',
      'SERVICES',
      'Raw-water impeller: 38 h overdue',
      'Overheating.',
      'log its meter',
      'ENTRIES',
    ])
      expect(page).toContain(words);
    expect(spokenLines(engine()).map(textOf)).toContain('Overheating.');
  });

  it('leads to its traces, one after the other, and back', () => {
    const hot = moved(engine(), 'f');
    expect(pageOf(hot)).toMatchObject({ page: 'trace', id: 'main', table: 'overheating' });
    expect(text(hot)).toContain('LOOK NEXT');
    const dead = moved(hot, 'tab');
    expect(pageOf(dead)).toMatchObject({ table: 'will-not-start' });
    expect(text(moved(dead, 'o'))).toContain('WORK DONE  Main engine');
    expect(pageOf(moved(dead, 'escape'))).toMatchObject({ page: 'engine', id: 'main' });
  });

  it('lists in the log what is about it alone', () => {
    expect(pageOf(moved(engine(), 'L'))).toMatchObject({ page: 'log', item: 'main' });
  });
});
