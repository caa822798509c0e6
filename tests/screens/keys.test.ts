import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keysOf } from '../../source/screens/keys.ts';

/** What Ink says of a chunk it did not split: flags only where the whole chunk is one key. */
function ofChunk(chunk: string): string[] {
  if (chunk === '\r') return keysOf('\r', { return: true });
  if (chunk === '\t') return keysOf('\t', { tab: true });
  if (chunk === '\u007f') return keysOf('', { backspace: true });
  return keysOf(chunk, {});
}

describe('keys', () => {
  it('five quick letters in one chunk are five keys', () => {
    expect(keysOf('jjjjj', {})).toEqual(['j', 'j', 'j', 'j', 'j']);
  });

  it('an Enter at the end of a chunk is not lost', () => {
    expect(keysOf('2.5\r', {})).toEqual(['2', '.', '5', 'enter']);
  });

  it('keys without a letter come by name, whatever else is in the chunk', () => {
    expect(keysOf('', { upArrow: true })).toEqual(['up']);
    expect(keysOf('\t', { tab: true, shift: true })).toEqual(['back tab']);
    expect(keysOf('c', { ctrl: true })).toEqual(['ctrl c']);
    expect(keysOf('j\u0003 \t\u007f', {})).toEqual(['j', 'ctrl c', 'space', 'tab', 'backspace']);
  });

  it('Escape with a letter right behind it is both, not Alt', () => {
    expect(keysOf('j', { meta: true })).toEqual(['escape', 'j']);
  });

  it('a letter with its accent is one key', () => {
    expect(keysOf('e\u0301x', {})).toEqual(['e\u0301', 'x']);
  });

  it('a key let go is no key', () => {
    expect(keysOf('j', { eventType: 'release' })).toEqual([]);
  });

  it('any chunking of the same keys gives the same keys', () => {
    const key = fc.constantFrom(
      ...'jkhlgGpq?!/2.5 ',
      '\r',
      '\t',
      '\u007f',
      '\u0003',
      '\u000c',
      'é',
      '海',
      '⠿',
    );
    const script = fc.array(key, { minLength: 1, maxLength: 30 });
    const cuts = fc.array(fc.nat(30), { maxLength: 30 });
    fc.assert(
      fc.property(script, cuts, (keys, at) => {
        const chunks: string[] = [''];
        keys.forEach((one, index) => {
          if (at.includes(index)) chunks.push('');
          chunks[chunks.length - 1] += one;
        });
        const together = chunks.filter((chunk) => chunk !== '').flatMap(ofChunk);
        expect(together).toEqual(keys.flatMap(ofChunk));
      }),
      { numRuns: 500 },
    );
  });
});
