import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import { anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };

async function preferences(...words: string[]) {
  const outside = anOutside({ settings: { name: 'Mara', volume: 'imperial' } });
  const status = await run(['preferences', ...words], outside, noScreens);
  return { status, ...outside.written(), remembered: outside.remembered };
}

describe('preferences from the shell', () => {
  it('are shown, each with what it is', async () => {
    const { status, out, remembered } = await preferences();
    expect({ status, remembered }).toEqual({ status: 0, remembered: [] });
    expect(out).toMatch(/^volume +imperial +oil, fuel and water$/mu);
    expect(out).toMatch(/^name +Mara +who types, for the log$/mu);
    expect(out).toMatch(/^zone +that of this laptop +time zone$/mu);
  });

  it('are set together, all or none', async () => {
    const { out, remembered } = await preferences('volume=us', 'clock=12h', 'zone=UTC', 'name=');
    expect(remembered).toEqual([{ volume: 'US', clock: '12 h', zone: 'UTC', name: null }]);
    expect(out).toMatch(/^name +not said/mu);
    const wrong = await preferences('volume=US', 'height=yards', 'wnd=kn', 'zone=Moon');
    expect(wrong).toMatchObject({ status: 64, remembered: [], out: '' });
    expect(wrong.err).toContain('one of m, ft');
    expect(wrong.err).toContain('wind');
    expect(wrong.err).toContain('the name of a time zone');
  });

  it('are a document for scripts', async () => {
    expect(JSON.parse((await preferences('--json')).out)).toMatchObject({
      format: 1,
      volume: 'imperial',
      zone: null,
    });
  });
});
