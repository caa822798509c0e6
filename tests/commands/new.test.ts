import { describe, expect, it } from 'vitest';
import { readBoat } from '../../source/boat/read.ts';
import { templates } from '../../source/boat/template-answers.ts';
import { questionFields } from '../../source/commands/interview.ts';
import { run } from '../../source/commands/run.ts';
import type { VerdictDocument } from '../../source/words/document.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };
const interactive = { interactive: true };

/** What a crew would answer of a boat that is full and well. */
const healthy = {
  name: 'Godwit',
  main: '3412.6 h',
  'engine-oil': 'full',
  'gear-oil': 'full',
  coolant: 'full',
  fuel: '140 l',
  water: 'full',
  'oil-change': '20 days ago',
  'main-at-oil-change': 3400,
  'start-battery': 12.7,
  'house-bank': '12,6',
  charging: '14.1 V',
  'bilge-pump': 2,
  steering: 'yes',
  from: '41.2 -30.4',
  to: "41°54'N 29°30'W",
  passage: 'To Otter Cay',
};

async function begun(answers: object, args: readonly string[] = []) {
  const outside = anOutside({ input: JSON.stringify(answers) });
  const status = await run(['new', 'godwit', '-', ...args], outside, noScreens);
  const { out, err } = outside.written();
  const made = await outside.boat('godwit').read();
  return { status, out, err, made: made.ok ? made.value : null, outside };
}

async function verdictOf(outside: ReturnType<typeof anOutside>): Promise<VerdictDocument> {
  const before = outside.written().out.length;
  await run(['verdict', '--json', '--boat', 'godwit'], outside, noScreens);
  return JSON.parse(outside.written().out.slice(before));
}

