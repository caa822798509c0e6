import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type BoardStart, run, type Screens } from '../../source/commands/run.ts';
import { COMMANDS } from '../../source/commands/table.ts';
import { blankBoat } from '../../source/words/new-boat.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens: Screens = {
  board: () => Promise.reject(new Error('the board was opened')),
};

const sound = () => ({ '.': aFolder(sandpiper, healthyLog), sample: aFolder(sandpiper, healthyLog) });

function boardThatReturns(status: number): Screens & { readonly starts: BoardStart[] } {
  const starts: BoardStart[] = [];
  return {
    starts,
    board: async (start) => {
      starts.push(start);
      return status;
    },
  };
}

describe('a command line', () => {
  it('says its version, the one in package.json', async () => {
    const outside = anOutside({});
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect(await run(['--version'], outside, noScreens)).toBe(0);
    expect(outside.written()).toEqual({ out: `hoveshort ${version}\n`, err: '' });
  });

  it('names every command with its example in --help, without opening a boat', async () => {
    const outside = anOutside({});
    expect(await run(['--help'], outside, noScreens)).toBe(0);
    const { out, err } = outside.written();
    expect(err).toBe('');
    for (const { word, says, example } of COMMANDS) {
      expect(out).toMatch(new RegExp(`^ {2}${word}\\b.* {2}${says}$`, 'm'));
      expect(out).toContain(`\n  ${example}\n`);
    }
  });

  it('has help of each command with its own options', async () => {
    for (const command of COMMANDS) {
      const outside = anOutside({});
      expect(await run([command.word, '--help'], outside, noScreens)).toBe(0);
      const { out } = outside.written();
      expect(out).toContain(command.example);
      for (const option of command.options) expect(out).toContain(`--${option}`);
    }
  });

  it('takes options before and after the command, with a blank or an equals sign', async () => {
    const outs: string[] = [];
    for (const args of [
      ['verdict', '--json', '--seed', '7'],
      ['--seed=7', '--json', 'verdict'],
      ['--json', 'verdict', '--seed', '7'],
    ]) {
      const outside = anOutside({ folders: sound() });
      expect(await run(args, outside, noScreens)).toBe(1);
      outs.push(outside.written().out);
    }
    expect(new Set(outs).size).toBe(1);
    expect(JSON.parse(outs[0]!).seed).toBe(7);
  });

  it.each([
    [['verdit'], 'there is no command "verdit"\nTry: verdict\n'],
    [['verdict', '--sead', '4'], 'there is no option "--sead"\nTry: --seed\n'],
    [['verdict', '--yes'], 'there is no option "--yes"\nTry: hoveshort --help\n'],
    [['verdict', '--seed'], '<number> after --seed is wanting\nTry: --seed <number>\n'],
    [['log', '--kind', 'topupp'], 'there is no entry kind "topupp"\nTry: topup\n'],
    [
      ['verdict', '--simulations', '100'],
      '--simulations: "100" is not understood\n"--simulations" takes a whole number from 256 to 65536, a multiple of 32.\nTry: --simulations 4096\n',
    ],
    [
      ['verdict', '--at', 'noonish'],
      '--at: "noonish" is not understood\n"--at" takes an instant.\nTry: --at 2026-02-03T07:40Z\n',
    ],
  ])('is refused as wrong usage: %j', async (args, complaint) => {
    const outside = anOutside({ folders: sound() });
    expect(await run(args, outside, noScreens)).toBe(64);
    expect(outside.written()).toEqual({ out: '', err: complaint });
  });

  it.each(['256', '65536', '4128'])('takes %s passages', async (simulations) => {
    const outside = anOutside({ folders: sound() });
    expect(await run(['verdict', '--json', '--simulations', simulations], outside, noScreens)).toBe(1);
    expect(JSON.parse(outside.written().out).simulations).toBeGreaterThanOrEqual(Number(simulations));
  });

  it.each(['255', '65568', '4100', '-4096', '1e3', 'many'])('takes no %s passages', async (simulations) => {
    const outside = anOutside({ folders: sound() });
    expect(await run(['verdict', `--simulations=${simulations}`], outside, noScreens)).toBe(64);
    expect(outside.written().out).toBe('');
  });
});

