import { describe, expect, it } from 'vitest';
import { driverOf } from '../../source/screens/driver.ts';
import { textOf } from '../../source/screens/lines.ts';
import { firstModel, type Loaded, type Model, pageOf, type WeatherPage } from '../../source/screens/model.ts';
import { spokenLines } from '../../source/screens/spoken.ts';
import { boatOnTrial, stepped, type Trial } from '../../source/screens/trial.ts';
import { update } from '../../source/screens/update.ts';
import { bad, good } from '../../source/trouble.ts';
import { aBoat, sandpiper } from '../helpers/a-boat.ts';
import { AT, aDocument, aLoaded } from '../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../helpers/a-model.ts';
import { anEntry } from '../helpers/an-entry.ts';

const another = {
  ...sandpiper.passages[0]!,
  id: 'another',
  name: 'To another place',
  speed: { mean: 7, sd: 1 },
};
const boat = aBoat({
  passages: [...sandpiper.passages, another],
  limits: { wind: 20, gust: 28, seas: 2, alone: { gust: 22 } },
});
const loaded = aLoaded({ boat });
const document = aDocument();
const ground = { loaded, document };
const weatherPage = (model: Model) => pageOf(model) as WeatherPage;
const open = (keys: string[] = [], size = SIZES[2] as { columns: number; rows: number }) =>
  moved(aModel({ size }, document, loaded), 'w', ...keys);
const better = aDocument({ curve: document.curve.map((point) => ({ ...point, score: 60 })) });
const answered = (model: Model) =>
  moved(model, { is: 'tried', of: loaded, trial: weatherPage(model).trial, document: better });

describe('one step of a trial', () => {
  it('begins at the boat file, and coming back to it is no trial', () => {
    const up = stepped({}, 'gust', 1, ground);
    expect(up).toEqual({ gust: 29 });
    expect(stepped(up, 'gust', -1, ground)).toEqual({});
    expect(stepped({ wind: 25 }, 'gust', -1, ground)).toEqual({ wind: 25, gust: 27 });
  });

  it('heights go by a tenth of a metre, without drifting, and nothing falls below nothing', () => {
    let trial: Trial = {};
    for (let step = 0; step < 7; step += 1) trial = stepped(trial, 'seas', 1, ground);
    expect(trial).toEqual({ seas: 2.7 });
    for (let step = 0; step < 60; step += 1) trial = stepped(trial, 'seas', -1, ground);
    expect(trial).toEqual({ seas: 0 });
    for (let step = 0; step < 60; step += 1) trial = stepped(trial, 'speed', -1, ground);
    expect(trial.speed).toBeGreaterThan(0);
  });

  it('a limit the boat file does not set can be tried as well', () => {
    const { weather } = aDocument();
    const bare = aDocument({ weather: { ...weather!, limits: { ...weather!.limits, headwind: null } } });
    expect(stepped({}, 'headwind', 1, { loaded, document: bare }).headwind).toBeGreaterThan(0);
  });

  it('goes round the passages, and another one comes with its own speed', () => {
    const next = stepped({ speed: 4 }, 'passage', 1, ground);
    expect(next).toEqual({ passage: 'another' });
    expect(stepped(next, 'speed', 1, ground)).toEqual({ passage: 'another', speed: 7.2 });
    expect(stepped(next, 'passage', 1, ground)).toEqual({});
  });
});

describe('the boat on trial', () => {
  it('has the limits tried, alone as well, and her own are left as they are', () => {
    const before = structuredClone(boat);
    const tried = boatOnTrial(loaded, { gust: 33, speed: 6.2 });
    expect(tried.boat.limits).toMatchObject({ wind: 20, gust: 33, seas: 2, alone: { gust: 33 } });
    expect(tried.boat.passages.map(({ speed }) => speed.mean)).toEqual([6.2, 7]);
    expect(boat).toEqual(before);
  });

  it('sails the passage tried whatever passage the log plans', () => {
    const planned = aLoaded({
      boat,
      entries: [
        ...loaded.entries,
        anEntry('plan', { passage: sandpiper.passages[0]!.id, crew: 1 }, Date.parse(AT)),
      ],
    });
    const tried = boatOnTrial(planned, { passage: 'another' });
    expect(tried.boat).toMatchObject({ passage: 'another', crew: 1 });
    expect(tried.entries.some(({ kind }) => kind === 'plan')).toBe(false);
  });
});

