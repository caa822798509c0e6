import { describe, expect, it } from 'vitest';
import { fluidLine } from '../../../source/screens/round/fluid-line.ts';

const NONE = { level: null, added: null, after: null, drip: null };

describe('what is typed of a fluid in one line', () => {
  it.each([
    ['1/2', { level: '1/2' }],
    ['1 1/2', { level: '1 1/2' }],
    ['0,8 l', { level: '0,8 l' }],
    ['full', { level: 'full' }],
    ['+.2', { level: '+.2' }],
    ['-300 ml', { level: '-300 ml' }],
    ['drops', { drip: 'drops' }],
    ['Full WET', { level: 'Full', drip: 'wet' }],
    ['1/2 +300ml drops', { level: '1/2', added: '300ml', drip: 'drops' }],
    ['drops 1/2 +300ml', { level: '1/2', added: '300ml', drip: 'drops' }],
    ['1/2+300 ml', { level: '1/2', added: '300 ml' }],
    ['1/2 +300 ml full', { level: '1/2', added: '300 ml', after: 'full' }],
    ['+300 ml full dry', { added: '300 ml', after: 'full', drip: 'dry' }],
    ['+0.3 1/2', { added: '0.3', after: '1/2' }],
    ['poured 300 ml', { added: '300 ml' }],
    ['low added .3', { level: 'low', added: '.3' }],
    ['+0.2 falls', { level: '+0.2', drip: 'falls' }],
  ])('%j', (typed, parts) => {
    expect(fluidLine(typed)).toEqual({ ...NONE, ...parts });
  });

  it('what cannot be told apart stays whole, to be told as not understood', () => {
    expect(fluidLine('1/2 +300ml +200ml').added).toBe('300ml +200ml');
    expect(fluidLine('1/2 +soup').added).toBe('soup');
    expect(fluidLine('wet drops')).toEqual({ ...NONE, level: 'drops', drip: 'wet' });
  });
});
