import { describe, expect, it } from 'vitest';
import type { Entry } from '../../source/logbook/entries.ts';
import { inOneGo } from '../../source/maths/turns.ts';
import { type DriverOptions, driverOf } from '../../source/screens/driver.ts';
import { firstModel, type Loaded, pageOf } from '../../source/screens/model.ts';
import { bad, good, type Result } from '../../source/trouble.ts';
import type { VerdictDocument } from '../../source/words/document.ts';
import { type TraceAsked, type TraceTold, tracing } from '../../source/words/traced.ts';
import { AT, aDocument, aLoaded } from '../helpers/a-document.ts';

interface Tried {
  readonly faults: unknown[];
  readonly did: string[];
  readonly reads: ((result: Result<Loaded>) => void)[];
}

/** A driver whose reads are answered by hand and whose reckoning runs at once. */
function tried(changes: Partial<DriverOptions['work']> = {}) {
  const kept: Tried = { faults: [], did: [], reads: [] };
  const size = { columns: 80, rows: 24 };
  const driver = driverOf({
    first: firstModel({
      now: Date.parse(AT),
      zone: 'UTC',
      by: null,
      size,
      palette: 'day',
      copy: null,
      colour: true,
    }),
    work: {
      load: () => new Promise((settle) => kept.reads.push(settle)),
      judge: async () => aDocument(),
      begin: async () => bad(),
      changeBoat: async () => bad(),
      sample: async () => bad(),
      keepPreferences: () => {},
      save: async () => good([]),
      takeIn: async () => good(''),
      trace: async () => null,
      watch: () => () => {},
      keepPalette: (palette) => kept.did.push(`palette ${palette}`),
      ...changes,
    },
    afterFrame: (run) => run(),
    edit: () => {},
    suspend: () => kept.did.push('suspend'),
    redraw: () => kept.did.push('redraw'),
    quit: () => kept.did.push('quit'),
    fault: (fault) => kept.faults.push(fault),
  });
  return { driver, ...kept };
}

const settled = () => new Promise((next) => setImmediate(next));