describe('trying on the weather page', () => {
  it('Tab goes round what can be tried and says what it stands at', () => {
    expect(weatherPage(open()).field).toBe('wind');
    expect(open(['tab']).notice).toBe('gusts 28 kn: + and - try another');
    expect(weatherPage(open(['tab', 'back tab', 'back tab'])).field).toBe('passage');
  });

  it('+ asks for the answer with what is tried, and only the page on top knows of it', () => {
    const [model, requests] = update(open(['tab']), { is: 'key', key: '+' });
    expect(requests).toEqual([{ do: 'try', loaded, trial: { gust: 29 } }]);
    const told = answered(model);
    expect(weatherPage(told)).toMatchObject({ trying: false, tried: better });
    expect(told.boat).toEqual(model.boat);
    expect(seen(moved(told, 'escape'))).toEqual(seen(open(['escape'])));
  });

  it('says plainly that it is a trial and what differs, at every size', () => {
    for (const size of SIZES) {
      const model = open(['tab', '+', '+'], size);
      const working = seen(model).join(' ').replace(/\s+/gu, ' ');
      expect(working).toContain(' A TRIAL ');
      expect(working).toContain('A TRIAL: gusts 30 kn (boat file: 28 kn); being worked out. 0 goes back.');
      const text = seen(answered(model)).join(' ').replace(/\s+/gu, ' ');
      expect(text).toContain('A TRIAL: gusts 30 kn (boat file: 28 kn); dots: by the boat file. 0 goes back.');
      expect(text).toMatch(/LEAVING now: 60 in 100.*; by the boat file 10 in 100/u);
    }
  });

  it('a screen reader hears the same', () => {
    const heard = spokenLines(answered(open(['tab', '+']))).map(textOf);
    expect(heard).toContain('A TRIAL: gusts 29 kn (boat file: 28 kn); dots: by the boat file. 0 goes back.');
    expect(heard).toContain('Try: gusts 29 kn; plus and minus change it, Tab goes to the next.');
  });

  it('0 goes back to the boat file, and a late answer to a trial given up is dropped', () => {
    const model = open(['+']);
    const { trial } = weatherPage(model);
    const back = moved(model, '0');
    expect(seen(back)).toEqual(seen(open()));
    expect(moved(back, { is: 'tried', of: loaded, trial, document: better })).toEqual(back);
  });

  it('when the log changes the trial is worked out anew', () => {
    const model = open(['+']);
    const newer = aLoaded({ boat });
    const [, requests] = update(model, { is: 'loaded', result: good(newer) });
    expect(requests).toEqual([
      { do: 'judge', loaded: newer },
      { do: 'try', loaded: newer, trial: { wind: 21 } },
    ]);
  });

  it('without a forecast there is nothing to try', () => {
    const model = moved(aModel({}, aDocument({ forecast: null, weather: null }), loaded), 'w', '+');
    expect(weatherPage(model).trial).toEqual({});
    expect(model.notice).toContain('nothing to try');
  });
});

it('of several steps in one frame only the last is worked out', async () => {
  const judged: Loaded[] = [];
  const due: (() => void)[] = [];
  const driver = driverOf({
    first: firstModel({
      now: Date.parse(AT),
      zone: 'UTC',
      by: null,
      size: SIZES[2],
      palette: 'day',
      copy: null,
      colour: true,
    }),
    work: {
      load: async () => good(loaded),
      judge: async (of) => {
        judged.push(of);
        return aDocument();
      },
      begin: async () => bad(),
      changeBoat: async () => bad(),
      sample: async () => bad(),
      keepPreferences: () => {},
      save: async () => good([]),
      takeIn: async () => good(''),
      trace: async () => null,
      watch: () => () => {},
      keepPalette: () => {},
    },
    afterFrame: (run) => due.push(run),
    edit: () => {},
    suspend: () => {},
    redraw: () => {},
    quit: () => {},
    fault: (fault) => {
      throw fault;
    },
  });
  const drawn = () => {
    for (const run of due.splice(0)) run();
  };
  await new Promise((next) => setImmediate(next));
  drawn();
  await new Promise((next) => setImmediate(next));
  for (const key of ['w', '+', '+', '+']) driver.send({ is: 'key', key });
  drawn();
  await new Promise((next) => setImmediate(next));
  expect(judged.map((of) => of.boat.limits.wind)).toEqual([20, 23]);
  expect(weatherPage(driver.model())).toMatchObject({ trial: { wind: 23 }, trying: false });
});
