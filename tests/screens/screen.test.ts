import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boardPlaces } from '../../source/screens/board.ts';
import { pageOf } from '../../source/screens/model.ts';
import { widthOf } from '../../source/screens/width.ts';
import { amountWords } from '../../source/words/say.ts';
import { AT, aDocument, aFluid, aLoaded } from '../helpers/a-document.ts';
import { aFirstModel, aModel, moved, SIZES, seen } from '../helpers/a-model.ts';

const titleOf = ({ columns, rows }: { columns: number; rows: number }) => `${columns}x${rows}`;
const rectangular = (lines: readonly string[], { columns, rows }: { columns: number; rows: number }) => {
  expect(lines).toHaveLength(rows);
  for (const line of lines) expect(widthOf(line), JSON.stringify(line)).toBe(columns);
};

describe.each(SIZES.map((size) => [titleOf(size), size] as const))('the board at %s', (_, size) => {
  const model = aModel({ size });
  const page = seen(model);
  const text = page.join('\n');

  it('fills the window and nothing more', () => {
    rectangular(page, size);
  });

  it('says the verdict alone on its line, and why', () => {
    expect(page[2]!.trim().split(/\s{2,}/u)[0]).toBe('HOLD');
    expect(text).toContain('She is fit, the weather is not yet');
  });

  it('says when it may open', () => {
    expect(text).toContain('Opens in 1 d 22 h, Thu 06:00');
  });

  it('leads to every item by moving alone, each in sight when it is chosen', () => {
    const reached = new Set<string>();
    let next = moved(model, 'g', 'j');
    for (let step = 0; step < 200 && next.chosen !== null; step += 1) {
      expect(
        seen(next).some((line) => line.startsWith('>') || line.includes(' > ')),
        next.chosen,
      ).toBe(true);
      const opened = moved(next, 'enter');
      const there = pageOf(opened);
      if (there.page === 'item') reached.add(there.id);
      if (next.chosen.startsWith('fold:') && !next.unfolded.has(next.chosen.slice(5))) next = opened;
      const further = moved(next, 'j');
      if (further.chosen === next.chosen) break;
      next = further;
    }
    expect([...reached].sort()).toEqual(
      aDocument()
        .items.map(({ id }) => id)
        .sort(),
    );
  });

  it('has the same words before the first reckoning, its chances working', () => {
    const loaded = aLoaded();
    const before = moved(aFirstModel({ size }), { is: 'loaded', result: { ok: true, value: loaded } });
    const lines = seen(before);
    rectangular(lines, size);
    expect(lines.join('\n')).toContain('WORKING');
    expect(lines.join('\n')).toContain('SANDPIPER');
  });

  it('is a page before anything is read, too', () => {
    rectangular(seen(aFirstModel({ size })), size);
  });

  it.each(['enter', '?', '!', 'w'])('the page behind %s fills the window as well', (key) => {
    rectangular(seen(moved(model, key)), size);
  });

  it('every item has a page that fills the window, its chart and its sentence', () => {
    for (const { id } of aDocument().items) {
      const turned = moved({ ...model, pages: [{ page: 'board' }, { page: 'item', id, from: 0 }] });
      rectangular(seen(turned), size);
    }
    const gear = seen({ ...model, pages: [{ page: 'board' }, { page: 'item', id: 'gear-oil', from: 0 }] });
    expect(gear.join(' ').replace(/\s+/gu, ' ')).toMatch(/\d\d readings since \d\d Jan 2026/u);
  });
});

it.each(SIZES.slice(0, 2))('hides no line without saying how many, at %o', (size) => {
  const model = aModel({ size });
  const body = seen(model).slice(2, -2);
  const hidden = body
    .map((line) => Number(/[↑↓] (\d+) more lines/u.exec(line)?.[1]))
    .filter((count) => count > 0);
  expect(hidden).toHaveLength(1);
  expect(body.length - 1 + hidden[0]!).toBe(boardPlaces(model).length);
});

