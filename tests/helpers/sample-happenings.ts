import type { Draft, EntryKind, Fields } from '../../source/logbook/entries.ts';

/** An entry as it came to be typed: `mark` lets a later strike name it; `torn`: the power went while it was being written. */
export interface Happening {
  readonly draft: Draft;
  readonly mark?: string;
  readonly strikes?: string;
  readonly torn?: boolean;
}

/** What was entered, before when and by whom. */
export type Said = { [K in EntryKind]: { kind: K } & Fields<K> }[EntryKind];

/** All that was entered aboard besides the daily rounds, in the order of subject. Invented by hand. */
export const happenings: readonly Happening[] = [
  ...launching(),
  ...pencils(),
  ...otherAnodes(),
  ...services(),
  ...uses(),
  ...stowings(),
  ...counts(),
  ...gearLeak(),
  ...monthlyLooks(),
  ...datedThings(),
  ...decisions(),
  ...weatherHeard(),
  ...remarks(),
  ...slips(),
];

function nell(at: string, said: Said): Happening {
  return { draft: entryAt(Date.parse(`${at}Z`), 'Nell', said) };
}

function josef(at: string, said: Said): Happening {
  return { draft: entryAt(Date.parse(`${at}Z`), 'Josef', said) };
}

/** `instant` in ms since 1970 UTC. */
export function entryAt(instant: number, by: string, said: Said): Draft {
  return { ...said, at: new Date(instant).toISOString().replace('.000', ''), by };
}

function launching(): Happening[] {
  const done = [
    'oil-change',
    'gear-oil-change',
    'primary-change',
    'secondary-change',
    'impeller-change',
    'belt-change',
    'coolant-change',
    'exhaust-elbow',
  ];
  const aboard: readonly (readonly [string, number])[] = [
    ['engine-oil-can', 9],
    ['gear-oil-can', 3],
    ['coolant-can', 4],
    ['oil-filter', 3],
    ['primary-filter', 4],
    ['secondary-filter', 2],
    ['impeller', 3],
    ['drive-belt', 2],
    ['pencil-anode', 3],
    ['hose-clip', 12],
    ['fuse', 10],
    ['float-switch', 1],
    ['gas-bottle', 2],
  ];
  return [
    josef('2025-10-14T08:30', { kind: 'remark', text: 'Afloat again after six weeks on the hard.' }),
    josef('2025-10-14T08:40', { kind: 'arrived', anchorage: 'candlefold' }),
    josef('2025-10-14T08:45', { kind: 'hours', engine: 'main', reading: 3214.6 }),
    ...done.map((service, i) =>
      josef(`2025-10-14T09:${String(10 + i)}`, { kind: 'service', service, uses: [] }),
    ),
    josef('2025-10-14T09:30', { kind: 'change', fluid: 'engine-oil', share: 1 }),
    josef('2025-10-14T09:31', { kind: 'change', fluid: 'gear-oil', share: 1 }),
    josef('2025-10-14T09:32', { kind: 'change', fluid: 'coolant', share: 1 }),
    josef('2025-10-14T09:50', { kind: 'check', check: 'raw-water', ok: true }),
    ...aboard.map(([spare, count], i) =>
      nell(`2025-10-15T10:${String(10 + 2 * i)}`, { kind: 'count', spare, count }),
    ),
  ];
}

