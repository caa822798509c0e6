import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Draft, Entry } from '../../source/logbook/entries.ts';
import { type Loaded, type Message, type Model, pageOf, type Request } from '../../source/screens/model.ts';
import type { RoundPage } from '../../source/screens/round/round.ts';
import { update } from '../../source/screens/update.ts';
import { bad, good, type Result } from '../../source/trouble.ts';
import { aBoat, sandpiper } from './a-boat.ts';
import { AT, aDocument, aLoaded } from './a-document.ts';
import { aModel } from './a-model.ts';
import { anEntry } from './an-entry.ts';

const DAY_MS = 86_400_000;

/** A boat with twelve things due a look, all looked at four days ago: a meter, three fluids, an anode, seven checks. */
export function dueBoat(overrides: Partial<Loaded> = {}): Loaded {
  const looked = Date.parse(AT) - 4 * DAY_MS;
  const boat = aBoat({
    anodes: [{ ...sandpiper.anodes[0]!, everyDays: 3 }],
    checks: [
      { id: 'house-bank', name: 'House bank at dawn', ask: 'number', unit: 'V', atLeast: 12.2, everyDays: 1 },
      { id: 'start-bank', name: 'Start battery', ask: 'number', unit: 'V', atLeast: 12.4, everyDays: 1 },
      { id: 'freezer', name: 'Freezer', ask: 'number', unit: 'C', atMost: -12, everyDays: 1 },
      { id: 'bilge', name: 'Bilge dry', everyDays: 1 },
      { id: 'charging', name: 'Charging', ask: 'number', unit: 'V', when: 'running', everyDays: 1 },
      { id: 'seacocks', name: 'Seacocks as wanted', when: 'leaving' },
      { id: 'raw-water', name: 'Raw water flows', when: 'leaving', minutes: 1 },
    ],
  });
  const entries: readonly Entry[] = [
    anEntry('hours', { engine: 'main', reading: 3412.6 }, looked),
    anEntry('dip', { fluid: 'gear-oil', level: 1.2 }, looked),
    anEntry('dip', { fluid: 'fuel', level: 120 }, looked),
    anEntry('dip', { fluid: 'water', level: 200 }, looked),
    anEntry('anode', { anode: 'pencil', share: 0.6 }, looked),
    anEntry('check', { check: 'house-bank', value: 12.6 }, looked),
    anEntry('check', { check: 'start-bank', value: 12.7 }, looked),
    anEntry('check', { check: 'freezer', value: -18 }, looked),
    anEntry('check', { check: 'bilge', ok: true }, looked),
    anEntry('check', { check: 'charging', value: 14.1 }, looked),
    anEntry('check', { check: 'seacocks', ok: true }, looked),
    anEntry('check', { check: 'raw-water', ok: true }, looked),
    anEntry('arrived', { anchorage: 'heron-bight' }, looked + DAY_MS),
  ];
  return aLoaded({ boat, entries, ...overrides });
}

/** A board and the disk under it: what is asked for waits until it is let through. */
export interface World {
  model(): Model;
  round(): RoundPage;
  /** Keys, by name; a text in quotes is typed letter by letter: `'"1/2"'`. */
  press(...keys: readonly string[]): void;
  send(message: Message): void;
  /** Lets through all that was asked for, and all that follows from it. */
  settle(): void;
  /** From here on nothing can be saved; or it can again. */
  full(is: boolean): void;
  /** Everything saved since the beginning, strikes applied. */
  log(): readonly Draft[];
  /** How many keys were pressed. */
  pressed(): number;
}

export function aWorld(loaded: Loaded = dueBoat()): World {
  let model = aModel({}, aDocument(), loaded);
  let asked: Request[] = [];
  let entries = loaded.entries;
  let isFull = false;
  let pressed = 0;
  const own: Entry[] = [];

  function send(message: Message): void {
    const [next, requests] = update(model, message);
    model = next;
    asked.push(...requests);
  }

  function saved(drafts: readonly Draft[]): Result<readonly Entry[]> {
    if (isFull) return bad({ kind: 'not saved', code: 'ENOSPC', text: JSON.stringify(drafts[0]) });
    const made = drafts.map((draft, index): Entry => {
      const n = own.length + index;
      return { ...draft, id: `own12345-${n}`, writer: 'own12345', n, lc: 10_000 + n, rec: AT };
    });
    own.push(...made);
    return good(made);
  }

  function standing(): readonly Entry[] {
    const gone = new Set(own.flatMap((entry) => (entry.kind === 'strike' ? [entry.entry] : [])));
    return own.filter(({ id, kind }) => kind !== 'strike' && !gone.has(id));
  }

  function answer(request: Request): void {
    if (request.do === 'save') send({ is: 'saved', drafts: request.drafts, result: saved(request.drafts) });
    if (request.do === 'load') {
      entries = [...loaded.entries, ...standing()];
      const condition = conditionAt(loaded.boat, entries, Date.parse(AT));
      send({ is: 'loaded', result: good({ ...loaded, entries, condition }) });
    }
  }

  return {
    model: () => model,
    round: () => {
      const page = pageOf(model);
      if (page.page !== 'round') throw new Error(`the page is ${page.page}`);
      return page;
    },
    press: (...keys) => {
      for (const key of keys) {
        const letters = /^".*"$/su.test(key)
          ? [...key.slice(1, -1)].map((one) => (one === ' ' ? 'space' : one))
          : [key];
        for (const one of letters) send({ is: 'key', key: one });
        pressed += letters.length;
      }
    },
    send,
    settle: () => {
      while (asked.length > 0) {
        const now = asked;
        asked = [];
        for (const request of now) answer(request);
      }
    },
    full: (is) => {
      isFull = is;
    },
    log: () => standing().map(({ id: _i, writer: _w, n: _n, lc: _l, rec: _r, ...draft }) => draft as Draft),
    pressed: () => pressed,
  };
}