describe('the driver', () => {
  it('reads, reckons, and tells those who look', async () => {
    const { driver, reads, faults } = tried();
    let told = 0;
    driver.subscribe(() => {
      told += 1;
    });
    reads[0]!(good(aLoaded()));
    await settled();
    expect(driver.model().boat).toMatchObject({ is: 'open', working: false });
    expect(told).toBe(2);
    expect(faults).toEqual([]);
  });

  it('reads once more after a reading in which the log changed, however often it did', async () => {
    const { driver, reads } = tried();
    for (let times = 0; times < 5; times += 1) driver.send({ is: 'log changed' });
    expect(reads).toHaveLength(1);
    reads[0]!(good(aLoaded()));
    await settled();
    expect(reads).toHaveLength(2);
    reads[1]!(good(aLoaded()));
    await settled();
    expect(reads).toHaveLength(2);
  });

  it('a throw while reading or reckoning is a fault, and is handed on', async () => {
    const planted = new Error('planted');
    const reading = tried({ load: () => Promise.reject(planted) });
    await settled();
    expect(reading.faults).toEqual([planted]);
    const reckoning = tried({
      judge: () => {
        throw planted;
      },
    });
    reckoning.reads[0]!(good(aLoaded()));
    await settled();
    expect(reckoning.faults).toEqual([planted]);
  });

  it('of several readings judges only the last to the end, and is at work until then', async () => {
    const asked: { wanted: () => boolean; answer: (document: VerdictDocument | null) => void }[] = [];
    const { driver, reads, faults } = tried({
      judge: (_, wanted) => new Promise((answer) => asked.push({ wanted, answer })),
    });
    reads[0]!(good(aLoaded()));
    await settled();
    driver.send({ is: 'log changed' });
    reads[1]!(good(aLoaded()));
    await settled();
    expect(asked.map(({ wanted }) => wanted())).toEqual([false, true]);
    asked[0]!.answer(null);
    await settled();
    expect(driver.model().boat).toMatchObject({ is: 'open', working: true, document: null });
    asked[1]!.answer(aDocument());
    await settled();
    expect(driver.model().boat).toMatchObject({ is: 'open', working: false });
    expect(faults).toEqual([]);
  });

  it('answers keys while it reckons', async () => {
    const { driver, reads } = tried({ judge: () => new Promise(() => {}) });
    reads[0]!(good(aLoaded()));
    await settled();
    driver.send({ is: 'key', key: '?' });
    expect(driver.model()).toMatchObject({
      boat: { working: true },
      pages: [{ page: 'board' }, { page: 'keys' }],
    });
  });

  it('answers keys while a trace is worked out, and works out only the last that is wanted', async () => {
    const asked: { of: TraceAsked; wanted: () => boolean; answer: (told: TraceTold | null) => void }[] = [];
    const { driver, reads, faults } = tried({
      trace: (_, of, wanted) => new Promise((answer) => asked.push({ of, wanted, answer })),
    });
    const press = (key: string) => driver.send({ is: 'key', key });
    reads[0]!(good(aLoaded()));
    await settled();
    while (driver.model().chosen !== 'engine:main') press('j');
    for (const key of ['enter', 'f', 'tab']) press(key);
    expect(pageOf(driver.model())).toMatchObject({ page: 'trace', table: 'will-not-start' });
    expect(asked.map(({ of }) => of.table)).toEqual(['overheating', 'will-not-start']);
    expect(asked.map(({ wanted }) => wanted())).toEqual([false, true]);
    const told = { trace: null, found: [], closed: null };
    asked[0]!.answer(told);
    await settled();
    expect(driver.model().traced?.told).toBeNull();
    asked[1]!.answer(told);
    await settled();
    expect(driver.model().traced?.told).toEqual(told);
    expect(faults).toEqual([]);
  });

  describe('a trace that is still being worked out', () => {
    async function openedTrace() {
      const told: ((told: TraceTold | null) => void)[] = [];
      const saved: string[] = [];
      const { driver, reads } = tried({
        trace: () => new Promise((answer) => told.push(answer)),
        save: async (drafts) => {
          saved.push(...drafts.map(({ kind }) => kind));
          return good([]);
        },
      });
      const press = (...keys: string[]) => {
        for (const key of keys) driver.send({ is: 'key', key });
      };
      const loaded = aLoaded();
      reads[0]!(good(loaded));
      await settled();
      while (driver.model().chosen !== 'item:gear-oil') press('j');
      press('enter', 'f');
      const page = () => pageOf(driver.model()).page;
      expect(page()).toBe('trace');
      const tell = async () => {
        told.at(-1)!(inOneGo(tracing(loaded, driver.model().traced!.asked)));
        await settled();
      };
      return { driver, reads, loaded, saved, press, page, tell };
    }

    it('lets a key that hangs on it wait, what was typed after it too, and none that leads elsewhere', async () => {
      const { reads, loaded, saved, press, page, tell } = await openedTrace();
      press('escape');
      expect(page()).toBe('item');
      press('f', 'y', '?');
      expect([page(), saved]).toEqual(['trace', []]);
      await tell();
      expect(saved).toEqual(['clue']);
      reads[1]!(good(loaded));
      await settled();
      expect(page()).toBe('keys');
    });

    it('is moved over once it is there, so that an answer is to what is then in sight', async () => {
      const { driver, saved, press, tell } = await openedTrace();
      press('end', 'y');
      await tell();
      expect(saved).toEqual([]);
      expect(driver.model().notice).toBe('this is asked: y, n or c');
    });
  });

  it('runs what the keys ask for', async () => {
    const { driver, reads, did } = tried();
    reads[0]!(good(aLoaded()));
    await settled();
    for (const key of ['p', 'ctrl z', 'ctrl l']) driver.send({ is: 'key', key });
    reads[1]!(good(aLoaded()));
    await settled();
    driver.send({ is: 'key', key: 'q' });
    expect(did).toEqual(['palette night', 'suspend', 'redraw', 'quit']);
  });

  describe('while the disk is asked', () => {
    const typed = (driver: ReturnType<typeof tried>['driver'], ...keys: readonly string[]) => {
      for (const key of keys) driver.send({ is: 'key', key });
    };
    const topOf = (driver: ReturnType<typeof tried>['driver']) => pageOf(driver.model()).page;

    it('what is typed waits, in order, until the answer is there and the folder is read again', async () => {
      const answers: ((result: Result<readonly Entry[]>) => void)[] = [];
      const { driver, reads } = tried({ save: () => new Promise((answer) => answers.push(answer)) });
      reads[0]!(good(aLoaded()));
      await settled();
      typed(driver, 'm', 'x', 'enter', 's', 'i');
      driver.send({ is: 'pasted', text: 'mp' });
      await settled();
      expect(topOf(driver)).toBe('form');
      answers[0]!(good([]));
      await settled();
      expect(topOf(driver)).toBe('board');
      reads[1]!(good(aLoaded()));
      await settled();
      expect(pageOf(driver.model())).toMatchObject({ page: 'stores', find: { text: 'imp' } });
    });

    it('a form that could not be saved takes what was typed after it', async () => {
      const answers: ((result: Result<readonly Entry[]>) => void)[] = [];
      const { driver, reads } = tried({ save: () => new Promise((answer) => answers.push(answer)) });
      reads[0]!(good(aLoaded()));
      await settled();
      typed(driver, 'm', 'x', 'enter', 'y');
      answers[0]!(bad());
      await settled();
      expect(pageOf(driver.model())).toMatchObject({ page: 'form', fields: [{ text: 'xy' }, { text: '' }] });
    });

    it('the round goes on, and what follows it waits', async () => {
      const { driver, reads } = tried({ save: () => new Promise(() => {}) });
      reads[0]!(good(aLoaded()));
      await settled();
      typed(driver, 'r', 'enter', '8');
      expect(pageOf(driver.model())).toMatchObject({ page: 'round', at: 1 });
      typed(driver, 'ctrl u', 'escape', 'L');
      expect(topOf(driver)).toBe('board');
    });

    it('Ctrl+C leaves at once, but after what waits; a second does not wait for that either', () => {
      const nothing = tried();
      typed(nothing.driver, 'ctrl c');
      expect(nothing.did).toEqual(['quit']);
      const { driver, did } = tried();
      typed(driver, 'p', 'ctrl c');
      expect(did).toEqual([]);
      typed(driver, 'ctrl c');
      expect(did).toEqual(['quit']);
    });
  });

  it('whoever stopped looking is not told', async () => {
    const { driver, reads } = tried();
    let told = 0;
    const stop = driver.subscribe(() => {
      told += 1;
    });
    stop();
    reads[0]!(good(aLoaded()));
    await settled();
    expect(told).toBe(0);
  });
});
