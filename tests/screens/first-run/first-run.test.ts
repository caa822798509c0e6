import { describe, expect, it } from 'vitest';
import { textOf } from '../../../source/screens/lines.ts';
import { type Model, modelWithoutBoat, pageOf } from '../../../source/screens/model.ts';
import { spokenLines } from '../../../source/screens/spoken.ts';
import { update } from '../../../source/screens/update.ts';
import { widthOf } from '../../../source/screens/width.ts';
import { bad, good } from '../../../source/trouble.ts';
import { AT } from '../../helpers/a-document.ts';
import { moved, SIZES, seen } from '../../helpers/a-model.ts';
import { BAD_INPUT } from '../../helpers/bad-input.ts';

function begun(size: { columns: number; rows: number } = SIZES[1]): Model {
  const given = {
    now: Date.parse(AT),
    zone: 'UTC',
    by: null,
    size,
    palette: 'day',
    copy: null,
    colour: true,
  } as const;
  return modelWithoutBoat([])(given)[0];
}

/** Typed as it comes from a keyboard. */
function typed(model: Model, keys: string): Model {
  return moved(model, ...[...keys].map((key) => (key === '\r' ? 'enter' : key === ' ' ? 'space' : key)));
}

const pageText = (model: Model) => seen(model).join('\n');
const at = (model: Model) => {
  const page = pageOf(model);
  return page.page === 'first run' ? page.at : -1;
};

describe('the first run', () => {
  it.each(SIZES)(
    'shows the question, what stands there and where it comes from at $columns x $rows',
    (size) => {
      const lines = seen(typed(begun(size), '\rWhimbrel\r'));
      expect(lines).toHaveLength(size.rows);
      for (const line of lines) expect(widthOf(line)).toBe(size.columns);
      expect(lines.join('\n')).toMatch(/> How many are aboard.*\n +▏ 2, common practice/u);
    },
  );

  it('asks spreads as the usual and a bad day', () => {
    const page = pageText({ ...passageModel(), size: SIZES[3] });
    expect(page).toContain('Speed made good: usual?');
    expect(page).toContain('Speed made good: on a bad day?');
  });

  it('says what is wrong as it is typed, and stays until it is put right or emptied', () => {
    const wrong = typed(begun(), '\rWhimbrel\rtwo');
    expect(pageText(wrong)).toContain(
      '"two" is not understood here. It takes a whole number of people, 1 to',
    );
    for (const key of ['enter', 'down', 'up', 'page down']) expect(at(moved(wrong, key))).toBe(2);
    expect(at(moved(wrong, 'ctrl u', 'enter'))).toBe(3);
  });

  it('says what an answer is taken as before it is taken', () => {
    const page = pageText(typed(begun(), '\rWhimbrel\r\r\r3,412.6'));
    expect(page).toContain('taken as: Main engine: meter at 3412.6 h');
  });

  it('goes back and forth, and an answer emptied is as it was before', () => {
    const there = typed(begun(), '\rWhimbrel\r5\r');
    const back = moved(there, 'up');
    expect(pageText(back)).toMatch(/> How many are aboard *\n +5▏/u);
    expect(pageText(moved(back, 'ctrl u', 'enter'))).toMatch(/How many are aboard +2, common practice/u);
  });

  it('goes to what is still wanted when her folder is to be made', () => {
    const there = moved(begun(), 'page down', 'enter');
    expect(at(there)).toBe(1);
    expect(pageText(there)).toContain('An answer to "Her name" is wanting');
  });

  it('makes her folder by her name, and opens the board on it once it is made', () => {
    const asked = moved(typed(begun(), '\rTwo Terns!\r'), 'page down');
    const [making, requests] = update(asked, { is: 'key', key: 'enter' });
    expect(requests).toMatchObject([
      { do: 'begin', folder: '~/two-terns', boat: { answers: { name: 'Two Terns!' } } },
    ]);
    const [opening, next] = update(making, { is: 'begun', what: 'saved', result: good(null) });
    expect(opening).toMatchObject({ pages: [{ page: 'board' }], notice: 'saved' });
    expect(next).toEqual([{ do: 'load' }]);
  });

  it('keeps what was typed where her folder cannot be made, and says why', () => {
    const [making] = update(moved(typed(begun(), '\rTern\r'), 'page down'), { is: 'key', key: 'enter' });
    const trouble = bad({ kind: 'cannot make', folder: '~/tern', code: 'ENOSPC' });
    const [still] = update(making, { is: 'begun', what: 'saved', result: trouble });
    expect(pageText(still)).toContain('disk is full');
    expect(pageText(moved(still, 'page up', 'down'))).toContain('Tern');
  });

  it('opens the sample boat instead, and leaves at the second Esc only', () => {
    expect(update(begun(), { is: 'key', key: 'ctrl o' })[1]).toEqual([{ do: 'open sample' }]);
    const [once, none] = update(begun(), { is: 'key', key: 'escape' });
    expect([none, once.notice]).toEqual([[], 'Esc again leaves; nothing is written']);
    expect(update(once, { is: 'key', key: 'escape' })[1]).toEqual([{ do: 'quit' }]);
  });

  it('is a sentence a question for a screen reader', () => {
    const said = spokenLines(typed(begun(), '\rWhimbrel\r')).map(textOf);
    expect(said).toContain('Question 3 of 29: How many are aboard. Enter takes: 2, common practice.');
    expect(said.length).toBeLessThan(5);
  });

  it.each(BAD_INPUT)('no field breaks under %s', (_, text) => {
    let model = passageModel();
    for (let row = 0; row < 40; row += 1) {
      const filled = moved(model, 'ctrl u', { is: 'pasted', text });
      for (const next of [filled, moved(filled, 'enter')]) {
        for (const line of seen(next)) expect(widthOf(line)).toBe(80);
      }
      model = moved(model, 'down');
    }
  });
});

function passageModel(): Model {
  let model = typed(begun(SIZES[3]), '\rWhimbrel\r');
  while (!pageText(model).includes('> A passage she is')) model = moved(model, 'down');
  model = typed(model, '41.2 -30.4\r41.9 -29.5\r');
  return moved({ ...model, size: SIZES[1] }, 'page up');
}
