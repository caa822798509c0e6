import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import { COMMANDS } from '../../source/commands/table.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { aBoatFolder, aFolder as aFolderOnDisk, hasty } from '../helpers/a-boat-folder.ts';
import { aFolder, anOutside, type FolderInMemory } from '../helpers/an-outside.ts';
import { forbiddenIn, HOSTILE, hostileBoat } from '../helpers/hostile-texts.ts';

const noScreens = { board: async () => 0 };
const boatFile = JSON.parse(readFileSync(join(import.meta.dirname, '../../sample-boat/boat.json'), 'utf8'));
const at = '2026-02-03T07:00:00Z';

/** Every kind of entry in which a person writes freely. */
function entriesWith(text: string): readonly Draft[] {
  return [
    { kind: 'remark', at, text, by: text.slice(0, 200), key: text.slice(0, 100) || 'key' },
    { kind: 'job', at, item: 'gear-oil', text },
    { kind: 'leak', at, item: 'gear-oil', class: 'wet', text },
    { kind: 'use', at, spare: 'oil-filter', count: 1, for: text, text },
    { kind: 'count', at, spare: 'oil-filter', count: 2, text },
    { kind: 'clue', at, item: 'main', clue: text.slice(0, 60), seen: true },
    { kind: 'strike', at, entry: 'aaaaaaaa-2', why: text },
  ];
}

async function shown(args: readonly string[], given: Parameters<typeof anOutside>[0]): Promise<string> {
  const outside = anOutside(given);
  await run(args, outside, noScreens);
  const { out, err } = outside.written();
  return out + err;
}

async function expectSafe(args: readonly string[], given: Parameters<typeof anOutside>[0]): Promise<string> {
  const text = await shown(args, given);
  /** The line ends of CSV, as its standard has them (RFC 4180). */
  const lines = args.includes('--csv') ? text.replaceAll('\r\n', '\n') : text;
  expect(forbiddenIn(lines), args.join(' ')).toBeNull();
  return text;
}

/** Of the commands that draw the boat and her log; the rest write. */
const READING = [
  ['verdict'],
  ['brief'],
  ['log'],
  ['item', 'gear-oil'],
  ['item', 'oil-filter'],
  ['round'],
  ['stores'],
  ['stores', '--csv'],
  ['stores', '--markdown'],
  ['inspect'],
];

describe.each(HOSTILE.map((text) => [JSON.stringify(text).slice(0, 40), text]))('%s', (_, text) => {
  it('in every field of the boat file and of the log puts no control or bidi character on the screen, in words and as JSON', async () => {
    const folder = aFolder(hostileBoat(boatFile, [text]), entriesWith(text));
    for (const command of READING)
      await expectSafe([...command, '--simulations', '256'], { folders: { '.': folder } });
    for (const word of ['verdict', 'log', 'inspect'])
      await expectSafe([word, '--json', '--simulations', '256'], { folders: { '.': folder } });
    const log = await shown(['log'], { folders: { '.': folder } });
    expect(log).toContain('[aaaaaaaa-1]');
  });

  it('in every argument, standard input and answer neither', async () => {
    const folder = (): FolderInMemory => aFolder(boatFile, entriesWith('plain'));
    const folders = () => ({ '.': folder(), [text]: folder() });
    for (const words of [
      [text],
      [`--${text}`],
      ...COMMANDS.map(({ word }) => [word, text]),
      ...['--boat', '--at', '--seed', '--since', '--item', '--kind', '--zone', '--issued'].flatMap(
        (option) => [
          ['log', option, text],
          ['forecast', '-', option, text],
        ],
      ),
      ['record', 'remark', `text=${text}`],
      ['record', text, `${text}=${text}`],
      ['record', 'dip', `fluid=${text}`, `level=${text}`],
      ['record', 'hours', 'engine=main', `reading=${text}`, `at=${text}`],
      ['record', 'strike', `entry=${text}`],
    ])
      await expectSafe(words, { folders: folders(), answers: [text, text, text] });
    for (const words of [
      ['record', '-'],
      ['forecast', '-'],
    ])
      for (const input of [
        text,
        JSON.stringify({ kind: text, at: text, [text]: text }),
        JSON.stringify({ kind: 'remark', at, text }),
        `${text} SW 25 ${text}\n${text}`,
      ])
        await expectSafe(words, { folders: folders(), input });
  });

  it('in boat.json as it stands, broken, and in damaged lines of the log neither', async () => {
    const broken = [
      text,
      `{"name":"${text}`,
      JSON.stringify({ format: 1, name: 'x', [text]: text, crew: text }),
    ];
    for (const boatText of broken) await expectSafe(['verdict'], { folders: { '.': aFolder(boatText) } });
    const folder = aFolder(boatFile, entriesWith('plain'));
    folder.lines.splice(1, 0, Buffer.from(text), Buffer.from(JSON.stringify({ text, kind: 'remark' })));
    for (const words of [['inspect'], ['inspect', '--json'], ['verdict']])
      await expectSafe(words, { folders: { '.': folder } });
  });
});

describe('hostile names of files', () => {
  it.skipIf(process.platform === 'win32')(
    'of the boat folder, its logs and its forecasts reach no screen',
    async () => {
      /** What a name cannot hold. */
      for (const text of HOSTILE.map((one) => one.replaceAll(/[\u0000/]/gu, '').slice(0, 60))) {
        const boat = aBoatFolder(join(aFolderOnDisk(), text.trim() || 'boat'));
        for (const folder of ['log', 'forecasts']) mkdirSync(join(boat.folder, folder));
        writeFileSync(join(boat.log, `${text}.ndjson`), 'x\n');
        writeFileSync(join(boat.folder, 'forecasts', `20260203T0600Z-${text}.json`), 'x\n');
        writeFileSync(
          join(boat.folder, 'forecasts', '20260203T0600Z-aaaa.json'),
          JSON.stringify({ [text]: text }),
        );
        const outside = anOutside({ settings: { backup: join(boat.folder, text), lastBoat: boat.folder } });
        const real = { ...outside, boat: () => boat.open(hasty) };
        for (const words of [['verdict'], ['inspect'], ['merge', boat.folder], ['merge', text], []])
          await run([...words, '--boat', boat.folder], real, noScreens);
        const terminal = { ...outside.terminal, interactive: true };
        await run(['--boat', boat.folder], { ...real, terminal }, noScreens);
        const { out, err } = outside.written();
        expect(err).toContain('copying to ');
        expect(forbiddenIn(out + err), JSON.stringify(text)).toBeNull();
      }
    },
  );
});
