import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };
const named = (name: string) => aFolder({ ...sandpiper, name });
const whole = {
  '.': named('Here'),
  '/last': named('Last'),
  '/told': named('Told'),
  sample: named('Sample'),
};

async function boatOf(args: readonly string[], given: Parameters<typeof anOutside>[0]) {
  const outside = anOutside(given);
  const status = await run(['log', '--json', ...args], outside, noScreens);
  const { out, err } = outside.written();
  return { status, name: out === '' ? null : JSON.parse(out).boat, err };
}

describe('the boat meant', () => {
  const settings = { lastBoat: '/last' };

  it('is the one named', async () => {
    expect(await boatOf(['--boat', '/told'], { folders: whole, settings })).toMatchObject({ name: 'Told' });
  });

  it('is the one of the current folder when none is named', async () => {
    expect(await boatOf([], { folders: whole, settings })).toMatchObject({ name: 'Here' });
  });

  it('is the last one opened where the current folder holds none', async () => {
    expect(await boatOf([], { folders: { '/last': whole['/last'] }, settings })).toMatchObject({
      name: 'Last',
    });
  });

  it('is found without reading a preference for a script that names it, or is there', async () => {
    for (const args of [['--boat', '/told'], []]) {
      const unread = () => Promise.reject(new Error('a preference was read'));
      const outside = { ...anOutside({ folders: whole }), settings: unread };
      expect(await run(['verdict', '--json', ...args], outside, noScreens)).toBeLessThanOrEqual(2);
    }
  });

  it('is a copy of the sample boat when asked for', async () => {
    expect(await boatOf(['--sample'], { folders: whole, settings })).toMatchObject({ name: 'Sample' });
  });

  it('is not found where there is none, and what to do is said', async () => {
    const { status, err } = await boatOf([], { folders: {} });
    expect(status).toBe(66);
    expect(err).toContain('there is no boat in .');
    expect(err).toContain('--sample');
    expect(err).toContain('hoveshort new <folder>');
  });

  it('is not found under a wrong name, even where others are', async () => {
    expect(await boatOf(['--boat', '/nowhere'], { folders: whole, settings })).toMatchObject({
      status: 66,
      name: null,
    });
  });

  it('stays the one here when its boat file is half written, with 65: the last one is not taken instead', async () => {
    const half = aFolder(JSON.stringify(sandpiper).slice(0, 900));
    const { status, name, err } = await boatOf([], { folders: { ...whole, '.': half }, settings });
    expect({ status, name }).toEqual({ status: 65, name: null });
    expect(err).toContain('boat.json, line 1');
  });

  it('says every mistake of its boat file at once', async () => {
    const wrong = aFolder({ ...sandpiper, crew: 0, passage: 'to-otter-cey' });
    const { status, err } = await boatOf([], { folders: { '.': wrong } });
    expect(status).toBe(65);
    expect(err).toContain('crew is 0');
    expect(err).toContain('to-otter-cay');
  });
});
