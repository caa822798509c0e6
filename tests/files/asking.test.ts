import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { askingOn } from '../../source/files/asking.ts';

function aLine() {
  const input = new PassThrough();
  const output = new PassThrough();
  return { input, output, ask: askingOn(input, output) };
}

describe('asking line by line', () => {
  it('shows the question and gives the line', async () => {
    const { input, output, ask } = aLine();
    const answer = ask('How many? ');
    input.write('two\n');
    expect(await answer).toBe('two');
    expect(String(output.read())).toContain('How many? ');
  });

  it('answers one question after the other with lines pasted at once', async () => {
    const { input, ask } = aLine();
    const first = ask('1 ');
    input.write('a\nb\n\nd\n');
    expect([await first, await ask('2 '), await ask('3 '), await ask('4 ')]).toEqual(['a', 'b', '', 'd']);
  });

  it('is over when the input ends, once all that was typed is taken', async () => {
    const { input, ask } = aLine();
    const first = ask('1 ');
    input.end('a\nb\n');
    expect([await first, await ask('2 '), await ask('3 '), await ask('4 ')]).toEqual(['a', 'b', null, null]);
  });

  it('is over when the input ends at a question', async () => {
    const { input, ask } = aLine();
    const first = ask('1 ');
    input.end();
    expect([await first, await ask('2 ')]).toEqual([null, null]);
  });
});
