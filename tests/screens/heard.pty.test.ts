import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, expect, it } from 'vitest';
import { openTerminal, type TestTerminal } from '../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const AT = '2026-06-11T08:30:00Z';
const home = mkdtempSync(path.join(tmpdir(), 'hoveshort-heard-'));
const boat = path.join(home, 'boat');
const env = {
  XDG_CONFIG_HOME: path.join(home, 'config'),
  XDG_STATE_HOME: path.join(home, 'state'),
  TZ: 'UTC',
};
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

it('a forecast typed on the built board is on the disk and counts; another is chosen, and the shell agrees', async () => {
  cpSync('sample-boat', boat, { recursive: true });
  const args = [PROGRAM, '--boat', boat, '--at', AT];
  const terminal = openTerminal(process.execPath, args, { columns: 120, rows: 36, env });
  open.push(terminal);
  const done = (screen: string) => /\sHOLD\s/u.test(screen) && !screen.includes('working');
  await terminal.until(done, 'the board');
  terminal.type('w');
  await terminal.until((screen) => screen.includes('WEATHER'), 'the weather');
  terminal.type('t');
  await terminal.until((screen) => screen.includes('AS IT IS HEARD'), 'the page to type on');
  terminal.type('06:00\rse 15-20 g28 1.5m 7s\r=\r');
  await terminal.until(
    (screen) => screen.includes('tonight         =  SE, 15 to 20 kn'),
    'what was understood',
  );
  terminal.type('\r');
  await terminal.until((screen) => screen.includes('Enter again takes it in'), 'the question');
  terminal.type('\r');
  await terminal.until((screen) => screen.includes('the forecast is taken in'), 'the answer');
  expect(
    readdirSync(path.join(boat, 'forecasts')).filter((name) => name.startsWith('20260611T0600Z')),
  ).toHaveLength(1);
  await terminal.until((screen) => screen.includes('forecast 3 h old'), 'the new age');
  terminal.type('f');
  await terminal.until((screen) => /> \*\s+1 .* typed/u.test(screen), 'the forecasts');
  terminal.type('j');
  await terminal.until((screen) => /^> {4}2/mu.test(screen), 'the second');
  terminal.type('\r');
  await terminal.until((screen) => /> \*\s+2/u.test(screen), 'the choice');
  const verdict = JSON.parse(spawned(['verdict', '--json', '--boat', boat, '--at', '2026-06-11T08:31:00Z']));
  expect(verdict.forecast).toMatchObject({ issuedAt: '2026-06-11T00:00:00Z', chosen: true });
});

/** What the built program prints; `verdict` says hold by its status. */
function spawned(args: readonly string[]): string {
  try {
    return execFileSync(process.execPath, [PROGRAM, ...args], {
      encoding: 'utf8',
      env: { ...process.env, ...env },
    });
  } catch (ended) {
    return String((ended as { stdout: unknown }).stdout);
  }
}
