import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import type { VerdictDocument } from '../../../source/words/document.ts';
import { openTerminal, type TestTerminal } from '../../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const home = mkdtempSync(path.join(tmpdir(), 'hoveshort-first-'));
const env = {
  HOME: home,
  XDG_CONFIG_HOME: path.join(home, 'config'),
  XDG_STATE_HOME: path.join(home, 'state'),
};
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

function firstRun(columns = 80, rows = 24): TestTerminal {
  const terminal = openTerminal(process.execPath, [PROGRAM], { columns, rows, env, cwd: home });
  open.push(terminal);
  return terminal;
}

const shows = (text: string) => (screen: string) => screen.includes(text);

/** What a crew answers of a boat that is full and well, by the beginning of the question; all else is taken as it stands. */
const ANSWERS: readonly (readonly [question: string, answer: string])[] = [
  ['Her name', 'Tern'],
  ['Main engine: hours', '3412'],
  ['Engine oil now', 'full'],
  ['Gear oil now', 'full'],
  ['Coolant now', 'full'],
  ['Fuel now', 'full'],
  ['Fresh water now', 'full'],
  ['Start battery', '12.7'],
  ['House bank at dawn', '12.6'],
  ['Charging', '14'],
  ['Bilge pump', '1'],
  ['Steering', 'y'],
];

describe.skipIf(!existsSync(PROGRAM))(
  'the built program where no boat is known (skipped until built)',
  () => {
    it('goes from nothing to a verdict in under 120 keys, and the new boat is fit', async () => {
      const terminal = firstRun();
      let keys = 0;
      const type = (text: string) => {
        keys += text.length;
        terminal.type(text);
      };
      let asked = askedOn(await terminal.until((screen) => /> What drives her[^▏]*▏/u.test(screen)));
      for (let row = 2; ; row += 1) {
        type('\r');
        const before = asked;
        // A frame may come in two pieces: the question is there once what is typed under it is.
        const next = (now: string) =>
          now.includes(` ${row} of `) &&
          !['', before].includes(askedOn(now)) &&
          /> (?:Enter makes|[^▏]*▏)/u.test(now);
        asked = askedOn(await terminal.until(next, `question ${row}`));
        type(ANSWERS.find(([question]) => asked.startsWith(question))?.[1] ?? '');
        if (asked.startsWith('Enter makes')) break;
      }
      type('\r');
      await terminal.until((screen) => screen.includes('HOLD') && screen.includes('TERN'), 'the verdict');
      expect(keys).toBeLessThan(120);
      terminal.type('q');
      expect((await terminal.ended).exitCode).toBe(0);
      const { reasonKinds, score, items } = verdictOf(path.join(home, 'tern'));
      expect(reasonKinds).toContain('fit');
      expect(score.boat).toBeGreaterThanOrEqual(95);
      expect(items.filter(({ state, kind }) => kind === 'fluid' && state !== 'fit')).toEqual([]);
      // From here on her boat is the one that is opened.
      const again = firstRun();
      await again.until(shows('TERN'));
    }, 60_000);
  },
);

/** The question the screen is at. */
function askedOn(screen: string): string {
  return /> (.*)/u.exec(screen)?.[1] ?? '';
}

function verdictOf(folder: string): VerdictDocument {
  const args = [PROGRAM, 'verdict', '--json', '--boat', folder];
  try {
    return JSON.parse(
      execFileSync(process.execPath, args, { encoding: 'utf8', env: { ...process.env, ...env } }),
    );
  } catch (ended) {
    return JSON.parse((ended as { stdout: string }).stdout);
  }
}