function pencils(): Happening[] {
  const looked = (at: string, look: Omit<Fields<'anode'>, 'anode'>) =>
    josef(at, { kind: 'anode', anode: 'pencil', ...look });
  const renewed = (at: string, note: string) => [
    josef(at, { kind: 'renew', anode: 'pencil', from: 'pencil-anode' }),
    josef(at, { kind: 'remark', item: 'pencil', text: note }),
  ];
  return [
    looked('2025-10-16T09:00', { share: 1 }),
    looked('2025-11-14T09:30', { share: 0.78 }),
    looked('2025-12-16T10:00', { diameterMm: 7.3, lengthMm: 41 }),
    looked('2026-01-04T10:10', { share: 0.3 }),
    ...renewed('2026-01-04T10:30', 'Engine cold, seacock shut; open again, tag off the key.'),
    josef('2026-01-04T16:20', { kind: 'check', check: 'raw-water', ok: true }),
    looked('2026-02-03T11:00', { massKg: 0.019 }),
    looked('2026-03-05T10:00', { share: 0.5 }),
    looked('2026-03-25T10:20', { massKg: 0.0085, flakes: true }),
    ...renewed('2026-03-25T10:40', 'Came out in two pieces. Fished the end out with wire.'),
    josef('2026-03-25T16:40', { kind: 'check', check: 'raw-water', ok: true }),
    looked('2026-04-25T10:00', { share: 0.75 }),
    looked('2026-05-25T09:30', { diameterMm: 7.4, lengthMm: 41 }),
    looked('2026-06-13T15:20', { share: 0.35 }),
    ...renewed(
      '2026-06-13T15:40',
      'Third one since the launch. Engine not run since: water from the exhaust still to be looked at.',
    ),
  ];
}

function otherAnodes(): Happening[] {
  const seen = (at: string, shaft: number, hull: number) => [
    nell(at, { kind: 'anode', anode: 'shaft-anode', share: shaft }),
    nell(at, { kind: 'anode', anode: 'hull-anode', share: hull }),
  ];
  return [
    ...seen('2025-10-14T08:00', 1, 1),
    ...seen('2025-12-16T12:10', 0.9, 0.9),
    ...seen('2026-03-16T12:30', 0.7, 0.75),
    ...seen('2026-05-22T11:40', 0.5, 0.6),
  ];
}

function services(): Happening[] {
  return [
    josef('2026-02-10T09:30', {
      kind: 'service',
      service: 'oil-change',
      uses: [
        { spare: 'oil-filter', count: 1 },
        { spare: 'engine-oil-can', count: 4.5 },
      ],
    }),
    josef('2026-02-10T10:20', { kind: 'change', fluid: 'engine-oil', share: 1 }),
    josef('2026-02-11T09:40', {
      kind: 'service',
      service: 'primary-change',
      uses: [{ spare: 'primary-filter', count: 1 }],
    }),
  ];
}

function uses(): Happening[] {
  const used = (at: string, spare: string, count: number, text: string) =>
    josef(at, { kind: 'use', spare, count, text });
  const impeller: Said = { kind: 'service', service: 'impeller-change', uses: [] };
  const gas = [
    '2025-10-30',
    '2025-11-25',
    '2025-12-20',
    '2026-01-13',
    '2026-02-09',
    '2026-03-08',
    '2026-04-03',
    '2026-04-29',
    '2026-05-26',
  ];
  return [
    used('2025-11-09T11:00', 'drive-belt', 1, 'Glazed, and slipping when the bank is low.'),
    used('2025-11-20T15:10', 'hose-clip', 2, 'Galley drain.'),
    used('2025-12-02T18:30', 'fuse', 1, 'Anchor light.'),
    used('2026-01-14T10:00', 'impeller', 1, 'Two blades gone; both found in the hose, none left behind.'),
    josef('2026-01-14T10:50', impeller),
    josef('2026-01-14T11:20', { kind: 'check', check: 'raw-water', ok: true }),
    used('2026-02-12T12:00', 'hose-clip', 1, 'Rusted through, cockpit drain.'),
    used('2026-03-09T19:40', 'fuse', 2, 'Saloon lights; chafed wire found behind the lining and mended.'),
    used('2026-03-22T09:10', 'float-switch', 1, 'Stuck down.'),
    used('2026-04-02T10:30', 'hose-clip', 2, 'Heads.'),
    used('2026-04-20T10:00', 'primary-filter', 1, 'Gauge in the red after filling at the quay.'),
    josef('2026-04-20T10:40', { kind: 'service', service: 'primary-change', uses: [] }),
    used('2026-05-05T09:20', 'impeller', 1, 'Weed across the intake, ran dry half a minute.'),
    josef('2026-05-05T10:00', impeller),
    josef('2026-05-05T10:20', { kind: 'check', check: 'raw-water', ok: true }),
    used('2026-05-15T20:00', 'fuse', 1, 'Chart table lamp.'),
    ...gas.map((day) => used(`${day}T18:10`, 'gas-bottle', 1, 'Empty.')),
  ];
}

