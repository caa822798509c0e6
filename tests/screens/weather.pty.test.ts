import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type Forecast, forecastFileName } from '../../source/forecast/forecast.ts';
import type { VerdictDocument } from '../../source/words/document.ts';
import { hundred } from '../../source/words/say.ts';
import { steadyForecast } from '../helpers/steady-forecast.ts';
import { openTerminal, type TestTerminal } from '../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const AT = '2026-06-10T07:30:00Z';
const RIGHT = '\u001b[C';

const folder = mkdtempSync(path.join(tmpdir(), 'hoveshort-weather-'));
const held = path.join(folder, 'held');
const bolder = path.join(folder, 'bolder');
const env = { XDG_CONFIG_HOME: path.join(folder, 'config'), XDG_STATE_HOME: path.join(folder, 'state') };
const open: TestTerminal[] = [];

/** Gusts near the limit for a day, then an easy spell. Where she lies it is quiet throughout. */
function invented(): Forecast {
  const hard = { hours: 24, wind: [17, 17], gust: 28, dir: 290, seas: [1.3, 1.3] } as const;
  const easy = { hours: 60, wind: [10, 12], gust: 15, dir: 280, seas: [0.8, 0.8] } as const;
  const forecast = steadyForecast(Date.parse('2026-06-10T02:30:00Z'), [hard, easy]);
  const quiet = steadyForecast(Date.parse(forecast.issuedAt), [
    { hours: 84, wind: [10, 12], seas: [0.5, 0.5] },
  ]);
  const lying = quiet.places.map((place) => ({ ...place, place: 'Dovetail Bight' }));
  return { ...forecast, places: [...lying, ...forecast.places] };
}

beforeAll(() => {
  const forecast = invented();
  for (const boat of [held, bolder]) {
    cpSync('sample-boat', boat, { recursive: true });
    rmSync(path.join(boat, 'forecasts'), { recursive: true, force: true });
    mkdirSync(path.join(boat, 'forecasts'));
    writeFileSync(path.join(boat, 'forecasts', forecastFileName(forecast)), JSON.stringify(forecast));
  }
  const file = path.join(bolder, 'boat.json');
  const read = JSON.parse(readFileSync(file, 'utf8'));
  writeFileSync(file, JSON.stringify({ ...read, limits: { ...read.limits, gust: read.limits.gust + 3 } }));
});
afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function board(size = { columns: 120, rows: 36 }, more = {}): Promise<TestTerminal> {
  const args = [PROGRAM, '--boat', held, '--at', AT];
  const terminal = openTerminal(process.execPath, args, { ...size, env: { ...env, ...more } });
  open.push(terminal);
  const answered = (screen: string) => /\s(HOLD|NOT READY|GO)\s/u.test(screen) && !screen.includes('working');
  await terminal.until(answered, 'the board');
  return terminal;
}

const known = new Map<string, VerdictDocument>();

function verdictOf(boat: string): VerdictDocument {
  const document = known.get(boat) ?? verdictRun(boat);
  known.set(boat, document);
  return document;
}

function verdictRun(boat: string): VerdictDocument {
  const args = [PROGRAM, 'verdict', '--json', '--boat', boat, '--at', AT];
  try {
    return JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8' }));
  } catch (ended) {
    // Hold and not ready are told by the exit status as well.
    return JSON.parse((ended as { stdout: string }).stdout);
  }
}

const flat = (screen: string) => screen.replace(/\s+/gu, ' ');

describe.skipIf(!existsSync(PROGRAM))('the weather in a terminal (skipped until built)', () => {
  it('the board counts down to the window of the forecast', async () => {
    const document = verdictOf(held);
    expect(document.verdict).toBe('hold');
    expect(document.windows.length).toBeGreaterThan(0);
    const terminal = await board();
    const page = flat(terminal.screen().join('\n'));
    expect(page).toContain('forecast 5 h old');
    expect(page).toMatch(/Opens in [^.]*, for \d+ h; closes: /u);
    expect(page).toContain('· night');
  });

  it.each([
    { columns: 120, rows: 36 },
    { columns: 80, rows: 24 },
    { columns: 40, rows: 12 },
  ])('w shows it at $columns x $rows with the figures of verdict --json, Escape goes back', async (size) => {
    const document = verdictOf(held);
    const terminal = await board(size);
    const before = terminal.screen().join('\n');
    terminal.type('w');
    const now = flat(await terminal.until((screen) => screen.includes('LEAVING now'), 'the weather'));
    expect(now).toContain(`LEAVING now: ${hundred(document.score.now!)}`);
    expect(now).toContain('Breaks first: ');
    terminal.type(RIGHT.repeat(3));
    const later = await terminal.until((screen) => screen.includes('in 3 h'), 'three hours later');
    expect(flat(later)).toContain(`in 3 h: ${hundred(document.curve[3]!.score!)}`);
    terminal.type('\u001b');
    await terminal.until((screen) => screen === before, 'the board as it was');
  });

  it('a trial answers as the boat file would with that limit, and leaves it as it is', async () => {
    const file = path.join(held, 'boat.json');
    const before = readFileSync(file, 'utf8');
    const [own, tried] = [verdictOf(held), verdictOf(bolder)];
    expect(tried.score.now).not.toBe(own.score.now);
    const terminal = await board();
    terminal.type('w\t+++');
    const page = flat(
      await terminal.until((screen) => screen.includes('dots: by the boat file'), 'the trial'),
    );
    expect(page).toContain('A TRIAL: gusts 33 kn (boat file: 30 kn)');
    expect(page).toContain(`LEAVING now: ${hundred(tried.score.now!)}`);
    expect(page).toContain(`; by the boat file ${hundred(own.score.now!)}`);
    terminal.type('0');
    await terminal.until((screen) => !screen.includes('A TRIAL'), 'the boat file again');
    expect(readFileSync(file, 'utf8')).toBe(before);
  });

  it('without UTF-8 it is the same page in bare letters', async () => {
    const terminal = await board(undefined, { LANG: 'C' });
    terminal.type('w');
    const whole = (screen: string) => screen.includes('LEAVING now') && screen.includes('limit 30 kn');
    const page = await terminal.until(whole, 'the weather');
    expect(page).toMatch(/^[\n -~]*$/u);
  });
});
