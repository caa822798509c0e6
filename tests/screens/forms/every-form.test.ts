import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDraft } from '../../../source/logbook/drafts.ts';
import { bindingsOn } from '../../../source/screens/bindings.ts';
import { formKeys } from '../../../source/screens/forms/form-keys.ts';
import { forms } from '../../../source/screens/forms/table.ts';
import { type Model, pageOf, type Step } from '../../../source/screens/model.ts';
import { update } from '../../../source/screens/update.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';

const IDS = {
  fluid: 'gear-oil',
  anode: 'pencil',
  spare: 'impellers',
  service: 'impeller-change',
  check: 'raw-water',
  dated: 'flares',
};

function at(id: string): Model {
  const model = aModel();
  return { ...model, pages: [...model.pages, { page: 'item', id, from: 0 }] };
}

function engine(): Model {
  const model = aModel();
  return { ...model, pages: [...model.pages, { page: 'engine', id: 'main', from: 0 }] };
}

function typed(model: Model, text: string): Model {
  return moved(model, ...[...text].map((letter) => (letter === ' ' ? 'space' : letter)));
}

const entered = (model: Model): Step => update(model, { is: 'key', key: 'enter' });

/** What the form saves when its lines are filled in from the first on. */
function saved(model: Model, ...texts: readonly string[]) {
  const filled = texts.reduce(
    (next, text, index) => typed(index === 0 ? next : moved(next, 'down'), text),
    model,
  );
  const [told, [request]] = entered(filled);
  return request?.do === 'save' ? request.drafts : seen(told);
}

describe('what can be logged', () => {
  it('of a fluid: a dip, what was poured in, a refill, a leak, work, a remark', () => {
    const fluid = at(IDS.fluid);
    expect(saved(moved(fluid, 'd'), '1/2')).toMatchObject([{ kind: 'dip', fluid: IDS.fluid, share: 0.5 }]);
    expect(saved(moved(fluid, 'd'), 'off')).toMatchObject([{ kind: 'dip', off: 'below' }]);
    expect(saved(moved(fluid, 'n'))).toMatchObject([{ kind: 'change', fluid: IDS.fluid, share: 1 }]);
    expect(saved(moved(fluid, 'e'), 'falls', '6')).toMatchObject([
      { kind: 'leak', item: IDS.fluid, class: 'falls', dropsPerMinute: 6 },
    ]);
    expect(saved(moved(fluid, 'o'), 'new seal', '1.5 h')).toMatchObject([
      { kind: 'job', item: IDS.fluid, text: 'new seal', minutes: 90 },
    ]);
    expect(saved(moved(fluid, 'm'), 'smells burnt')).toMatchObject([{ kind: 'remark', item: IDS.fluid }]);
  });

  it('of an engine: its meter, work, a remark', () => {
    expect(saved(moved(engine(), 'd'), '3412.6')).toMatchObject([
      { kind: 'hours', engine: 'main', reading: 3412.6 },
    ]);
    expect(saved(moved(engine(), 'o'), 'new impeller', '30')).toMatchObject([
      { kind: 'job', item: 'main', text: 'new impeller', minutes: 30 },
    ]);
    expect(saved(moved(engine(), 'm'), 'runs rough')).toMatchObject([{ kind: 'remark', item: 'main' }]);
  });

  it('of an anode: what is left, and a new one that comes out of the stores', () => {
    expect(saved(moved(at(IDS.anode), 'd'), '60%')).toMatchObject([
      { kind: 'anode', anode: IDS.anode, share: 0.6 },
    ]);
    expect(saved(moved(at(IDS.anode), 'n'))).toMatchObject([{ kind: 'renew', anode: IDS.anode }]);
  });

  it('of the stores: used, put aboard, counted', () => {
    expect(saved(moved(at(IDS.spare), 'u'))).toMatchObject([{ kind: 'use', spare: IDS.spare, count: 1 }]);
    expect(saved(moved(at(IDS.spare), 'a'), '2', '24,50')).toMatchObject([
      { kind: 'stow', count: 2, cost: 24.5 },
    ]);
    expect(saved(moved(at(IDS.spare), 'd'), '3')).toMatchObject([{ kind: 'count', count: 3 }]);
  });

  it('of a service what it took, of a check its answer', () => {
    expect(saved(moved(at(IDS.service), 'n'))).toMatchObject([{ kind: 'service', service: IDS.service }]);
    expect(saved(moved(at(IDS.check), 'd'), 'no')).toMatchObject([
      { kind: 'check', check: IDS.check, ok: false },
    ]);
  });

  it('of the boat: the weather, that she left or arrived, what is planned', () => {
    expect(saved(moved(aModel(), 'i'), 'f5', '24', 'NE')).toMatchObject([
      { kind: 'weather', wind: 19, gust: 24, dir: 45 },
    ]);
    expect(saved(moved(aModel(), 'A'))).toMatchObject([{ kind: 'arrived' }]);
    expect(saved(moved(aModel(), 'D'))).toMatchObject([{ kind: 'left' }]);
    expect(saved(moved(aModel(), 'w', 'S'), 'fog')).toMatchObject([
      { kind: 'decision', choice: 'stay', verdict: 'hold', score: 22.1, text: 'fog' },
    ]);
    expect(saved(moved(aModel(), 'w', 'i'), '18')).toMatchObject([{ kind: 'weather', wind: 18 }]);
  });
});

