import type { Binding } from '../bindings.ts';

/** The keys of the preferences, and the one that opens them. */
export const preferencesKeys: readonly Binding[] = [
  {
    keys: ['right', 'space'],
    shown: '→ Space',
    does: 'the next choice, saved at once',
    short: '←→ change',
    on: ['preferences'],
    act: 'next choice',
  },
  { keys: ['left'], shown: '←', does: 'the choice before', on: ['preferences'], act: 'choice before' },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'save what was typed',
    short: 'Enter save',
    foremost: true,
    on: ['preferences'],
    act: 'take preference',
  },
  {
    keys: ['down', 'tab'],
    shown: '↓ Tab',
    does: 'to the next preference',
    short: '↑↓ lines',
    on: ['preferences'],
    act: 'next preference',
  },
  {
    keys: ['up', 'back tab'],
    shown: '↑ Shift+Tab',
    does: 'to the one before',
    on: ['preferences'],
    act: 'preference before',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'back; what was typed is saved',
    short: 'Esc back',
    on: ['preferences'],
    act: 'leave preferences',
  },
  {
    keys: [','],
    shown: ',',
    does: 'your preferences: units, clock, zone, colours, name, second place',
    on: ['board', 'item', 'engine', 'answer', 'trouble'],
    act: 'preferences',
  },
];