describe('a new boat from answers as JSON', () => {
  it('shows a verdict at once, and a healthy full one is ready but for the forecast', async () => {
    const { status, out, err, outside } = await begun(healthy);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toContain('saved: Godwit in godwit: boat.json, and 13 entries in her log\n');
    expect(out).toContain('\nGODWIT, lying\n');
    expect(out).toContain('\nHOLD\n');
    const { verdict, reasonKinds, items, passage } = await verdictOf(outside);
    expect({ verdict, reasonKinds }).toEqual({ verdict: 'hold', reasonKinds: ['fit', 'no forecast'] });
    const vital = items.filter((item) => item.consequence === 'vital');
    expect(vital.filter(({ state }) => state !== 'fit').map(({ id }) => id)).toEqual([
      'raw-water',
      'seacocks',
    ]);
    expect(passage).toMatchObject({ name: 'To Otter Cay' });
    expect(passage?.nm).toBeGreaterThan(55);
  });

  it('enters what was read and remembered, and nothing that nobody looked at', async () => {
    const { made } = await begun(healthy);
    expect(made?.entries.map(({ kind, at }) => `${kind} ${at.slice(0, 10)}`)).toEqual([
      'hours 2026-01-14',
      'service 2026-01-14',
      'hours 2026-02-03',
      ...Array(5).fill('dip 2026-02-03'),
      ...Array(5).fill('check 2026-02-03'),
    ]);
    const bare = await begun({ name: 'Godwit' });
    expect(bare.made?.entries).toEqual([]);
    expect(bare.out).toContain('NOT READY');
  });

  it('reckons the next oil change from the last one', async () => {
    const { outside } = await begun(healthy);
    const { items } = await verdictOf(outside);
    expect(items.find(({ id }) => id === 'oil-and-filter')).toMatchObject({ dueHours: 3550 });
  });

  it.each(Object.keys(templates))('is read without a trouble whatever she goes by: %s', async (template) => {
    const { status, made } = await begun({ name: 'Godwit', template });
    expect(status).toBe(0);
    expect(made?.troubles).toEqual([]);
  });

  it('takes spreads as usual and as on a bad day', async () => {
    const speed = { speed: 6, 'speed-bad-day': '4.7 kn' };
    const { made } = await begun({ ...healthy, ...speed });
    expect(made?.boat.passages[0]?.speed).toEqual({ mean: 6, sd: 1 });
  });

  it('takes limits, and off for those not to be judged', async () => {
    const { made } = await begun({ name: 'Godwit', wind: 'f5', seas: 'off' });
    expect(made?.boat.limits).toMatchObject({ wind: 19, seas: false, gust: 30 });
  });

  it('is not begun with anything that is not understood, and every trouble is told at once', async () => {
    const wrong = { ...healthy, crew: 0, fuel: '1e9', 'engin-oil': 'full', steering: 'perhaps', wind: -1 };
    const { status, out, err, made } = await begun(wrong);
    expect({ status, out, made }).toEqual({ status: 65, out: '', made: null });
    expect(err).toContain('crew: "0" is not understood\n"crew" takes a whole number of people, 1 to 100.');
    for (const field of ['fuel', 'steering', 'wind']) expect(err).toContain(`\n${field}: "`);
    expect(err).toContain('there is no field "engin-oil"\nTry: engine-oil');
  });

  it.each([
    [{ ...healthy, fuel: 400 }, 'a level from 0 to 188 L'],
    [{ ...healthy, fuel: '+20' }, 'a level from 0'],
    [{ ...healthy, 'oil-full': 3 }, 'more than 4'],
    [{ ...healthy, 'oil-change': '2027-01-01' }, 'a moment that has been'],
    [{ ...healthy, 'main-at-oil-change': 3500 }, '2908.6 to 3412.6 h'],
    [{ ...healthy, 'main-at-oil-change': 12 }, '2908.6 to 3412.6 h'],
    [{ ...healthy, 'speed-bad-day': 9 }, '0 to 5.2 kn'],
    [{ ...healthy, name: 'God\u001bwit' }, 'a name of 1 to 200 letters'],
    [{ ...healthy, name: '' }, 'an answer to "Her name" is wanting'],
    [{ name: 'Godwit', to: '41.9 -29.5' }, 'no answer with the others as they are'],
    [{ ...healthy, template: 'sail' }, 'no answer with the others as they are'],
    [['Godwit'], 'one {"field": answer, ...}'],
  ])('is asked for what can be: %j', async (answers, expected) => {
    const { status, err, made } = await begun(answers);
    expect({ status, made }).toEqual({ status: 65, made: null });
    expect(err).toContain(expected);
  });

  it('is told as JSON when asked for', async () => {
    const { out } = await begun(healthy, ['--json']);
    expect(JSON.parse(out)).toMatchObject({ format: 1, boat: 'Godwit', folder: 'godwit' });
    expect(JSON.parse(out).saved).toHaveLength(13);
  });

  it('is refused with 73 where a boat is, and with 65 for what is no JSON', async () => {
    const there = anOutside({ folders: { godwit: aFolder(sandpiper) }, input: '{"name": "Godwit"}' });
    expect(await run(['new', 'godwit', '-'], there, noScreens)).toBe(73);
    expect(there.written().err).toContain('godwit is not empty');
    const torn = anOutside({ input: '{"name": ' });
    expect(await run(['new', 'godwit', '-'], torn, noScreens)).toBe(65);
    expect(await torn.boat('godwit').read()).toMatchObject({ ok: false });
  });
});

