import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { writeLine } from '../../source/logbook/line.ts';
import { type Stream, stream } from '../../source/maths/stream.ts';

const SEED = 20260614;
const WRITER = 'b3nchm4k';
const YEARS = 10;
const MS_A_MINUTE = 60_000;
/** As the program begins a new segment of its own log. */
const SEGMENT_BYTES = 8 * 1024 * 1024;

/** The last morning of every log made here: a good one to ask about. */
export const LAST_MORNING = '2026-06-14T07:30:00Z';

/** The sample boat's ids, and what her fluids truly do: marks in L, loss in L an engine hour and a day. */
const FLUIDS = [
  { id: 'engine-oil', low: 3.5, full: 4.5, run: 0.008, rest: 0, can: 'engine-oil-can' },
  { id: 'gear-oil', low: 1, full: 1.2, run: 0.004, rest: 0.001, can: 'gear-oil-can' },
  { id: 'coolant', low: 5.5, full: 6, run: 0.0012, rest: 0.0006, can: 'coolant-can' },
  { id: 'fuel', low: 0, full: 180, run: 2.45, rest: 0, can: null },
  { id: 'water', low: 0, full: 260, run: 0, rest: 12.3, can: null },
] as const;
const MEASURED = [
  { id: 'start-battery', usual: 12.66, sd: 0.03 },
  { id: 'house-bank', usual: 12.45, sd: 0.05 },
  { id: 'bilge-pump', usual: 1, sd: 0.3 },
  { id: 'charging', usual: 14.2, sd: 0.08 },
];
const BEFORE_LEAVING = ['raw-water', 'seacocks-set', 'steering', 'decks-hatches', 'anchor-ready'];
const CANS = ['engine-oil-can', 'gear-oil-can', 'coolant-can'];
const ANODES = ['pencil', 'shaft-anode', 'hull-anode'];
const SERVICES = ['oil-change', 'primary-change', 'secondary-change', 'gear-oil-change', 'impeller-change'];
const SPARES = ['fuse', 'hose-clip', 'impeller', 'primary-filter', 'gas-bottle'];

type Said = Readonly<Record<string, unknown>> & { readonly kind: string };

/** Makes a boat folder with the sample boat's file and ten years of log, exactly `count` entries, the same every time. */
export function makeBoat(folder: string, count: number): void {
  mkdirSync(join(folder, 'log'), { recursive: true });
  writeFileSync(join(folder, 'boat.json'), readFileSync('sample-boat/boat.json'));
  const segments: Uint8Array[][] = [[]];
  let bytes = 0;
  for (const line of linesOf(lifeOf(count))) {
    if (bytes > SEGMENT_BYTES) {
      segments.push([]);
      bytes = 0;
    }
    segments.at(-1)!.push(line);
    bytes += line.length;
  }
  for (const [i, lines] of segments.entries()) {
    const name = i === 0 ? WRITER : `${WRITER}-${String(i + 1).padStart(4, '0')}`;
    writeFileSync(join(folder, 'log', `${name}.ndjson`), Buffer.concat(lines));
  }
}

interface Happened {
  readonly at: number;
  readonly said: Said;
}

function linesOf(life: readonly Happened[]): readonly Uint8Array[] {
  let p = '00000000';
  return life.map(({ at, said }, i) => {
    const instant = new Date(at).toISOString().replace('.000', '');
    const rec = new Date(at + 20_000 + (i % 997)).toISOString();
    const frame = { v: 1, id: `${WRITER}-${i + 1}`, p, lc: i + 1, at: instant, rec, by: 'Nell' };
    const { bytes, crc } = writeLine({ ...frame, ...said }, crc32);
    p = crc;
    return bytes;
  });
}

