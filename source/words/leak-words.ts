import type { LeakClass } from '../condition/condition.ts';

/** What a leaking place shows, in words. */
export const LEAK_WORDS: { readonly [C in LeakClass]: string } = {
  dry: 'dry',
  wet: 'wet to the touch',
  drops: 'drops form',
  falls: 'drops fall',
};
