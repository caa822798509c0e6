import { describe, expect, it } from 'vitest';
import { type Model, pageOf, type Step } from '../../../source/screens/model.ts';
import { update } from '../../../source/screens/update.ts';
import { bad, good } from '../../../source/trouble.ts';
import { aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aModel, moved, seen } from '../../helpers/a-model.ts';

/** The page of the item, from the board. */
function at(id: string, model = aModel()): Model {
  return { ...model, pages: [...model.pages, { page: 'item', id, from: 0 }] };
}

function typed(model: Model, text: string): Model {
  return moved(model, ...[...text].map((letter) => (letter === ' ' ? 'space' : letter)));
}

/** What Enter asks the world to do. */
function entered(model: Model): Step {
  return update(model, { is: 'key', key: 'enter' });
}

const text = (model: Model) => seen(model).join('\n');

describe('a form', () => {
  it('says what the log will say, and saves it', () => {
    const model = typed(moved(at('gear-oil'), 't'), '300 ml');
    expect(text(model)).toContain('Enter logs: Gear oil: 0.3 L poured in');
    const [saving, requests] = entered(model);
    expect(requests).toMatchObject([
      { do: 'save', drafts: [{ kind: 'topup', fluid: 'gear-oil', amount: 0.3 }] },
    ]);
    expect(text(saving)).toContain('saving');
  });

  it('closes when it is saved, says so, and reads the log again', () => {
    const [saving, [request]] = entered(typed(moved(at('gear-oil'), 't'), '0.3'));
    if (request?.do !== 'save') throw new Error('nothing was saved');
    const [model, requests] = update(saving, { is: 'saved', drafts: request.drafts, result: good([]) });
    expect(pageOf(model).page).toBe('item');
    expect(model.notice).toContain('saved: Gear oil: 0.3 L poured in');
    expect(requests[0]).toEqual({ do: 'load' });
  });

  it('keeps what was typed where it cannot be saved, and says why', () => {
    const [saving, [request]] = entered(typed(moved(at('gear-oil'), 't'), '0.3'));
    if (request?.do !== 'save') throw new Error('nothing was saved');
    const result = bad({ kind: 'not saved', code: 'ENOSPC', text: '{}' });
    const [model] = update(saving, { is: 'saved', drafts: request.drafts, result });
    expect(text(model)).toContain('NOT SAVED');
    expect(text(model)).toContain('0.3');
    expect(entered(model)[1]).toMatchObject([{ do: 'save' }]);
  });

  it('asks for what must be filled in', () => {
    const [model, requests] = entered(moved(at('gear-oil'), 't', 'down'));
    expect(requests).toEqual([]);
    expect(model.notice).toBe('poured in?');
    expect(pageOf(model)).toMatchObject({ at: 0 });
  });

  it('says what is not understood, at its line, and keeps it', () => {
    const [model, requests] = entered(
      typed(moved(typed(moved(at('gear-oil'), 't'), '0.3'), 'up'), 'teatime'),
    );
    expect(requests).toEqual([]);
    expect(text(model)).toContain('"teatime" is not understood');
    expect(pageOf(model)).toMatchObject({ at: 3 });
  });

  it('asks once about what is in doubt; Enter again saves it', () => {
    const [doubted, none] = entered(
      typed(moved(typed(moved(at('gear-oil'), 't'), '0.1'), 'down', 'down'), '900'),
    );
    expect(none).toEqual([]);
    expect(text(doubted)).toContain('Enter again saves it');
    expect(entered(doubted)[1]).toMatchObject([{ do: 'save' }]);
    expect(entered(moved(doubted, 'backspace', '0'))[1]).toEqual([]);
  });

  it('letters are no keys in it; an empty line lets ? through; Escape leaves', () => {
    const model = moved(at('gear-oil'), 't');
    expect(pageOf(moved(model, 'q')).page).toBe('form');
    expect(pageOf(moved(model, '?')).page).toBe('keys');
    expect(pageOf(moved(model, 'escape')).page).toBe('item');
  });

  it('a paste goes into the line', () => {
    const model = moved(at('gear-oil'), 't', { is: 'pasted', text: '0.3\n' });
    expect(text(model)).toContain('Enter logs: Gear oil: 0.3 L');
  });

  it('is not opened where nothing can be saved, and says so before anything is typed', () => {
    const readOnly = { kind: 'cannot read', file: 'log', code: 'EROFS' } as const;
    const model = moved(at('gear-oil', aModel({}, aDocument(), aLoaded({ readOnly }))), 't');
    expect(pageOf(model).page).toBe('item');
    expect(model.notice).toContain('nothing can be saved');
  });

  it('is not opened about what it is not for', () => {
    expect(pageOf(moved(at('pencil'), 't')).page).toBe('item');
  });
});