/** Rounds spread evenly over the years up to the last morning, each as it is entered aboard; of them the last `count` entries. */
function lifeOf(count: number): readonly Happened[] {
  const chance = stream(SEED, 'bench/life');
  const rounds = Math.ceil(count / LEAST_A_ROUND);
  const days = (YEARS * 365.25) / (count / USUAL_A_ROUND);
  const boat = { hours: 3000, levels: FLUIDS.map(({ full }) => full) };
  const last = Date.parse(LAST_MORNING) - 60 * MS_A_MINUTE;
  const life = Array.from({ length: rounds }, (_, round) => {
    const starts = last - Math.floor((rounds - 1 - round) * days * 1440) * MS_A_MINUTE;
    return oneRound(boat, round, days, chance).map((said, i) => ({ at: starts + i * MS_A_MINUTE, said }));
  });
  return life.flat().slice(-count);
}

/** Entries of a round by `oneRound`. */
const LEAST_A_ROUND = 10;
const USUAL_A_ROUND = 13;

interface Boat {
  hours: number;
  readonly levels: number[];
}

function oneRound(boat: Boat, round: number, days: number, chance: Stream): Said[] {
  const ran = 0.7 * days * (0.5 + chance.uniform());
  boat.hours += ran;
  const entered: Said[] = [{ kind: 'hours', engine: 'main', reading: Number(boat.hours.toFixed(1)) }];
  for (const [place, { id, low, full, run, rest, can }] of FLUIDS.entries()) {
    const marks = full - low;
    boat.levels[place] = Math.max(low, boat.levels[place]! - run * ran - rest * days);
    const level = boat.levels[place]! + 0.02 * marks * chance.normal();
    const found =
      can === null ? { level: whole(Math.max(0, level)) } : { share: part((level - low) / marks) };
    entered.push({ kind: 'dip', fluid: id, ...found });
    if (boat.levels[place]! > low + 0.5 * marks) continue;
    const amount = Number((full - boat.levels[place]!).toFixed(2));
    boat.levels[place] = full;
    entered.push({ kind: 'topup', fluid: id, amount, ...(can === null ? {} : { share: 1, from: can }) });
  }
  for (const { id, usual, sd } of MEASURED)
    entered.push({ kind: 'check', check: id, value: Number((usual + sd * chance.normal()).toFixed(2)) });
  if (chance.uniform() < 0.3) entered.push(weather(chance));
  entered.push(...nowAndThen(round, chance));
  return entered;
}

/** What does not come every round: a passage, work, stores, a remark. */
function nowAndThen(round: number, chance: Stream): Said[] {
  const every = (rounds: number, said: (time: number) => readonly Said[]) =>
    round % rounds === 0 ? said(round / rounds) : [];
  return [
    ...every(5, () => [{ kind: 'remark', text: `Quiet morning ${round}, light air off the land.` }]),
    ...every(9, () => CANS.map((spare) => ({ kind: 'count', spare, count: 8 }))),
    ...every(11, () => BEFORE_LEAVING.map((check) => ({ kind: 'check', check, ok: true }))),
    ...every(11, () => [{ kind: 'left' }, { kind: 'arrived', anchorage: 'dovetail-bight' }]),
    ...every(30, (time) => [
      { kind: 'anode', anode: ANODES[time % 3]!, share: part(1 - 0.4 * chance.uniform()) },
    ]),
    ...every(40, (time) => [{ kind: 'stow', spare: SPARES[time % SPARES.length]!, count: 1 }]),
    ...every(45, (time) => [{ kind: 'use', spare: SPARES[time % SPARES.length]!, count: 1 }]),
    ...every(60, (time) => [{ kind: 'service', service: SERVICES[time % SERVICES.length]!, uses: [] }]),
    ...every(120, () => ANODES.map((anode) => ({ kind: 'renew', anode }))),
  ];
}

function weather(chance: Stream): Said {
  const wind = Math.max(2, Math.round(11 + 5 * chance.normal()));
  return {
    kind: 'weather',
    wind,
    gust: Math.round(wind * 1.3),
    dir: 10 * Math.floor(36 * chance.uniform()),
    seas: Number((wind * 0.04).toFixed(1)),
    pressure: Math.round(1014 + 6 * chance.normal()),
  };
}

function part(value: number): number {
  return Number(value.toFixed(2));
}

function whole(value: number): number {
  return Math.round(value);
}