describe('no command', () => {
  it('prints the verdict in words off a terminal, and its answer is no exit status', async () => {
    const bare = anOutside({ folders: sound() });
    const asked = anOutside({ folders: sound() });
    expect(await run([], bare, noScreens)).toBe(0);
    expect(await run(['verdict'], asked, noScreens)).toBe(1);
    expect(bare.written()).toEqual(asked.written());
  });

  it('opens the board on a terminal, remembers the boat and returns the status of the board', async () => {
    const outside = anOutside({
      folders: { '/boats/s': aFolder(sandpiper) },
      terminal: { interactive: true },
    });
    const screens = boardThatReturns(3);
    expect(await run(['--boat', '/boats/s', '--seed', '5'], outside, screens)).toBe(3);
    expect(screens.starts).toHaveLength(1);
    expect(screens.starts[0]).toMatchObject({ boat: { folder: { path: '/boats/s' } }, at: null, seed: 5 });
    expect(outside.remembered).toEqual([{ lastBoat: '/boats/s' }]);
    expect(outside.written()).toEqual({ out: '', err: '' });
  });

  it('does not remember the copy of the sample boat', async () => {
    const outside = anOutside({ folders: sound(), terminal: { interactive: true } });
    expect(await run(['--sample'], outside, boardThatReturns(0))).toBe(0);
    expect(outside.remembered).toEqual([]);
  });

  it('begins a boat where none is known, remembers her, and opens the board on her', async () => {
    const outside = anOutside({ terminal: { interactive: true } });
    const screens = boardThatReturns(0);
    expect(await run([], outside, screens)).toBe(0);
    const [start] = screens.starts;
    expect(start).toMatchObject({ boat: null, told: [] });
    const boat = blankBoat('sail');
    const made = await start!.begin({ ...boat, answers: { ...boat.answers, name: 'Tern' } }, '/boats/tern');
    expect(made).toMatchObject({ ok: true, value: { loaded: { boat: { name: 'Tern' } } } });
    expect(outside.remembered).toEqual([{ lastBoat: '/boats/tern' }]);
  });

  it('says why no boat is known where the last one is gone, and no boat is begun where one was named', async () => {
    const outside = anOutside({ terminal: { interactive: true }, settings: { lastBoat: '/gone' } });
    const screens = boardThatReturns(0);
    await run([], outside, screens);
    expect(screens.starts[0]?.told).toMatchObject([{ kind: 'no boat folder', folder: '/gone' }]);
    expect(await run(['--boat', '/gone'], outside, noScreens)).toBe(66);
  });

  it('prints JSON even on a terminal when asked for it', async () => {
    const outside = anOutside({ folders: sound(), terminal: { interactive: true } });
    expect(await run(['--json'], outside, noScreens)).toBe(0);
    expect(JSON.parse(outside.written().out).boat).toBe('Sandpiper');
  });
});

describe('a fault in the program', () => {
  it('is said on standard error and returns 70, wherever it is thrown', async () => {
    const outside = anOutside({ folders: sound() });
    const status = await run(
      ['verdict'],
      {
        ...outside,
        boat: () => {
          throw new Error('planted\u001b[31m');
        },
      },
      noScreens,
    );
    expect(status).toBe(70);
    const { out, err } = outside.written();
    expect(out).toBe('');
    expect(err).toContain('a fault in hoveshort itself');
    expect(err).toContain('planted');
    expect(err).not.toContain('\u001b');
  });

  it('returns 70, and none of the answers, when the document cannot be put out', async () => {
    const outside = anOutside({ folders: sound() });
    const shut = () => {
      throw new Error('the pipe is shut');
    };
    expect(await run(['verdict'], { ...outside, print: shut }, noScreens)).toBe(70);
  });

  it('returns 70 when the board throws', async () => {
    const outside = anOutside({ folders: sound(), terminal: { interactive: true } });
    expect(await run([], outside, noScreens)).toBe(70);
  });
});