function stowings(): Happening[] {
  const stowed = (day: string, ...things: readonly (readonly [string, number, number])[]) =>
    things.map(([spare, count, cost], i) =>
      nell(`${day}T14:${String(10 + 3 * i)}`, { kind: 'stow', spare, count, cost }),
    );
  return [
    ...stowed('2025-11-14', ['gas-bottle', 1, 29]),
    ...stowed('2025-12-16', ['gas-bottle', 2, 58], ['gear-oil-can', 1, 11], ['drive-belt', 1, 19]),
    ...stowed('2026-01-11', ['gas-bottle', 1, 29], ['gear-oil-can', 1, 11]),
    ...stowed('2026-02-08', ['gas-bottle', 1, 29], ['engine-oil-can', 5, 35], ['pencil-anode', 1, 6]),
    ...stowed('2026-03-13', ['gas-bottle', 2, 60], ['primary-filter', 1, 16]),
    ...stowed(
      '2026-04-17',
      ['gas-bottle', 1, 30],
      ['gear-oil-can', 1, 12],
      ['float-switch', 1, 34],
      ['fuse', 4, 4],
    ),
    ...stowed('2026-05-03', ['gas-bottle', 1, 30], ['coolant-can', 1, 6]),
    ...stowed('2026-06-03', ['gas-bottle', 1, 30], ['hose-clip', 5, 10]),
  ];
}

function counts(): Happening[] {
  const counted = (at: string, spare: string, count: number, text?: string) =>
    nell(at, { kind: 'count', spare, count, ...(text === undefined ? {} : { text }) });
  return [
    counted('2026-03-14T15:00', 'fuse', 6, 'One fewer than the book says.'),
    counted('2026-03-14T15:04', 'hose-clip', 9),
    counted('2026-03-14T15:06', 'secondary-filter', 2),
    counted('2026-03-14T15:09', 'oil-filter', 2),
    counted('2026-06-09T16:00', 'primary-filter', 2, 'One had got wet in its box: thrown out.'),
    counted('2026-06-09T16:03', 'impeller', 1),
  ];
}

function gearLeak(): Happening[] {
  const clue = (at: string, what: string, seen: boolean) =>
    josef(at, { kind: 'clue', item: 'gear-oil', clue: what, seen });
  return [
    josef('2025-11-04T10:10', { kind: 'leak', item: 'gear-oil', class: 'wet' }),
    josef('2026-01-19T10:30', {
      kind: 'leak',
      item: 'gear-oil',
      class: 'drops',
      text: 'At the output seal, after motoring.',
    }),
    josef('2026-05-08T07:20', {
      kind: 'remark',
      item: 'gear-oil',
      text: 'Nothing on the stick after nine hours under engine. Measured what went back in.',
    }),
    clue('2026-05-09T16:10', 'milky', false),
    clue('2026-05-10T10:20', 'flung-ring', true),
    clue('2026-05-10T10:25', 'hanging-drop', false),
    josef('2026-05-10T14:30', {
      kind: 'job',
      item: 'gear-oil',
      minutes: 90,
      cause: 'output-seal',
      text: 'Engine off and cold, key in my pocket. Nipped up the bolts of the output seal housing, a quarter turn each, crosswise. Wiped it all dry.',
    }),
    josef('2026-05-12T08:00', { kind: 'leak', item: 'gear-oil', class: 'wet', text: 'A shine, no drop.' }),
  ];
}

