import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { readBoat } from '../../source/boat/read.ts';
import { readArguments } from '../../source/commands/arguments.ts';
import { draftsFromLines } from '../../source/commands/draft-lines.ts';
import { COMMANDS } from '../../source/commands/table.ts';
import { type Disk, realDisk } from '../../source/files/disk.ts';
import { scan } from '../../source/files/scan.ts';
import { csvTemplate } from '../../source/forecast/csv.ts';
import { readForecast } from '../../source/forecast/recognise.ts';
import { draftFromEdited } from '../../source/logbook/accepted.ts';
import { mostLineBytes } from '../../source/logbook/line.ts';
import { foldLog } from '../../source/logbook/order.ts';
import { stream } from '../../source/maths/stream.ts';
import type { good } from '../../source/trouble.ts';
import { sayTrouble } from '../../source/words/troubles.ts';
import { typedDraft } from '../../source/words/typed-draft.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { COASTAL } from '../helpers/a-bulletin.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aLaptop, crcOf } from '../helpers/a-laptop.ts';
import { boatText } from '../helpers/broken-boat.ts';
import { anOutcome, found, type Outcome } from './campaign.ts';

type Chance = () => number;

const now = Date.parse('2026-02-03T07:40:00Z');
const zone = 'UTC';
/** One short text takes microseconds to milliseconds; this is a hang. */
const mostMs = 1000;

const hugeLetters = 3_000_000;
/** Linux takes no longer argument. */
const mostArgumentLetters = 128 * 1024;

/** What breaks parsers: brackets, quotes, escapes, numbers out of range, controls, half characters. */
const PIECES = [
  '{',
  '}',
  '[',
  ']',
  '"',
  ',',
  ':',
  '//',
  '/*',
  '\\',
  '\\u12',
  '1e999',
  '-',
  '=',
  ' ',
  'null',
  '\n',
  '\r\n',
  '\u0000',
  '\u202e',
  '"__proto__":',
  '"id":',
  '{}',
  '[]',
  'true',
  '0.1.2',
  '\ud800',
  '\ufeff',
  '9'.repeat(30),
  '((((((((',
  'é',
  '--',
  '--at=',
  '1/0',
  '%',
  'kn',
  'gusts',
  '99',
  '-0',
  '\u001b[2J',
];

const whimbrel = aBoat();
const laptop = aLaptop('k7m2q9xd');
const lines = healthyLog.map((draft) => {
  laptop.write(draft);
  return Buffer.from(laptop.bytes.at(-1)!).toString();
});
const hourly = JSON.stringify({
  latitude: 41,
  longitude: -30,
  utc_offset_seconds: 0,
  hourly_units: { time: 'iso8601', wind_speed_10m: 'kn', wind_direction_10m: '°' },
  hourly: {
    time: ['2026-02-03T08:00', '2026-02-03T09:00'],
    wind_speed_10m: [12, 14],
    wind_direction_10m: [120, 130],
  },
});
const rows = 'se 15-20 g28 4-6ft 7s\n=\ns 20 g30 2m\n.\n';
const commands = [
  'verdict --json --seed 7 --at 2026-02-03T07:40Z',
  'record topup fluid=gear-oil amount=300ml share=full at=yesterday',
  'log --item gear-oil --since 2026-01-01 --kind topup',
  'record dip fluid=fuel level=1/2 how=gauge',
  'record weather wind=f6 gust=35 dir=so seas=2m',
];

/** One family of texts: what is sound, and what reads it. What it returns is put into words, so that those are tried too. */
const PARSERS: { readonly [name: string]: { readonly sound: readonly string[]; read(text: string): void } } =
  {
    boat: { sound: [boatText()], read: (text) => said(readBoat(text, 'boat.json')) },
    log: {
      sound: [lines.slice(0, 3).join(''), lines.slice(3).join('')],
      read: (text) => {
        const { lines: read } = scan(inMemory(Buffer.from(text)), 0, 0, crcOf);
        const { said: troubles, quiet } = foldLog([
          { name: 'log/k7m2q9xd.ndjson', writer: 'k7m2q9xd', lines: read },
        ]);
        for (const trouble of [...troubles, ...quiet]) sayTrouble(trouble);
        for (const line of read) if (line.how === 'edited') said(draftFromEdited(line, () => false));
      },
    },
    input: {
      sound: [healthyLog.map((draft) => JSON.stringify(draft)).join('\n')],
      read: (text) => {
        for (const trouble of draftsFromLines(text).troubles) sayTrouble(trouble);
      },
    },
    forecast: {
      sound: [COASTAL, hourly, rows, csvTemplate()],
      read: (text) => {
        const bytes = Buffer.from(text);
        const sha256 = createHash('sha256').update(bytes).digest('hex');
        said(
          readForecast(bytes, {
            now,
            timeZone: zone,
            bare: { wind: 'kn', seas: 'm' },
            sha256,
            issuedAt: now,
          }),
        );
      },
    },
    arguments: {
      sound: commands,
      read: (text) => {
        const words = text.split(' ');
        said(readArguments(words, COMMANDS, { now: () => now, zone }));
        const loaded = {
          boat: whimbrel,
          entries: [],
          struck: [],
          forecasts: [],
          troubles: [],
          quiet: [],
          readOnly: null,
        };
        for (const trouble of typedDraft(words.slice(1), { loaded, now, zone, by: null }).troubles)
          sayTrouble(trouble);
      },
    },
  };

