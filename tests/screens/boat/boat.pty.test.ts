import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { openTerminal, type TestTerminal } from '../../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const home = mkdtempSync(path.join(tmpdir(), 'hoveshort-boat-'));
const open: TestTerminal[] = [];

afterEach(() => {
  for (const terminal of open.splice(0)) terminal.close();
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** The board on a copy of the sample boat; `editor` is a line of shell with the file as $1. */
function board(name: string, editor: string): { terminal: TestTerminal; file: string } {
  const folder = path.join(home, name);
  cpSync('sample-boat', folder, { recursive: true });
  const script = path.join(home, `${name}.sh`);
  writeFileSync(script, `${editor}\n`);
  const env = {
    EDITOR: `sh ${script}`,
    VISUAL: '',
    XDG_CONFIG_HOME: path.join(home, 'c'),
    XDG_STATE_HOME: path.join(home, 's'),
  };
  const terminal = openTerminal(process.execPath, [PROGRAM, '--boat', folder], {
    columns: 100,
    rows: 30,
    env,
  });
  open.push(terminal);
  return { terminal, file: path.join(folder, 'boat.json') };
}

const shows = (text: string) => (screen: string) => screen.includes(text);
/** The same where it may run over several lines. */
const says = (text: string) => (screen: string) => screen.replace(/\s+/gu, ' ').includes(text);

describe.skipIf(!existsSync(PROGRAM))('the boat page of the built program (skipped until built)', () => {
  it('hands the terminal to the editor and takes it back, and reads the file again', async () => {
    const { terminal } = board(
      'edited',
      'printf "in the editor: "; read line; sed "s/\\"Gear oil\\"/\\"$line\\"/" "$1" > "$1.tmp" && mv "$1.tmp" "$1"',
    );
    await terminal.until(shows('PENNYWHIN'));
    terminal.type('bE');
    await terminal.until(shows('in the editor:'));
    expect(terminal.modes()).toMatchObject({ alternate: false, cursor: true, paste: false });
    terminal.type('Sump oil\r');
    await terminal.until(shows('    Sump oil'), 'the page with the new name');
    expect(terminal.modes()).toMatchObject({ alternate: true, cursor: false });
  });

  it('says the line where the editor left the file in trouble', async () => {
    const { terminal } = board(
      'broken',
      'sed "s/\\"low\\": 1.0,/\\"low\\": true,/" "$1" > "$1.tmp" && mv "$1.tmp" "$1"',
    );
    await terminal.until(shows('PENNYWHIN'));
    terminal.type('bE');
    const screen = await terminal.until(shows('boat.json, line '), 'the trouble with its line');
    expect(screen).toMatch(/fluids\[1\]\.low is true/iu);
  });

  it('changes an item in the file as it was written', async () => {
    const { terminal, file } = board('changed', 'true');
    const before = readFileSync(file, 'utf8');
    await terminal.until(shows('PENNYWHIN'));
    terminal.type('bj');
    await terminal.until(shows('> Main engine'));
    terminal.type('\r\u0015Old faithful\r');
    await terminal.until(shows('saved in boat.json: Old faithful'));
    expect(readFileSync(file, 'utf8')).toBe(before.replace('"Main engine"', '"Old faithful"'));
  });

  it('takes a list, a passage of two legs, and lets it go again, the rest of the file as it was', async () => {
    const { terminal, file } = board('walked', 'true');
    const before = readFileSync(file, 'utf8');
    await terminal.until(shows('PENNYWHIN'));
    terminal.type(`b${'\t'.repeat(5)}`);
    await terminal.until(shows('> Engine oil and filter'));
    terminal.type('\r\u001b[A\u001b[A');
    await terminal.until(shows('> uses '));
    terminal.type(', impellr 1');
    await terminal.until(says('"impellr" is not understood here.'));
    await terminal.until(says('It takes the id of a spare, and how many. Such as: impeller.'));
    terminal.type('\u0017\u0017impeller');
    await terminal.until(says('taken as: Oil filter 1; Engine oil in cans 4.5 L; Impeller 1'));
    terminal.type('\r');
    await terminal.until(shows('saved in boat.json: Engine oil and filter'));
    const used = before.replace(
      '[{ "spare": "oil-filter", "count": 1 }, { "spare": "engine-oil-can", "count": 4.5 }]',
      '[{ "spare": "oil-filter", "count": 1 }, { "spare": "engine-oil-can", "count": 4.5 }, { "spare": "impeller", "count": 1 }]',
    );
    expect(readFileSync(file, 'utf8')).toBe(used);

    terminal.type('Ga');
    await terminal.until(shows('ANOTHER PASSAGE'));
    terminal.type('Home again\tcandlefold\t');
    await terminal.until(shows('> leg 1, to'));
    terminal.type('47 31.2N 19 57.6W, 24 nm, Candlefold approach');
    await terminal.until(shows('leg 2, to'));
    terminal.type('\t\tDovetail Bight');
    await terminal.until(says("taken as: 47°06.0'N 20°36.0'W; Dovetail Bight; "));
    terminal.type('\r');
    await terminal.until(shows('saved in boat.json: Home again'));
    expect(JSON.parse(readFileSync(file, 'utf8')).passages.at(-1)).toEqual({
      id: 'home-again',
      name: 'Home again',
      legs: [
        { from: [47.76, -19.52], to: [47.52, -19.96], nm: 24, place: 'Candlefold approach' },
        { from: [47.52, -19.96], to: [47.1, -20.6] },
      ],
      speed: { mean: 5.4, sd: 0.6 },
      motoring: { main: { mean: 0.35, sd: 0.15 } },
      motorToWindward: true,
      reserveDays: 2,
    });

    await terminal.until(shows('    Home again'));
    terminal.type('Gx');
    await terminal.until(shows('x again retires Home again'));
    terminal.type('x');
    await terminal.until(shows('retired: Home again'));
    expect(readFileSync(file, 'utf8')).toBe(used);
  });
});
