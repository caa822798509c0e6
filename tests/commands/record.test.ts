import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import type { Settings } from '../../source/outside.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aFolder, anOutside, type FolderInMemory } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };
const healthy = () => aFolder(sandpiper, healthyLog);

async function record(
  args: readonly string[],
  given: {
    folder?: FolderInMemory;
    input?: string;
    name?: string;
    now?: number;
    settings?: Partial<Settings>;
  } = {},
) {
  const folder = given.folder ?? healthy();
  const before = folder.lines.length;
  const outside = anOutside({
    folders: { '.': folder },
    ...(given.input === undefined ? {} : { input: given.input }),
    ...(given.now === undefined ? {} : { now: given.now }),
    settings: { name: given.name ?? null, ...given.settings },
  });
  const status = await run(['record', ...args], outside, noScreens);
  return { status, ...outside.written(), added: folder.lines.slice(before).map(fieldsOf), folder };
}

/** The entry of a line, without what places it in the log. */
function fieldsOf(bytes: Uint8Array) {
  const { v, id, p, lc, crc, rec, ...fields } = JSON.parse(new TextDecoder().decode(bytes)) as Entry & {
    v: number;
    p: string;
    crc: string;
  };
  return fields;
}

describe('an entry typed', () => {
  it('is saved in file units, and what was saved is said', async () => {
    const { status, out, err, added } = await record([
      'topup',
      'fluid=gear-oil',
      'amount=300ml',
      'share=full',
    ]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(added).toEqual([
      { kind: 'topup', at: '2026-02-03T07:40:00Z', fluid: 'gear-oil', amount: 0.3, share: 1 },
    ]);
    expect(out).toBe(
      'saved: Tue 3 Feb 2026 07:40  Gear oil: 0.3 L poured in, now at the full mark  [aaaaaaaa-16]\n',
    );
  });

  it('without a unit is in the one preferred, which what was saved says; --json and JSON lines are in file units', async () => {
    const settings = { volume: 'US', clock: '12 h', zone: 'America/New_York' } as const;
    const words = ['topup', 'fluid=gear-oil', 'amount=0.25'];
    const typed = await record(words, { settings });
    expect(typed.added[0]).toMatchObject({ amount: 0.2365882365 });
    expect(typed.out).toContain('Tue 3 Feb 2026 2:40am  Gear oil: 0.25 US qt poured in');
    expect((await record([...words, '--json'], { settings })).added[0]).toMatchObject({ amount: 0.25 });
    const input = '{"kind":"topup","at":"2026-02-03T07:00:00Z","fluid":"gear-oil","amount":0.25}';
    expect((await record(['-'], { settings, input })).added[0]).toMatchObject({ amount: 0.25 });
  });

  it.each([
    [['dip', 'fluid=fuel', 'level=180'], { level: 180 }],
    [['dip', 'fluid=fuel', 'level=1/2'], { share: 0.5 }],
    [['dip', 'fluid=fuel', 'level=60%'], { share: 0.6 }],
    [['dip', 'fluid=fuel', 'level=off'], { off: 'below' }],
    [['dip', 'fluid=fuel', 'level=-2,5'], { level: 197.5 }],
    [
      ['dip', 'fluid=fuel', 'share=0,25', 'rough=yes', 'how=sounding'],
      { share: 0.25, rough: true, how: 'sounding' },
    ],
    [['topup', 'fluid=fuel', 'amount=5 us gal'], { amount: 18.92705892 }],
    [['hours', 'engine=main', 'reading=1012.5'], { reading: 1012.5 }],
    [['hours', 'engine=main', 'reading=3', 'swapped=y'], { reading: 3, swapped: true }],
    [['anode', 'anode=pencil', 'diameterMm=1/2 in'], { diameterMm: 12.7 }],
    [['anode', 'anode=pencil', 'massKg=48g', 'flakes=no'], { massKg: 0.048, flakes: false }],
    [['use', 'spare=impellers', 'count=1', 'for=a torn one'], { count: 1, for: 'a torn one' }],
    [['stow', 'spare=gear-oil-can', 'count=500 ml'], { count: 0.5 }],
    [
      ['service', 'service=impeller-change', 'uses=impellers:1,fuses'],
      {
        uses: [
          { spare: 'impellers', count: 1 },
          { spare: 'fuses', count: 1 },
        ],
      },
    ],
    [['check', 'check=house-bank', 'value=12,6 V'], { value: 12.6 }],
    [['check', 'check=raw-water', 'ok=no'], { ok: false }],
    [
      ['weather', 'wind=f5', 'seas=4 ft', 'dir=sw', 'pressure=1013'],
      { wind: 19, seas: 1.2192, dir: 225, pressure: 1013 },
    ],
    [['job', 'item=gear-oil', 'text=new seal', 'minutes=1.5 h'], { text: 'new seal', minutes: 90 }],
    [['dated', 'item=flares', 'expires=2029-03-31'], { expires: '2029-03-31' }],
    [['plan', 'passage=to-otter-cay', 'crew=1'], { passage: 'to-otter-cay', crew: 1 }],
    [
      ['gate', 'passage=to-otter-cay', 'leg=1', 'from=09:00', 'to=11:30'],
      { passage: 'to-otter-cay', leg: 0, from: '2026-02-03T09:00:00Z', to: '2026-02-03T11:30:00Z' },
    ],
    [['remark', 'text=a=b'], { text: 'a=b' }],
  ])('takes values as people type them: %j', async (args, fields) => {
    const { status, err, added } = await record(args);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(added).toHaveLength(1);
    expect(added[0]).toMatchObject(fields);
  });

  it('happened when it is said to have happened, by whom it is said', async () => {
    const { added } = await record(['remark', 'text=fog', 'at=yesterday 18:30', 'key=k1'], { name: 'Ann' });
    expect(added).toEqual([
      { kind: 'remark', at: '2026-02-02T18:30:00Z', by: 'Ann', key: 'k1', text: 'fog' },
    ]);
  });

  it('is given as JSON when asked for', async () => {
    const { out } = await record(['--json', 'remark', 'text=fog']);
    expect(JSON.parse(out)).toMatchObject({
      format: 1,
      saved: [{ kind: 'remark', text: 'fog' }],
      skipped: 0,
    });
  });

  it.each([
    [[], 64, 'a kind of entry'],
    [['topupp'], 64, 'Try: topup'],
    [['topup', 'fluid=gear-oil', 'amout=1'], 64, 'Try: amount'],
    [['topup', 'fluid=gear-oil', '300ml'], 64, '"300ml" is not understood'],
    [['topup', 'fluid=gear-oil', 'amount=1', 'amount=2'], 64, 'this is the second'],
    [['dip', 'fluid=gear-oil', 'level=1/2', 'share=1'], 64, 'this is the second'],
    [['topup', 'amount=300ml'], 64, 'Try: hoveshort record topup fluid=gear-oil ...'],
    [['topup', 'fluid=gear-oil', 'amount=plenty'], 64, '"plenty" is not understood'],
    [['topup', 'fluid=gear-oil'], 64, 'amount is not there'],
    [['dip', 'fluid=gear-oil'], 64, 'level'],
    [['dip', 'fluid=gear-oyl', 'share=1'], 66, 'Try: gear-oil'],
    [['topup', 'fluid=gear-oil', 'amount=0.1', 'from=impelers'], 66, 'Try: impellers'],
    [['remark', 'text=x', 'at=soon'], 64, '"soon" is not understood'],
    [['weather', 'dir=so'], 64, 'o is east in some languages and west in others'],
    [['strike', 'entry=aaaaaaaa-99'], 66, '"aaaaaaaa-99"'],
    [['dip', 'fluid=gear-oil', 'share=__proto__'], 64, '__proto__'],
  ])('is refused, and nothing is saved: %j', async (args, expected, said) => {
    const { status, out, err, added } = await record(args);
    expect({ status, out, added }).toEqual({ status: expected, out: '', added: [] });
    expect(err).toContain(said);
  });

  it.each([
    [['hours', 'engine=main', 'reading=990'], 'below the 1010 h before it'],
    [['dip', 'fluid=fuel', 'level=900'], '"fuel" reads 900 L'],
    [['use', 'spare=impellers', 'count=3'], '"impellers" comes to -1'],
    [['remark', 'text=later', 'at=2026-02-05'], 'still to come'],
  ])('that looks wrong is asked about once, and saved when insisted on: %j', async (args, said) => {
    const doubted = await record(args);
    expect(doubted).toMatchObject({ status: 64, out: '', added: [] });
    expect(doubted.err).toContain(said);
    expect(doubted.err).toContain('--yes');
    const insisted = await record([...args, '--yes']);
    expect(insisted).toMatchObject({ status: 0, err: '' });
    expect(insisted.added).toHaveLength(1);
  });

  it('that is leaving logs the decision beside the verdict, and says which looks were not made', async () => {
    const { status, out, err, added } = await record(['left'], { name: 'Ann' });
    const at = '2026-02-03T07:40:00Z';
    expect([status, err]).toEqual([0, '']);
    expect(added).toEqual([
      { kind: 'decision', at, by: 'Ann', verdict: 'hold', score: null, choice: 'go' },
      { kind: 'left', at, by: 'Ann' },
    ]);
    expect(out).toContain('Decided to go: the verdict was hold');
    const unlooked = aFolder(
      sandpiper,
      healthyLog.filter(({ kind }) => kind !== 'check'),
    );
    expect((await record(['left'], { folder: unlooked })).err).toBe(
      'Looks before leaving that were not made: Raw water flows, no weep at the plugs.\n',
    );
    const { folder: unsettled } = await record(['renew', 'anode=pencil']);
    expect((await record(['left'], { folder: unsettled })).err).toContain('Raw water flows');
  });

  it('that is leaving again under way, or from a script, is no decision', async () => {
    const { folder } = await record(['left']);
    expect((await record(['left', 'at=07:40'], { folder })).added).toMatchObject([{ kind: 'left' }]);
    const input = JSON.stringify({ kind: 'left', at: '2026-02-03T07:20:00Z' });
    expect((await record(['-'], { input })).added).toMatchObject([{ kind: 'left' }]);
  });

  it('that is a decision to stay stands beside what the model said then', async () => {
    const { added } = await record(['decision', 'choice=stay', 'text=fog']);
    expect(added).toMatchObject([
      { kind: 'decision', verdict: 'hold', score: null, choice: 'stay', text: 'fog' },
    ]);
    const typed = await record(['decision', 'choice=stay', 'verdict=go', 'score=90']);
    expect(typed.added).toMatchObject([{ verdict: 'go', score: 90 }]);
  });

  it('may be a strike, which says what it withdraws; striking the strike restores it', async () => {
    const { out, folder } = await record(['strike', 'entry=aaaaaaaa-7', 'why=wrong tank']);
    expect(out).toBe(
      'saved: Tue 3 Feb 2026 07:40  Struck: entry aaaaaaaa-7, because wrong tank (Fuel: 200 L)  [aaaaaaaa-16]\n',
    );
    const again = await record(['strike', 'entry=aaaaaaaa-16'], { folder });
    expect(again.status).toBe(0);
    const outside = anOutside({ folders: { '.': folder } });
    await run(['log', '--json', '--item', 'fuel'], outside, noScreens);
    expect(JSON.parse(outside.written().out).entries).toMatchObject([{ id: 'aaaaaaaa-7', struck: false }]);
  });

  it('is not asked for where nothing can be saved: that is said first, with 73', async () => {
    const folder = aFolder(sandpiper, healthyLog, {
      readOnly: { kind: 'read only', folder: '.', code: 'EROFS' },
    });
    const { status, out, err, added } = await record(['remark'], { folder });
    expect({ status, out, added }).toEqual({ status: 73, out: '', added: [] });
    expect(err).toContain('EROFS');
  });

  it('that the disk does not take is said to be NOT SAVED, with its text and 74', async () => {
    const folder = aFolder(sandpiper, healthyLog, { failing: 'ENOSPC' });
    const { status, out, err } = await record(['remark', 'text=fog'], { folder });
    expect({ status, out }).toEqual({ status: 74, out: '' });
    expect(err).toContain('NOT SAVED');
    expect(err).toContain('"text":"fog"');
  });
});

describe('entries from standard input', () => {
  const line = (fields: object) => JSON.stringify({ at: '2026-02-03T07:20:00Z', ...fields });
  const fuel = { kind: 'dip', fluid: 'fuel', level: 190 };

  it('are all saved, blank lines and line ends of any kind passed over', async () => {
    const input = `\ufeff${line({ ...fuel, key: 'a' })}\r\n\r\n${line({ kind: 'remark', text: 'fog', by: 'Bo' })}`;
    const { status, out, err, added } = await record(['-'], { input });
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(added).toEqual([
      { at: '2026-02-03T07:20:00Z', ...fuel, key: 'a' },
      { at: '2026-02-03T07:20:00Z', kind: 'remark', text: 'fog', by: 'Bo' },
    ]);
    expect(out).toBe(
      'saved: Tue 3 Feb 2026 07:20  Fuel: 190 L  [aaaaaaaa-16]\nsaved: Tue 3 Feb 2026 07:20  Fog  [aaaaaaaa-17]\n',
    );
  });

  it('change nothing the second time when each has a key', async () => {
    const input = `${line({ ...fuel, key: 'a' })}\n${line({ ...fuel, key: 'b' })}\n${line({ ...fuel, key: 'b' })}\n`;
    const first = await record(['-'], { input });
    expect(first.added).toHaveLength(2);
    expect(first.out).toContain('skipped: 1 entry already in the log by key\n');
    const second = await record(['-'], { input, folder: first.folder });
    expect(second).toMatchObject({ status: 0, err: '', added: [] });
    expect(second.out).toBe('saved: 0 entries\nskipped: 3 entries already in the log by key\n');
  });

  it('skip a key that stands in a struck entry', async () => {
    const { folder } = await record(['-'], { input: line({ ...fuel, key: 'a' }) });
    await record(['strike', 'entry=aaaaaaaa-16'], { folder });
    expect(await record(['-'], { folder, input: line({ ...fuel, key: 'a' }) })).toMatchObject({ added: [] });
  });

  it('are none of them taken when one is in trouble, and every trouble is said with its line', async () => {
    const input = [
      line(fuel),
      '{"kind": "dip", ',
      line({ kind: 'dip', fluid: 'fuel', share: 9 }),
      line({ kind: 'dpi', fluid: 'fuel', share: 1 }),
      line({ kind: 'dip', fluid: 'fuell', share: 1 }),
      line({ kind: 'hours', engine: 'main', reading: 4 }),
      line({ kind: 'strike', entry: 'zzzzzzzz-1' }),
      '{"kind":"remark","at":"2026-02-03T07:20:00Z","text":"x","__proto__":{}}',
    ].join('\n');
    const { status, out, err, added } = await record(['-'], { input });
    expect({ status, out, added }).toEqual({ status: 65, out: '', added: [] });
    for (const number of [2, 3, 4, 7, 8]) expect(err).toContain(`line ${number}:`);
    expect(err).not.toContain('line 1:');
  });

  it('are doubted with their line as a typed one is, and taken when insisted on', async () => {
    const input = [
      line(fuel),
      line({ kind: 'dip', fluid: 'fuell', share: 1 }),
      line({ kind: 'hours', engine: 'main', reading: 4 }),
    ].join('\n');
    const doubted = await record(['-'], { input });
    expect(doubted).toMatchObject({ status: 65, added: [] });
    expect(doubted.err).toContain('line 2: ');
    expect(doubted.err).toContain('"fuell"');
    expect(doubted.err).toContain('line 3: "main" reads 4 h');
    expect((await record(['-', '--yes'], { input })).added).toHaveLength(3);
  });

  it('do not doubt a reading whose contradiction they strike', async () => {
    const wrong = await record(['hours', 'engine=main', 'reading=1090', 'at=07:05', '--yes']);
    const input = [
      line({ kind: 'strike', entry: 'aaaaaaaa-16', why: 'slip of the pen' }),
      line({ kind: 'hours', engine: 'main', reading: 1010.9 }),
    ].join('\n');
    expect(await record(['-'], { folder: wrong.folder, input })).toMatchObject({ status: 0, err: '' });
  });

  it('tell the first hundred troubles and how many more', async () => {
    const { status, err } = await record(['-'], { input: 'nonsense\n'.repeat(250) });
    expect(status).toBe(65);
    expect(err.match(/line \d+:/g)).toHaveLength(100);
    expect(err).toContain('150');
  });
});