/** As much of a disk as reading a log takes. */
function inMemory(bytes: Buffer): Disk {
  const read: Disk['read'] = (_, into, position) => bytes.copy(into, 0, position, position + into.length);
  return { ...realDisk, read };
}

/** Mutated texts through every parser: none is thrown at, none takes a second. Every ten-thousandth is huge. */
export function parseMany(count: number, seed: number): Outcome {
  const outcome = anOutcome();
  for (let n = 0; n < count; n += 1) {
    outcome.count += 1;
    const { name, text, read } = textOf(n, seed);
    const from = performance.now();
    try {
      read(text);
    } catch (error) {
      found(
        outcome,
        'lost',
        `${name}, text ${n} of seed ${seed}: ${error instanceof Error ? error.stack : error}`,
      );
    }
    const took = performance.now() - from;
    if (took > (text.length > hugeLetters / 2 ? 20 * mostMs : mostMs))
      found(outcome, 'undetected', `${name}, text ${n} of seed ${seed}: ${took.toFixed(0)} ms`);
  }
  return outcome;
}

/** The n-th text, and what reads it. */
export function textOf(n: number, seed: number) {
  const chance = stream(seed, `parsers ${n}`).uniform;
  const names = Object.keys(PARSERS);
  const name = names[n % names.length]!;
  const { sound, read } = PARSERS[name]!;
  const isHuge = n >= 10_000 && n % 10_000 < names.length;
  const letters = name === 'arguments' ? mostArgumentLetters : hugeLetters;
  return { name, read, text: isHuge ? huge(sound[0]!, letters, chance) : mutated(sound, chance) };
}

function said(result: ReturnType<typeof readBoat> | ReturnType<typeof good<unknown>>): void {
  if (!result.ok) for (const trouble of result.troubles) sayTrouble(trouble);
}

function mutated(sound: readonly string[], chance: Chance): string {
  let text = pick(sound, chance);
  if (chance() < 0.3) text = text.slice(0, Math.floor(chance() * text.length));
  const edits = 1 + Math.floor(chance() * 5);
  for (let i = 0; i < edits; i += 1) {
    const at = Math.floor(chance() * (text.length + 1));
    const cut = chance() < 0.5 ? 0 : Math.floor(chance() * 30);
    const piece =
      chance() < 0.7
        ? pick(PIECES, chance)
        : text.slice(at, at + Math.floor(chance() * 40)) + pick(PIECES, chance);
    text = text.slice(0, at) + piece + text.slice(at + cut);
  }
  return text;
}

function huge(sound: string, letters: number, chance: Chance): string {
  const piece = chance() < 0.5 ? pick(PIECES, chance) : sound.slice(0, Math.min(sound.length, mostLineBytes));
  return sound + piece.repeat(Math.ceil(letters / piece.length));
}

function pick<T>(from: readonly T[], chance: Chance): T {
  return from[Math.floor(chance() * from.length)]!;
}

/** Run as a process of its own, with little memory: `node parse-many.ts <count> <seed>` prints the outcome and its peak memory. */
if (import.meta.main) {
  const [count = 0, seed = 1] = process.argv.slice(2).map(Number);
  const outcome = parseMany(count, seed);
  process.stdout.write(JSON.stringify({ outcome, peakMb: peakMb() }));
}

/** Where the system tells it, its own alone: what `resourceUsage` gives begins at that of the process it was started from. */
function peakMb(): number {
  const status = '/proc/self/status';
  const told = existsSync(status) ? /^VmHWM:\s*(\d+) kB$/mu.exec(readFileSync(status, 'utf8')) : null;
  return (told ? Number(told[1]) : process.resourceUsage().maxRSS) / 1024;
}
