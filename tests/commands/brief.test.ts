import { describe, expect, it } from 'vitest';
import { run } from '../../source/commands/run.ts';
import { sandpiper } from '../helpers/a-boat.ts';
import { healthyLog } from '../helpers/a-healthy-log.ts';
import { aFolder, anOutside } from '../helpers/an-outside.ts';

const noScreens = { board: () => Promise.reject(new Error('the board was opened')) };

async function brief(args: readonly string[] = [], boat: object = sandpiper, columns = 80) {
  const outside = anOutside({ folders: { '.': aFolder(boat, healthyLog) }, terminal: { columns } });
  const status = await run(['brief', ...args], outside, noScreens);
  return { status, ...outside.written() };
}

describe('brief', () => {
  it('is half a page of sentences, and its verdict is no exit status', async () => {
    const { status, out, err } = await brief();
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^Sandpiper, Tue 3 Feb 2026 07:40 \(UTC\)\.\n\nHold: she is fit/);
    expect(out).toContain('No forecast is aboard');
    expect(out.split('\n').length).toBeLessThan(30);
  });

  it.each([40, 80, 200])('is no wider than 80 columns, nor than a terminal of %s', async (columns) => {
    const { out } = await brief([], sandpiper, columns);
    expect(Math.max(...out.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(
      Math.min(80, columns),
    );
  });

  it('is told as JSON, a paragraph each', async () => {
    const { out } = await brief(['--json']);
    expect(JSON.parse(out)).toMatchObject({ format: 1, boat: 'Sandpiper', verdict: 'hold' });
    expect(JSON.parse(out).brief.length).toBeGreaterThan(3);
  });

  it('draws nothing that moves a cursor', async () => {
    for (const args of [[], ['--json']]) {
      const { out } = await brief(args, { ...sandpiper, name: 'a\u001b[2J\u202eb' });
      expect(out).not.toMatch(/[\u001b\u202e]/);
    }
  });
});
