import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import { COMMANDS } from '../../source/commands/table.ts';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import { newFolder } from '../../source/files/new-boat.ts';
import { FILE_UNITS, prefer } from '../../source/words/preferred.ts';
import { COASTAL } from '../helpers/a-bulletin.ts';
import { anOutside } from '../helpers/an-outside.ts';
import { gribFile } from '../helpers/grib-files.ts';
import { namedInstants } from '../helpers/sample-calendar.ts';

const places: string[] = [];
afterEach(() => {
  for (const place of places.splice(0)) rmSync(place, { recursive: true, force: true });
});
afterAll(() => prefer(FILE_UNITS));

/** The home folder a person pastes in: the sample boat as ~/whimbrel, a copy of it on a stick, files that were got. */
function aHome(): string {
  const home = mkdtempSync(join(tmpdir(), 'hoveshort-examples-'));
  places.push(home);
  for (const boat of ['whimbrel', 'stick/whimbrel'])
    cpSync('sample-boat', join(home, boat), { recursive: true });
  return home;
}

/** The invented bulletin, on the sample boat's waters and days. */
const BULLETIN = COASTAL.replaceAll('XXZ110-111', 'PZZ575')
  .replaceAll('Jan 31', 'Jun 13')
  .replaceAll('312100', '132100')
  .replaceAll('010315', '140315')
  .replaceAll('EST', 'EDT');

/** An hour after the GRIB file was made. */
const GRIB_AT = Date.parse('2026-02-03T07:00:00Z');

/** Moves her waters to those of the GRIB file. */
function inTheGrib(file: string): void {
  const moved = readFileSync(file, 'utf8').replace(
    /"(from|to|at)": \[(-?[\d.]+), (-?[\d.]+)\]/gu,
    (_, field, lat, lon) => `"${field}": [${Number(lat) - 10}, ${Number(lon) - 7}]`,
  );
  writeFileSync(file, moved);
}

/** What the shell hands over: words, and what is piped in. */
function pasted(text: string): { args: string[]; input: string } {
  const piped = /^echo '(?<input>.*)' \| (?<rest>.*)$/u.exec(text)?.groups;
  const command = (piped?.rest ?? text).replace(/ (?:\| lpr|> \S+)$/u, '');
  const words = command.match(/(?:[^\s"]|"[^"]*")+/gu) ?? [];
  return { args: words.slice(1).map((word) => word.replaceAll('"', '')), input: piped?.input ?? '' };
}

async function paste(text: string) {
  const home = aHome();
  const { args, input } = pasted(text);
  const isNew = args[0] === 'new';
  if (isNew) rmSync(join(home, 'whimbrel'), { recursive: true });
  if (args.includes('winds.grb')) inTheGrib(join(home, 'whimbrel', 'boat.json'));
  const place = (folder: string) => folder.replace(/^~/u, home).replace(/^\/media/u, home);
  const now = args.includes('winds.grb') ? GRIB_AT : Date.parse(namedInstants.notReady);
  const keeping = (folder: string) => keepingOn(folder, join(home, 'state'), () => now);
  const outside = anOutside({
    now,
    input: args[1] === '-' && !isNew ? 'sw 15-20 g28 4ft 7s\n' : input,
    files: { 'coastal.txt': new TextEncoder().encode(BULLETIN), 'winds.grb': gribFile('forecast') },
    settings: { lastBoat: '~/whimbrel', name: 'Nell' },
    answers: isNew ? (input === '' ? ['', 'Whimbrel', ...Array<string>(60).fill('')] : []) : ['PZZ575'],
  });
  const status = await run(
    [...(args[0] === 'merge' ? args.map((word) => place(word)) : args), '--simulations', '256'],
    {
      ...outside,
      boat: (folder) => boatFolder(keeping(folder === '.' ? join(home, 'nothing') : place(folder))),
      newBoat: async (folder) => newFolder(keeping, place(folder)),
      sample: async () => ({ ok: true, value: join(home, 'whimbrel') }),
    },
    { board: () => Promise.reject(new Error('the board was opened')) },
  );
  return { status, ...outside.written(), home };
}

/** Blocks of commands in a page, without what is said beside them, and those in its text. */
function examplesIn(page: string): string[] {
  const blocks = page.match(/^ {4}(?:hoveshort|node built\/hoveshort\.js)(?: .*)?$/gmu) ?? [];
  const inText = page.match(/`(?:echo '[^`]*\| )?hoveshort [^`]*`/gu) ?? [];
  return [
    ...blocks.map((line) => line.trim().split(/ {2,}/u)[0]!),
    ...inText.map((one) => one.slice(1, -1)),
  ].map((one) =>
    one
      .replace(/^node built\/hoveshort\.js/u, 'hoveshort')
      .replaceAll('--boat sample-boat', '--boat ~/whimbrel'),
  );
}

/** `verdict` answers by its status; the rest say 0. */
const answers = (example: string) => (/^hoveshort verdict\b/u.test(example) ? [0, 1, 2] : [0]);

describe('every example does what it says when it is pasted', () => {
  const inHelp = COMMANDS.map(({ example }) => example);
  const inReadme = [...new Set(examplesIn(readFileSync('README.md', 'utf8')))].filter(
    (one) => !inHelp.includes(one),
  );
  // Its mornings are held by tests/sample-boat.test.ts.
  const beside = [...new Set(examplesIn(readFileSync('sample-boat/README.md', 'utf8')))].filter(
    (one) => !one.startsWith('hoveshort verdict'),
  );

  it.each(inHelp)('in help: %s', async (example) => {
    const { status, out, err } = await paste(example);
    expect({ status, err: answers(example).includes(status) ? '' : err }).toEqual({
      status: expect.toBeOneOf(answers(example)),
      err: '',
    });
    expect(out.length).toBeGreaterThan(20);
  });

  it.each(inReadme)('in the README: %s', async (example) => {
    const { status, out, err } = await paste(example);
    expect({ status, err: answers(example).includes(status) ? '' : err }).toEqual({
      status: expect.toBeOneOf(answers(example)),
      err: '',
    });
    expect(out.length).toBeGreaterThan(20);
  });

  it.each(beside)('in the README of the sample boat: %s', async (example) => {
    const { status, err } = await paste(example);
    expect({ status, err: answers(example).includes(status) ? '' : err }).toEqual({
      status: expect.toBeOneOf(answers(example)),
      err: '',
    });
  });

  it('there are examples to try', () => {
    expect(inReadme.length).toBeGreaterThan(25);
    expect(beside.length).toBeGreaterThan(2);
  });
});