function monthlyLooks(): Happening[] {
  const days = [
    '2025-10-17',
    '2025-11-16',
    '2025-12-18',
    '2026-01-20',
    '2026-02-18',
    '2026-03-20',
    '2026-04-19',
  ];
  const seacocks = [...days, '2026-05-18'];
  const rig = ['2025-10-18', '2025-12-17', '2026-02-15', '2026-03-31', '2026-05-17'];
  return [
    ...days.map((day) => nell(`${day}T10:40`, { kind: 'check', check: 'bilge-float', ok: true })),
    ...seacocks.map((day) => nell(`${day}T10:55`, { kind: 'check', check: 'seacocks-worked', ok: true })),
    ...rig.map((day) => josef(`${day}T13:30`, { kind: 'check', check: 'rig-look', ok: true })),
  ];
}

function datedThings(): Happening[] {
  return [
    nell('2025-10-15T11:10', { kind: 'dated', item: 'fire-blanket', expires: '2030-12-31' }),
    nell('2026-03-13T15:30', { kind: 'dated', item: 'flares', expires: '2029-03-31' }),
    josef('2026-04-18T12:00', { kind: 'dated', item: 'raft', expires: '2027-05-31' }),
  ];
}

function decisions(): Happening[] {
  return [
    nell('2026-04-30T07:30', {
      kind: 'decision',
      verdict: 'hold',
      score: null,
      choice: 'stay',
      text: 'No forecast heard: the set was off. Not going on a guess.',
    }),
    nell('2026-06-10T08:10', {
      kind: 'decision',
      verdict: 'hold',
      score: null,
      choice: 'stay',
      text: 'Southerly on the way. Oil, water, fuel all good: we wait.',
    }),
  ];
}

function weatherHeard(): Happening[] {
  const seen = (at: string, wind: number, gust: number, dir: number, seas: number, pressure: number) =>
    nell(at, { kind: 'weather', wind, gust, dir, seas, pressure });
  return [
    seen('2026-06-01T18:30', 10, 13, 250, 0.6, 1021),
    seen('2026-06-02T05:20', 9, 12, 240, 0.5, 1021),
    seen('2026-06-02T12:00', 12, 16, 240, 0.8, 1020),
    seen('2026-06-06T12:00', 5, 7, 180, 0.4, 1018),
    seen('2026-06-09T18:00', 12, 16, 160, 0.7, 1013),
    seen('2026-06-10T07:05', 15, 20, 165, 0.9, 1012),
    seen('2026-06-10T19:00', 18, 24, 170, 1.1, 1008),
    seen('2026-06-11T06:30', 19, 26, 180, 1.3, 1005),
    seen('2026-06-12T08:00', 26, 36, 200, 0.6, 1001),
    seen('2026-06-13T07:30', 15, 20, 270, 0.5, 1009),
    seen('2026-06-14T06:55', 9, 12, 280, 0.7, 1017),
  ];
}

function remarks(): Happening[] {
  return [
    nell('2025-10-26T18:20', {
      kind: 'remark',
      text: 'First night in the bight since August. Good to be quiet.',
    }),
    nell('2025-12-24T16:00', {
      kind: 'remark',
      text: 'Rain tank overflowing. Washed everything that holds still.',
    }),
    nell('2026-01-31T08:30', {
      kind: 'remark',
      text: 'Up again after a week of flu. Nobody has looked at anything.',
    }),
    josef('2026-02-17T10:10', {
      kind: 'remark',
      text: 'Hour meter stopped at 3352; new one fitted, it begins at nothing.',
    }),
    josef('2026-03-03T07:40', {
      kind: 'remark',
      text: 'Laptop went off last evening while typing: battery switch knocked with an elbow.',
    }),
    josef('2026-04-20T11:00', {
      kind: 'remark',
      item: 'fuel',
      text: 'Drained half a cup of dirty water from the bowl into a jar. Jar to the quay.',
    }),
    nell('2026-06-13T13:10', {
      kind: 'remark',
      text: 'Back in the bight. Swell still working in, anchor well dug.',
    }),
  ];
}

function slips(): Happening[] {
  return [
    { ...josef('2026-03-02T18:05', { kind: 'check', check: 'charging', value: 14.2 }), torn: true },
    josef('2026-03-03T07:35', { kind: 'check', check: 'charging', value: 14.2 }),
  ];
}
