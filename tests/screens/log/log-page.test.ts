import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../source/logbook/entries.ts';
import { textOf } from '../../../source/screens/lines.ts';
import { wordFrom } from '../../../source/screens/log/rows.ts';
import { type Model, pageOf, type Step } from '../../../source/screens/model.ts';
import { spokenLines } from '../../../source/screens/spoken.ts';
import { update } from '../../../source/screens/update.ts';
import { AT, aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';
import { anEntry } from '../../helpers/an-entry.ts';

const DAY_MS = 86_400_000;
const ago = (days: number) => Date.parse(AT) - days * DAY_MS;

const wrong = anEntry('dip', { fluid: 'gear-oil', level: 0.9 }, ago(3));
const strike = anEntry('strike', { entry: wrong.id, why: 'the wrong stick' }, ago(2));
const foreign = anEntry('dip', { fluid: 'hydraulics', level: 0.9 }, ago(4));
const damaged = {
  kind: 'line damaged',
  place: { file: 'log/k7m2q9xd.ndjson', line: 12 },
  how: 'checksum',
  text: '{"kind":"dip"',
} as const;

function opened(more: Partial<Parameters<typeof aLoaded>[0]> = {}, size = { columns: 120, rows: 36 }): Model {
  const entries: Entry[] = [...aLoaded().entries, foreign, strike].sort((a, b) => (a.at < b.at ? -1 : 1));
  const loaded = aLoaded({ entries, struck: [wrong], troubles: [damaged], ...more });
  return moved(aModel({ size }, aDocument(), loaded), 'L');
}

const text = (model: Model) => seen(model).join('\n');
const chosen = (model: Model) => seen(model).find((line) => line.startsWith('> ')) ?? '';

/** The log with the choice on the first line that reads so. */
function on(words: string, model = opened()): Model {
  let next = model;
  for (let step = 0; step < 100 && !chosen(next).includes(words); step += 1) next = moved(next, 'down');
  expect(chosen(next)).toContain(words);
  return next;
}

describe('the log', () => {
  it('is newest first, and one step of the choice is one entry, in sight at every size', () => {
    for (const size of SIZES) {
      let model = opened({}, size);
      const total = Number(/1 of (\d+)/u.exec(text(model))?.[1]);
      expect(total).toBeGreaterThan(60);
      for (let step = 1; step <= 30; step += 1) {
        expect(text(model)).toContain(`${step} of ${total}`);
        expect(seen(model).filter((line) => line.startsWith('> '))).toHaveLength(1);
        expect(seen(model)).toHaveLength(size.rows);
        model = moved(model, 'down');
      }
      expect(text(moved(model, 'G'))).toContain(`${total} of ${total}`);
      expect(text(moved(model, 'G', 'g'))).toContain(`1 of ${total}`);
    }
  });

  it('an entry is struck with a reason, in four keys and the reason', () => {
    const model = moved(on('new shaft seal'), 'x', ...'twice');
    expect(text(model)).toContain('new shaft seal');
    const [, [request]] = update(model, { is: 'key', key: 'enter' });
    const job = aLoaded().entries.find(({ kind }) => kind === 'job')!;
    expect(request).toMatchObject({ do: 'save', drafts: [{ kind: 'strike', why: 'twice' }] });
    expect(JSON.stringify(request)).not.toContain(job.text);
  });

  it('a struck one stays, with who and why, and is restored by striking the strike', () => {
    const model = on('STRUCK: ');
    expect(text(model)).toContain('because the wrong stick');
    expect(pageOf(moved(model, 'x')).page).toBe('log');
    const [, [request]] = update(moved(model, 'r'), { is: 'key', key: 'enter' });
    expect(request).toMatchObject({ do: 'save', drafts: [{ kind: 'strike', entry: strike.id }] });
  });

  it('one struck on two laptops is restored by striking both', () => {
    const again = anEntry('strike', { entry: wrong.id }, ago(1));
    const model = on('STRUCK: ', opened({ entries: [...aLoaded().entries, strike, again] }));
    const [, [request]] = update(moved(model, 'r'), { is: 'key', key: 'enter' });
    expect(request).toMatchObject({ do: 'save', drafts: [{ entry: strike.id }, { entry: again.id }] });
  });

  it('a strike is told by what it struck', () => {
    expect(chosen(on('Struck: Gear oil: 0.9 L'))).toContain('the wrong stick');
  });

  it('a damaged line is told with its file and line, and an entry the boat cannot place with why', () => {
    expect(text(opened())).toContain('1 thing wrong with the files of the log');
    const model = moved(opened(), 'd');
    expect(text(model)).toContain('log/k7m2q9xd.ndjson, line 12');
    expect(text(moved(model, 'down'))).toContain('hydraulics');
    expect(text(moved(model, 'down'))).toContain('no such item');
    expect(pageOf(moved(model, 'x')).page).toBe('log');
  });

  it('is searched by words as they are typed; what was typed holds until Escape', () => {
    const model = moved(opened(), '/', ...'shaft');
    expect(text(model)).toContain('1 of 1');
    expect(text(moved(model, 'enter'))).toContain('search shaft');
    expect(text(moved(model, 'enter', 'escape'))).toMatch(/1 of \d\d/u);
    expect(text(moved(opened(), '/', 'q', 'q', 'q'))).toContain('Nothing in the log is so.');
  });

  it('lists only the kind or the item of the entry chosen, and all again', () => {
    const kind = moved(on('new shaft seal'), 'f');
    expect(text(kind)).toContain('only job');
    expect(text(kind)).toContain('1 of 1');
    expect(text(moved(kind, 'f'))).not.toContain('only');
    const item = moved(on('Raw-water impellers: 1 used'), 'i');
    expect(text(item)).toContain('1 of 2');
    expect(pageOf(moved(item, 'enter', 'enter'))).toMatchObject({ page: 'item', id: 'impellers' });
  });

  it('from an item it is what names it', () => {
    const board = aModel({ size: { columns: 120, rows: 36 } });
    const page: Model = { ...board, pages: [...board.pages, { page: 'item', id: 'impellers', from: 0 }] };
    expect(text(moved(page, 'L'))).toContain('only Raw-water impellers');
  });

  it('says before anything is typed that nothing can be saved, and strikes nothing', () => {
    const model = opened({ readOnly: { kind: 'read only', folder: 'boat', code: 'EROFS' } });
    expect(text(model)).toContain('Looking only');
    expect(pageOf(moved(model, 'down', 'down', 'x')).page).toBe('log');
  });

  it('a screen reader hears the one chosen', () => {
    const heard = spokenLines(on('new shaft seal')).map(textOf).join('\n');
    expect(heard.match(/Chosen:/gu)).toHaveLength(1);
  });

  it('with forty thousand entries a key is answered without words made of more than is seen', () => {
    const entries = Array.from({ length: 40_000 }, (_, index) =>
      anEntry('remark', { text: `knot${index}` }, ago(4000) + index * 60_000),
    );
    const model = moved(opened({ entries, struck: [], troubles: [] }), 'down');
    const begun = performance.now();
    let next = model;
    for (let step = 0; step < 20; step += 1) {
      next = moved(next, 'page down');
      seen(next);
    }
    // A key held down repeats some thirty times a second; a busy machine is given ten times that.
    expect((performance.now() - begun) / 20).toBeLessThan(330);
    expect(text(moved(next, 'G'))).toContain('40000 of 40000');
    expect(text(moved(next, '/', ...'knot39999'))).toContain('1 of 1');
  });

  it('a long log is searched a part after the other, and says so until all of it is; then what is found is all there is', () => {
    const entries = Array.from({ length: 4000 }, (_, index) =>
      anEntry('remark', { text: index % 7 === 0 ? 'knot splice' : 'knot' }, ago(4000) + index * 60_000),
    );
    const board = aModel({ size: { columns: 120, rows: 36 } }, aDocument(), aLoaded({ entries, struck: [] }));
    const [turned, asked] = update(board, { is: 'key', key: 'L' });
    const typed = moved(turned, '/', ...'spl');
    expect(text(typed)).toContain(' so far, looking');
    let [model, requests]: Step = [moved(typed, 'i'), asked];
    let parts = 0;
    while (requests[0]?.do === 'word') {
      const { loaded, from } = requests[0];
      [model, requests] = update(model, { is: 'worded', of: loaded, upTo: wordFrom(loaded, from) });
      parts += 1;
    }
    expect(parts).toBeGreaterThan(1);
    expect(text(model)).toContain(`1 of ${Math.ceil(4000 / 7)} `);
    expect(text(moved(model, 'c', 'e', 'backspace'))).toContain(`1 of ${Math.ceil(4000 / 7)} `);
    expect(text(moved(model, 'ctrl u', ...'knot'))).toContain('1 of 4000 ');
  });

  it('begins to word anew when the folder is read again', () => {
    const entries = Array.from({ length: 4000 }, (_, index) =>
      anEntry('remark', { text: 'knot' }, ago(3) + index),
    );
    const again = aLoaded({ entries, struck: [] });
    const model = moved(aModel({}, aDocument(), aLoaded({ entries, struck: [] })), 'L');
    const [, requests] = update(model, { is: 'loaded', result: { ok: true, value: again } });
    expect(requests).toContainEqual({ do: 'word', loaded: again, from: 0 });
  });

  it('what happened after the moment asked for is not listed, and is said to be', () => {
    const model = opened({ seenUntil: ago(3) });
    expect(text(model)).toMatch(/\d+ entr(?:y|ies) later than the moment looked at (?:is|are) not listed\./u);
    const all = Number(/1 of (\d+)/u.exec(text(opened()))?.[1]);
    const later = Number(/(\d+) entr/u.exec(text(model))?.[1]);
    expect(text(model)).toContain(`1 of ${all - later} `);
    expect(text(opened())).not.toContain('later than');
  });

  it('whatever an entry says, the page keeps its shape', () => {
    const entries = [anEntry('remark', { text: '\u001b[2J\u202eabc\n'.repeat(50) }, ago(1))];
    for (const size of SIZES) {
      for (const line of seen(opened({ entries, struck: [] }, size)))
        expect(line).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
    }
  });
});

describe('an entry', () => {
  const whole = (model: Model) => text(moved({ ...model, size: { columns: 120, rows: 60 } }, 'enter'));

  it('shows every field as it was recorded, who wrote it, when it was typed and its place in the log', () => {
    const late = anEntry(
      'topup',
      { fluid: 'gear-oil', amount: 0.3, share: 1, rec: '2026-02-03T07:31:12.000Z', by: 'Nell', heeled: true },
      ago(0.1),
    );
    const said = whole(opened({ entries: [...aLoaded().entries, late] }));
    expect(said).toContain(`ENTRY  ${late.id}`);
    expect(said).toMatch(/typed +Tue 3 Feb 2026 07:31/u);
    expect(said).toMatch(/by +Nell/u);
    expect(said).toMatch(new RegExp(`written by +writer12, its line ${late.n}`, 'u'));
    for (const field of ['fluid', 'amount', 'share', 'heeled']) expect(said).toContain(field);
    expect(said).toMatch(/amount +0\.3\b/u);
    expect(said).toMatch(/fluid +gear-oil \(Gear oil\)/u);
    expect(said).toMatch(/rec +2026-02-03T07:31:12\.000Z/u);
  });

  it('says who struck it and why, and who restored it', () => {
    expect(whole(on('STRUCK: '))).toMatch(/STRUCK AND RESTORED\s+Struck .*, because the wrong stick\./u);
    const back = anEntry('strike', { entry: strike.id, why: 'it was right', by: 'Josef' }, ago(1));
    const entries = [...aLoaded().entries, wrong, back];
    const restored = whole(on('    Gear oil: 0.9 L', opened({ entries, struck: [strike] })));
    expect(restored).toMatch(
      /Struck .*, because the wrong stick\.\s+Restored .* by Josef, because it was right\./u,
    );
  });

  it('says what is wrong with it, and of a damaged line all there is', () => {
    expect(whole(on('Hydraulics'))).toMatch(/WRONG WITH IT\s+.*no such item/u);
    expect(whole(moved(opened(), 'd'))).toContain('line 12');
  });

  it('is struck and restored from there, and its item is a key away', () => {
    const model = moved(on('new shaft seal'), 'enter');
    expect(pageOf(moved(model, 'x')).page).toBe('form');
    expect(pageOf(moved(model, 'enter')).page).toBe('item');
    expect(pageOf(moved(model, 'escape')).page).toBe('log');
  });
});