it('leaving says what the verdict is, and which looks were not made', () => {
  const text = seen(moved(aModel({ size: SIZES[2] }), 'D'))
    .join(' ')
    .replace(/\s+/gu, ' ');
  expect(text).toContain('The verdict now is hold, 22 in 100. Leaving is logged as your decision beside it.');
  expect(text).toContain('Not made yet before leaving: ');
});

describe('every form', () => {
  it('has its key, and no page has two for one key at a time', () => {
    const pages = ['board', 'item', 'engine', 'trace', 'stores', 'weather', 'log'] as const;
    const opened = pages
      .flatMap(bindingsOn)
      .flatMap(({ act }) => (typeof act === 'string' ? [] : [act.fillIn]));
    expect(new Set(opened)).toEqual(new Set(Object.keys(forms)));
  });

  it('whatever is typed in it, saves only what the log can hold, and is drawn at every size', () => {
    const opened = [
      ...Object.values(IDS).flatMap((id) =>
        formKeys.filter(({ on }) => on.includes('item')).map(({ key }) => moved(at(id), key)),
      ),
      ...formKeys.filter(({ on }) => on.includes('engine')).map(({ key }) => moved(engine(), key)),
      ...formKeys.filter(({ on }) => on.includes('board')).map(({ key }) => moved(aModel(), key)),
    ].filter((model) => pageOf(model).page === 'form');
    expect(opened.length).toBeGreaterThan(20);
    const text = fc.constantFrom(
      '',
      '1',
      '-1',
      '1e9',
      'x',
      '0',
      '1/2',
      '\u202eabc',
      'o\u0301'.repeat(40),
      'full',
      'no',
      '2027-02-30',
      '5 ft',
      '漢字'.repeat(100),
      '\u001b[2J',
    );
    fc.assert(
      fc.property(
        fc.nat(opened.length - 1),
        fc.array(text, { minLength: 1, maxLength: 7 }),
        fc.nat(3),
        (which, texts, size) => {
          const start: Model = { ...opened[which]!, size: SIZES[size]! };
          const model = texts.reduce<Model>(
            (next, put, index) => moved(index === 0 ? next : moved(next, 'tab'), { is: 'pasted', text: put }),
            start,
          );
          const [next, requests] = entered(model);
          for (const line of seen(next)) expect(line).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
          for (const request of requests)
            if (request.do === 'save')
              for (const draft of request.drafts) expect(readDraft(draft).ok).toBe(true);
        },
      ),
      { numRuns: 150 },
    );
  });
});
