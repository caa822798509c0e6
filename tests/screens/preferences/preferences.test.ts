import { describe, expect, it } from 'vitest';
import { type Model, pageOf } from '../../../source/screens/model.ts';
import { update } from '../../../source/screens/update.ts';
import { widthOf } from '../../../source/screens/width.ts';
import { preferenceFields } from '../../../source/words/preference-fields.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';
import { BAD_INPUT } from '../../helpers/bad-input.ts';

const pageText = (model: Model) => seen(model).join('\n');
const rowOf = (field: string) => preferenceFields.findIndex((one) => one.field === field);
const atRow = (model: Model, field: string) => moved(model, ',', ...Array(rowOf(field)).fill('down'));

describe('the preferences page', () => {
  it.each(SIZES)('fits at $columns x $rows, and says every preference it has room for', (size) => {
    const lines = seen(moved(aModel({ size }), ','));
    for (const line of lines) expect(widthOf(line)).toBe(size.columns);
    expect(lines.join('\n')).toMatch(/> oil, fuel and water *:? *litres/u);
  });

  it('saves a choice at once, and has everything worded anew', () => {
    const [next, requests] = update(moved(aModel(), ','), { is: 'key', key: 'right' });
    expect(requests).toEqual([{ do: 'keep preferences', change: { volume: 'US' } }, { do: 'load' }]);
    expect(next).toMatchObject({ kept: { volume: 'US' }, notice: 'saved in your preferences' });
    expect(update(moved(aModel(), ','), { is: 'key', key: 'left' })[1][0]).toMatchObject({
      change: { volume: 'imperial' },
    });
  });

  it('takes a zone by its name and no other, and an empty one for that of the laptop', () => {
    const typed = moved(atRow(aModel(), 'zone'), ...'Asia/Tokyo');
    const [next, requests] = update(typed, { is: 'key', key: 'enter' });
    expect(requests[0]).toEqual({ do: 'keep preferences', change: { zone: 'Asia/Tokyo' } });
    expect(next.zone).toBe('Asia/Tokyo');
    const wrong = moved(atRow(aModel(), 'zone'), ...'Moon/Far', 'enter');
    expect(pageText(wrong)).toContain('"Moon/Far" is not understood here. It takes the name of a time zone.');
    expect(moved(next, 'up', 'ctrl u', 'enter').zone).toBe('UTC');
  });

  it('goes by the name that is typed for the entries that follow, and q is a letter in it', () => {
    const [next] = update(moved(atRow(aModel(), 'name'), ...'Jacqui'), { is: 'key', key: 'escape' });
    expect(next).toMatchObject({ by: 'Jacqui', kept: { name: 'Jacqui' } });
    expect(pageOf(next).page).toBe('board');
  });

  it('follows the palette changed by its own key', () => {
    expect(pageText(atRow(moved(aModel(), 'p'), 'palette'))).toMatch(/> colours +night/u);
  });

  it.each(BAD_INPUT)('no field breaks under %s', (_, text) => {
    let model = moved(aModel(), ',');
    for (const _row of preferenceFields) {
      model = moved(model, { is: 'pasted', text });
      for (const line of seen(model)) expect(widthOf(line)).toBe(80);
      model = moved(model, 'enter', 'ctrl u', 'down');
    }
  });
});