describe('what the board says', () => {
  const wide = aModel({ size: { columns: 200, rows: 60 } });
  const page = seen(wide);
  const rowOf = (name: string) =>
    page.find((line) => ['·', '~', '!', '?'].some((mark) => line.includes(`${mark} ${name} `)))!;

  it('every fluid stands with the level and the time of the document', () => {
    for (const item of aDocument().items) {
      if (item.kind !== 'fluid') continue;
      expect(rowOf(item.name).replace(/\s+/gu, ' ')).toContain(amountWords(item.now!.value, 'L'));
    }
    expect(rowOf('Gear oil')).toContain('Sun 04:00');
    expect(rowOf('Coolant')).toContain('beyond');
  });

  it('every state is a mark and a word', () => {
    expect(rowOf('Coolant')).toMatch(/· Coolant .*fit/u);
    expect(rowOf('Gear oil')).toMatch(/~ Gear oil/u);
    expect(page.join('\n')).toContain('watch: goes at another rate');
    expect(rowOf('Raw-water impeller')).toMatch(/! Raw-water impeller/u);
    expect(page.join('\n')).toContain('unfit: 38 h overdue');
    expect(page.join('\n')).toMatch(/\? Fire blanket/u);
    expect(page.join('\n')).toContain('not looked at for 40 days');
  });

  it('a fit row has no second line', () => {
    const at = page.findIndex((line) => line.includes('· Coolant'));
    expect(page[at + 1]).toMatch(/· Fuel/u);
  });

  it('figures stand under one another on the decimal point', () => {
    const points = ['Gear oil', 'Coolant', 'Fuel', 'Fresh water'].map((name) => {
      const [, before = '', whole = ''] = /^(.*?) (\d+)[\d. ]* L {2}/u.exec(rowOf(name))!;
      return before.length + whole.length;
    });
    expect(new Set(points).size).toBe(1);
  });

  it('fit rows fold into one line at 80 columns', () => {
    const narrow = seen({ ...aModel(), chosen: 'fold:fluids:fit' }).join('\n');
    expect(narrow).toContain('3 more fluids fit');
  });

  it('what was never entered shares a line, what is looked at before leaving as well', () => {
    expect(page.join('\n')).toContain('1 not entered yet');
    expect(page.join('\n')).toContain('2 looks before leaving, 1 made');
  });

  it('the danger of staying comes before the verdict', () => {
    const staying = { until: '2026-02-04T22:00:00Z', why: 'wind over 30 kn' };
    const lines = seen(aModel({ size: SIZES[2] }, aDocument({ staying })));
    expect(lines[2]).toContain('STAYING: Untenable from Wed 22:00, in 1 d 14 h: wind over 30 kn.');
    expect(lines[3]).toContain(' HOLD ');
  });

  it('where she can leave before, how long she may lie there stands with how long she can wait', () => {
    const staying = { until: '2026-02-06T20:00:00Z', why: 'wind over 30 kn' };
    const text = seen(aModel({ size: SIZES[2] }, aDocument({ staying }))).join('\n');
    expect(text).not.toContain('STAYING');
    expect(text).toContain('then Fresh water runs short; this anchorage until Fri 20:00');
  });

  it('under way it says how much of the passage is left, and counts down to nothing', () => {
    const passage = { ...aDocument().passage!, toGo: { nm: 15.2, hours: 2.6 } };
    const curve = aDocument().curve.slice(0, 1);
    const text = seen(aModel({ size: SIZES[2] }, aDocument({ passage, curve, windows: [] }))).join('\n');
    expect(text).toContain('UNDER WAY for Heron Bight to Otter Cay, 60 nm, 15 nm to go, about 3 h');
    expect(text).not.toMatch(/LEAVING for|No window/u);
  });

  it('every passage to safety stands under the danger of staying, with its own verdict', () => {
    const staying = { until: AT, why: 'wind over 30 kn' };
    const shelter = [
      { passage: 'creek', name: 'Heron Bight to Mallow Creek', verdict: 'go' as const, score: 91.7 },
      { passage: 'cove', name: 'Heron Bight to Tern Cove', verdict: 'not ready' as const, score: null },
    ];
    for (const size of SIZES) {
      const lines = seen(aModel({ size }, aDocument({ staying, shelter })));
      const before = lines.slice(
        2,
        lines.findIndex((line) => line.includes(' HOLD ')),
      );
      const told = before.map((line) => line.trim()).join(' ');
      expect(told).toBe(
        'STAYING: Untenable now: wind over 30 kn. Shelter: Heron Bight to Mallow Creek: go, 91 in 100. Shelter: Heron Bight to Tern Cove: not ready.',
      );
    }
  });

  it('the reasons leave to the countdown what it says', () => {
    const reasons = ['Leaving now ends well in 22 in 100 passages.', 'It opens in 1 d 22 h.'];
    const document = aDocument({ reasons, reasonKinds: ['under the score', 'waits for window'] });
    const text = seen(aModel({ size: SIZES[2] }, document)).join('\n');
    expect(text).toContain('Leaving now ends well');
    expect(text).not.toContain('It opens');
    expect(text).toContain('Opens in 1 d 22 h');
  });

  it('the age of the forecast has its mark, and says NEW when it came while the board was open', () => {
    const aged = (age: 'fresh' | 'old' | 'too old', ageHours: number) =>
      aDocument({ forecast: { ...aDocument().forecast!, issuedAt: AT, ageHours, age } });
    const size = SIZES[2];
    expect(seen(aModel({ size }, aged('fresh', 11.4)))[0]).toMatch(/ {3}forecast 11 h old/u);
    expect(seen(aModel({ size }, aged('old', 13)))[0]).toMatch(/ {3}~ forecast 13 h old/u);
    const loaded = aLoaded();
    const model = moved(
      aModel({ size }, aged('old', 23), loaded),
      { is: 'loaded', result: { ok: true, value: loaded } },
      { is: 'judged', of: loaded, document: aged('too old', 25) },
    );
    expect(seen(model)[0]).toMatch(/! NEW forecast 1 d 1 h old/u);
    expect(seen(moved(model, 'enter', 'escape'))[0]).toMatch(/! forecast 1 d 1 h old/u);
  });

  it('before the passages are sailed it says nothing of the weather', () => {
    const loaded = aLoaded();
    for (const size of SIZES) {
      const model = moved(aFirstModel({ size }), { is: 'loaded', result: { ok: true, value: loaded } });
      const text = seen(model).join('\n');
      expect(text).toContain('WORKING');
      expect(text).not.toMatch(/no forecast|forecast \d|pens in|no window|go from|STAYING|nothing more/iu);
    }
  });

  it('work to do is listed with what it takes and what it brings', () => {
    const toGetReady = [
      {
        do: 'top up',
        item: 'gear-oil',
        takes: [{ spare: 'gear-oil-can', count: 0.12 }],
        minutes: 10,
        boatScoreAfter: 97,
        buys: null,
      },
      { do: 'look', item: 'fire-blanket', takes: [], minutes: 1, boatScoreAfter: 98, buys: null },
      { do: 'buy', item: 'gear-oil-can', takes: [], minutes: 60, boatScoreAfter: 99, buys: 1.3 },
    ];
    const document = aDocument({ verdict: 'not ready', toGetReady });
    expect(seen(aModel({ size: SIZES[2] }, document)).join('\n')).toMatch(
      /TO GET READY +top up Gear oil +takes 0\.12 L Gear oil in cans +10 min, then the boat 97 in 100/u,
    );
    expect(seen(aModel({ size: SIZES[2] }, document)).join('\n')).toMatch(
      / look at Fire blanket in its place +1 min, if found well the boat 98 in 100/u,
    );
    expect(seen(aModel({ size: SIZES[2] }, document)).join('\n')).toMatch(
      / buy 1\.3 L Gear oil in cans +1 h, then the boat 99 in 100/u,
    );
    const small = seen(aModel({ size: SIZES[0] }, document))
      .join(' ')
      .replace(/\s+/gu, ' ');
    expect(small).toContain('NOT READY');
    expect(small).toContain('first: top up Gear oil, 10 min, and 2 more');
  });

  it('without a forecast it says so and draws the boat alone', () => {
    const curve = aDocument().curve.map((point) => ({ ...point, score: null, weather: null }));
    const score = { now: null, boat: 97.3, weather: null, error: 0.2 };
    const lines = seen(aModel({ size: SIZES[2] }, aDocument({ forecast: null, windows: [], curve, score })));
    expect(lines[0]).toContain('no forecast');
    expect(lines.join('\n')).toContain('weather not judged');
    expect(lines.join('\n')).toContain('No forecast: no window can be told.');
    expect(lines.join('\n')).toContain('fit from 95');
  });

  it('trouble with the files has a line that leads to the page about it', () => {
    const troubles = [{ kind: 'newer entries', count: 3 }] as const;
    const model = aModel({ size: SIZES[1] }, aDocument(), aLoaded({ troubles }));
    expect(seen(model).join('\n')).toContain('1 thing wrong with the files');
    expect(pageOf(moved({ ...model, chosen: 'trouble' }, 'enter')).page).toBe('trouble');
  });
});

