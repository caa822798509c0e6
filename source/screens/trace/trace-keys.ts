import type { Binding } from '../bindings.ts';
import { hasTables, isAsked, isTold } from './open-trace.ts';

/** The keys of a trace, and the one that opens it. */
export const traceKeys: readonly Binding[] = [
  {
    keys: ['f'],
    shown: 'f',
    does: 'find where it comes from: causes with their chances, and the next best look',
    short: 'f find cause',
    on: ['item'],
    when: hasTables(1),
    act: 'trace',
  },
  {
    keys: ['y'],
    shown: 'y',
    does: 'what is asked was looked for and seen; saved at once',
    short: 'y seen',
    on: ['trace'],
    when: isAsked,
    act: 'clue seen',
  },
  {
    keys: ['n'],
    shown: 'n',
    does: 'looked for, and it is not so',
    short: 'n not',
    on: ['trace'],
    when: isAsked,
    act: 'clue not seen',
  },
  {
    keys: ['c'],
    shown: 'c',
    does: 'looked for, and it cannot be told; not asked again',
    short: 'c cannot tell',
    on: ['trace'],
    when: isAsked,
    act: 'clue cannot tell',
  },
  {
    keys: ['u'],
    shown: 'u',
    does: 'strike the last answer: it is asked again',
    short: 'u undo',
    on: ['trace'],
    when: isTold,
    act: 'strike clue',
  },
  {
    keys: ['o'],
    shown: 'o',
    does: 'log work done for a cause; the readings after it tell whether it was that',
    short: 'o work',
    on: ['trace'],
    act: 'work for it',
  },
  {
    keys: ['tab'],
    shown: 'Tab',
    does: 'another trouble of it, where there are tables for several',
    on: ['trace'],
    when: hasTables(2),
    act: 'next table',
  },
];