describe('the interview', () => {
  async function asked(answers: readonly string[], args: readonly string[] = []) {
    const outside = anOutside({ answers, terminal: interactive });
    const status = await run(['new', 'godwit', ...args], outside, noScreens);
    const made = await outside.boat('godwit').read();
    return { status, ...outside.written(), made: made.ok ? made.value : null, outside };
  }

  it('shows every default with where it comes from, and Enter takes it', async () => {
    const { status, made, outside } = await asked(['', 'Godwit', ...Array(40).fill('')]);
    expect(status).toBe(0);
    expect(made?.boat).toMatchObject({ name: 'Godwit', crew: 2, limits: { wind: 22 } });
    expect(made?.entries).toEqual([]);
    expect(outside.questions).toContain('How many are aboard [2, common practice]: ');
    expect(outside.questions).toContain('Fuel tank holds [150 L, common practice]: ');
    expect(outside.questions.filter((question) => /\[\d/.test(question))).toEqual(
      outside.questions.filter((question) => /\[\d[\d.]*(?: \w+)?, common practice\]: $/.test(question)),
    );
    expect(outside.questions.length).toBeLessThan(35);
  });

  it('asks again after an answer that is not understood, saying what is', async () => {
    const { made, err, outside } = await asked(['', '', 'Godwit', 'two', '3', ...Array(40).fill('')]);
    expect(made?.boat).toMatchObject({ name: 'Godwit', crew: 3 });
    expect(err).toContain('an answer to "Her name" is wanting');
    expect(err).toContain('crew: "two" is not understood');
    expect(outside.questions.slice(1, 5).map((question) => question.slice(0, 8))).toEqual([
      'Her name',
      'Her name',
      'How many',
      'How many',
    ]);
  });

  it('brings further questions with an answer', async () => {
    const few = await asked(['sail', 'Godwit', ...Array(40).fill('')]);
    const many = await asked(['twin', 'Godwit', ...Array(60).fill('')]);
    expect(few.outside.questions.join('')).not.toMatch(/oil|Fuel/);
    expect(many.outside.questions.join('')).toContain('Starboard gear oil now');
  });

  it.each([['q'], []])(
    'is left with nothing written by q, and at the end of the input: %j',
    async (...end) => {
      const { status, err, made } = await asked(['', 'Godwit', '2', ...end]);
      expect({ status, made }).toEqual({ status: 73, made: null });
      expect(err).toContain('left; nothing was written');
    },
  );

  it('with --yes asks her name only', async () => {
    const { status, made, outside } = await asked(['Godwit'], ['--yes']);
    expect({ status, name: made?.boat.name }).toEqual({ status: 0, name: 'Godwit' });
    expect(outside.questions).toEqual(['Her name: ']);
  });

  it('remembers the boat as the last one opened', async () => {
    const { outside } = await asked(['Godwit'], ['--yes']);
    expect(outside.remembered).toEqual([{ lastBoat: 'godwit' }]);
  });

  it('asks nothing where a boat stands already', async () => {
    const outside = anOutside({
      folders: { godwit: aFolder(sandpiper) },
      answers: ['q'],
      terminal: interactive,
    });
    expect(await run(['new', 'godwit'], outside, noScreens)).toBe(73);
    expect(outside.questions).toEqual([]);
  });

  it.each([
    [['new'], 'a folder is wanting'],
    [['new', '-'], 'a folder is wanting'],
    [['new', 'a', 'b'], 'one folder'],
    [['new', 'a'], 'somebody to answer is wanting'],
    [['new', 'a', '--yes'], 'somebody to answer is wanting'],
  ])('is wrong usage: %j', async (args, complaint) => {
    const outside = anOutside({});
    expect(await run(args, outside, noScreens)).toBe(64);
    expect(outside.written().err).toContain(complaint);
  });
});

describe('what no boat can be in, every field tried with what nobody means', () => {
  const odd = [
    '',
    'xyz',
    '1e9',
    '-1',
    '\u0000\u001b[2J',
    'a\nb\n'.repeat(5000),
    '\u202eabc',
    '漢字',
    '99999999',
  ];

  /** What is answered is not looked at here. */
  const few = ['--simulations', '256'];

  it.each(odd)('never writes a boat that cannot be read: %j', async (value) => {
    for (const field of questionFields()) {
      const { status, made } = await begun({ ...healthy, [field]: value }, ['--json', ...few]);
      expect([0, 65]).toContain(status);
      expect(made === null).toBe(status === 65);
      if (made) expect(readBoat(JSON.stringify(made.boat), 'boat.json')).toMatchObject({ ok: true });
    }
  });
});
