import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { openTerminal } from '../../helpers/terminal.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'hoveshort-trace-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('a hunt is played from the item page to the order of repairs, each answer in the log', async () => {
  const boat = path.join(folder, 'boat');
  cpSync('sample-boat', boat, { recursive: true });
  const env = { XDG_CONFIG_HOME: path.join(folder, 'config'), XDG_STATE_HOME: path.join(folder, 'state') };
  const args = [path.resolve('built/hoveshort.js'), '--boat', boat, '--at', '2026-06-14T07:30:00Z'];
  const terminal = openTerminal(process.execPath, args, { columns: 120, rows: 50, env });
  const next = async (key: string, holds: (screen: string) => boolean, what: string) => {
    terminal.type(key);
    return await terminal.until(holds, what);
  };
  try {
    await terminal.until(
      (screen) => screen.includes('NOT READY') && !screen.includes('working'),
      'the answer',
    );
    let item = '';
    for (let steps = 0; !item.includes('Gear oil') && steps < 20; steps += 1)
      item = await next('j', (screen) => chosenIn(screen) !== item, 'the next line').then(chosenIn);
    await next('\r', (screen) => screen.includes('f find cause'), "the item's page");
    await next('f', (screen) => screen.includes('LOOK NEXT'), 'the first look');
    expect(terminal.screen().join('\n')).toContain('Can be lived with');
    // Looked for and not there; no, it was: struck, and answered again.
    await next(
      'n',
      (screen) => screen.includes('LOOKED FOR') && screen.includes('LOOK NEXT'),
      'another look',
    );
    await next('u', (screen) => !screen.includes('LOOKED FOR') && screen.includes('LOOK NEXT'), 'undone');
    await next('y', (screen) => screen.includes('a cooler hose or fitting the first'), 'the second look');
    const end = await next(
      'n',
      (screen) => screen.includes('TO PUT RIGHT, in this order') && !screen.includes('LOOK NEXT'),
      'the order of repairs',
    );
    expect(end).toContain('Likeliest by far: the output shaft seal');
    terminal.type('onew seal\r');
    await terminal.until(
      (screen) => screen.includes('saved: Gear oil: new seal, for output-seal'),
      'the work',
    );
    await terminal.until((screen) => screen.includes('WORK DONE FOR IT'), 'the work in the trace');
  } finally {
    terminal.close();
  }
}, 60_000);

function chosenIn(screen: string): string {
  return screen.split('\n').find((line) => line.startsWith('>')) ?? '';
}
