import { afterEach, describe, expect, it } from 'vitest';
import { amountFrom, levelFrom } from '../../source/words/amounts.ts';
import { momentFrom } from '../../source/words/moments.ts';
import { FILE_UNITS, prefer } from '../../source/words/preferred.ts';
import { amountWords, momentWords } from '../../source/words/say.ts';
import { NOW } from '../helpers/an-outside.ts';

afterEach(() => prefer(FILE_UNITS));

function typed(text: string, unit: 'L' | 'm' | 'kn', about?: number) {
  const read = amountFrom(text, unit, 'amount', about);
  return read.ok ? read.value : read.troubles;
}

describe('the units a person prefers', () => {
  it('are those of the files where none are', () => {
    expect([amountWords(1.2, 'L'), amountWords(2, 'm'), amountWords(20, 'kn')]).toEqual([
      '1.2 L',
      '2 m',
      '20 kn',
    ]);
    expect(typed('1.2', 'L')).toBe(1.2);
  });

  it('say a little in quarts or pints, much in gallons, and which gallon it is', () => {
    prefer({ ...FILE_UNITS, volume: 'US' });
    expect([amountWords(0.946352946, 'L'), amountWords(378.5411784, 'L')]).toEqual(['1 US qt', '100 US gal']);
    prefer({ ...FILE_UNITS, volume: 'imperial' });
    expect([amountWords(0.56826125, 'L'), amountWords(454.609, 'L')]).toEqual(['1 imp pt', '100 imp gal']);
  });

  it('say all of one tank in one unit', () => {
    prefer({ ...FILE_UNITS, volume: 'US' });
    expect(amountWords(3.785411784, 'L', 200)).toBe('1 US gal');
  });

  it('are those of a number typed without one, by what it is typed about', () => {
    prefer({ ...FILE_UNITS, volume: 'US', height: 'ft', wind: 'm/s' });
    expect(typed('2', 'L', 5)).toBeCloseTo(1.892705892, 12);
    expect(typed('2', 'L', 200)).toBeCloseTo(7.570823568, 12);
    expect(typed('10', 'm')).toBeCloseTo(3.048, 12);
    expect(typed('9', 'kn')).toBeCloseTo((9 * 3600) / 1852, 12);
    expect(typed('300 ml', 'L', 5)).toBeCloseTo(0.3, 12);
    expect(levelFrom('+1', 'level', 5)).toMatchObject({ value: { change: expect.closeTo(0.946352946, 9) } });
  });

  it('settle which gallon a bare one is, which is else asked about', () => {
    expect(typed('1 gal', 'L')).toMatchObject([{ kind: 'not understood' }]);
    prefer({ ...FILE_UNITS, volume: 'imperial' });
    expect([typed('1 gal', 'L'), typed('8 pt', 'L')]).toEqual([4.54609, 4.54609]);
    prefer({ ...FILE_UNITS, volume: 'US' });
    expect(typed('128 oz', 'L')).toBeCloseTo(3.785411784, 12);
  });

  it('come back as they were said', () => {
    for (const volume of ['litres', 'US', 'imperial'] as const)
      for (const litres of [0.02, 1.25, 14, 16, 300]) {
        prefer({ ...FILE_UNITS, volume });
        const back = typed(amountWords(litres, 'L'), 'L');
        expect(Math.abs((back as number) - litres)).toBeLessThan(litres * 0.006);
      }
  });

  it.each([
    [7, 40, '7:40am'],
    [0, 5, '12:05am'],
    [12, 0, '12:00pm'],
    [19, 40, '7:40pm'],
  ])('the clock of %i:%i by halves of the day is %s, and is read so', (hour, minute, said) => {
    const at = Date.UTC(2026, 1, 3, hour, minute);
    prefer({ ...FILE_UNITS, clock: '12 h' });
    expect(momentWords(at, 'UTC', at)).toBe(`Tue 3 Feb ${said}`);
    expect(momentFrom(said, NOW, 'UTC')).toBe(at);
    expect(momentFrom(`2026-02-03 ${said.replace(/([ap])m/u, ' $1m')}`, NOW, 'UTC')).toBe(at);
  });

  it.each(['13:00pm', '0:30am', '25 pm', 'pm'])('%s is no moment', (text) => {
    expect(momentFrom(text, NOW, 'UTC')).toBeNull();
  });
});
