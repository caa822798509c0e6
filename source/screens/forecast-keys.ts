import type { Binding } from './bindings.ts';

/** The keys of the forecasts aboard and of one typed as it is heard. */
export const forecastKeys: readonly Binding[] = [
  {
    keys: ['f'],
    shown: 'f',
    does: 'the forecasts aboard side by side: which counts, how far off they have been',
    short: 'f forecasts',
    on: ['weather'],
    act: 'forecasts',
  },
  {
    keys: ['t'],
    shown: 't',
    does: 'type a forecast as it is heard, a row for each day and night',
    short: 't type one',
    on: ['weather', 'forecasts'],
    act: 'hear',
  },
  {
    keys: ['down', 'j'],
    shown: '↓ j',
    does: 'the next forecast',
    short: '↑↓ choose',
    on: ['forecasts'],
    act: 'next forecast',
  },
  { keys: ['up', 'k'], shown: '↑ k', does: 'the one before', on: ['forecasts'], act: 'forecast before' },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'make it the one that counts, until a newer one is taken in; the log keeps it',
    short: 'Enter counts',
    on: ['forecasts'],
    act: 'count it',
  },
  {
    keys: ['enter'],
    shown: 'Enter',
    does: 'the next line; on an empty one the forecast is at its end, and Enter again takes it in',
    short: 'Enter on',
    on: ['heard'],
    act: 'end line',
  },
  {
    keys: ['tab', 'down'],
    shown: 'Tab ↓',
    does: 'to the next line',
    short: '↑↓ lines',
    on: ['heard'],
    act: 'next line',
  },
  {
    keys: ['back tab', 'up'],
    shown: 'Shift+Tab ↑',
    does: 'to the line before',
    on: ['heard'],
    act: 'line before',
  },
  {
    keys: ['escape'],
    shown: 'Esc',
    does: 'back, nothing taken in',
    short: 'Esc back',
    on: ['heard'],
    act: 'back',
  },
];