describe('small and strange', () => {
  it('a window below 40 x 12 says what it wants and still gives the verdict', () => {
    for (const size of [
      { columns: 39, rows: 12 },
      { columns: 40, rows: 11 },
      { columns: 20, rows: 5 },
    ]) {
      const lines = seen(aModel({ size }));
      rectangular(lines, size);
      expect(lines[0]!.trim()).toBe('HOLD');
      expect(lines.join(' ').replace(/\s+/gu, ' ')).toContain('40 columns and 12 rows');
    }
  });

  it('whatever stands in a name, the page keeps its shape and no control character gets through', () => {
    const name = fc.string({ unit: 'grapheme', maxLength: 40 });
    const wild = fc.oneof(
      name,
      fc.constantFrom('\u001b[2J', 'a\tb\nc', '海水ポンプ用の長い名前です', '\u202egnol', '👩‍🔧 pump', ''),
    );
    const size = fc.record({
      columns: fc.integer({ min: 40, max: 210 }),
      rows: fc.integer({ min: 12, max: 64 }),
    });
    fc.assert(
      fc.property(fc.array(wild, { minLength: 3, maxLength: 8 }), size, (names, at) => {
        const items = names.map((one, index) =>
          aFluid({ id: `fluid-${index}`, name: one, reason: one, state: index % 2 ? 'unfit' : 'fit' }),
        );
        const [first = ''] = names;
        const document = aDocument({ boat: first, items, reasons: names, whileHeld: [] });
        for (const model of [
          aModel({ size: at }, document),
          moved(aModel({ size: at }, document), 'enter'),
        ]) {
          const lines = seen(model);
          rectangular(lines, at);
          expect(lines.join('')).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e]/u);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('every size from the least to a wall of a screen keeps its shape', () => {
    for (let columns = 40; columns <= 220; columns += 9) {
      for (let rows = 12; rows <= 70; rows += 7)
        rectangular(seen(aModel({ size: { columns, rows } })), { columns, rows });
    }
  });
});
