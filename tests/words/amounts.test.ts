import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { amountFrom, levelFrom, numberIn, shareFrom, yesNoFrom } from '../../source/words/amounts.ts';
import type { Unit } from '../../source/words/units.ts';

function amount(typed: string, unit: Unit): number | null {
  const read = amountFrom(typed, unit, 'amount');
  return read.ok ? read.value : null;
}

describe('an amount as people type it', () => {
  test.each<[string, Unit, number]>([
    ['2.5', 'L', 2.5],
    ['2,5', 'L', 2.5],
    ['.5', 'L', 0.5],
    ['0,250', 'L', 0.25],
    ['1/4', 'L', 0.25],
    ['1 1/2', 'L', 1.5],
    ['1½', 'L', 1.5],
    ['¾ l', 'L', 0.75],
    ['300 ml', 'L', 0.3],
    ['300ml', 'L', 0.3],
    ['5 dl', 'L', 0.5],
    ['0.4 qt', 'L', 0.4 * 0.946352946],
    ['2 US gal', 'L', 2 * 3.785411784],
    ['2 imp gal', 'L', 2 * 4.54609],
    ['1 gallon uk', 'L', 4.54609],
    ['-0.3', 'L', -0.3],
    ['3412.6', 'h', 3412.6],
    ['3412,6', 'h', 3412.6],
    ['3 412.6 h', 'h', 3412.6],
    ['3\u202f412,6', 'h', 3412.6],
    ['3,412.6', 'h', 3412.6],
    ['3.412,6', 'h', 3412.6],
    ['45 min', 'h', 0.75],
    ['7:30', 'h', 7.5],
    ['1 h 20 min', 'h', 4 / 3],
    ['1.5 h', 'min', 90],
    ['2 weeks', 'days', 14],
    ['18 kts', 'kn', 18],
    ['f6', 'kn', 24.5],
    ['Force 6', 'kn', 24.5],
    ['f5-6', 'kn', 22],
    ['10 m/s', 'kn', 36 / 1.852],
    ['6 ft', 'm', 1.8288],
    ['350 g', 'kg', 0.35],
    ['1 lb', 'kg', 0.45359237],
    ['5/8 in', 'mm', 15.875],
    ['1 1/2"', 'mm', 38.1],
    ['29.53 inHg', 'hPa', 29.53 * 33.86389],
    ['1013 mb', 'hPa', 1013],
  ])('%s in %s', (typed, unit, value) => {
    expect(amount(typed, unit)).toBeCloseTo(value, 10);
  });

  test.each<[string, Unit]>([
    ['', 'L'],
    ['lots', 'L'],
    ['60%', 'L'],
    ['1e3', 'L'],
    ['1/0', 'L'],
    ['1..2', 'L'],
    ['1,2,3', 'L'],
    ['5 furlongs', 'L'],
    ['3 kg', 'L'],
    ['3 constructor', 'L'],
    ['7:75', 'h'],
    ['f13', 'kn'],
    ['f6-5', 'kn'],
    [`${'9'.repeat(100_000)}`, 'h'],
  ])('%.20s is not understood in %s', (typed, unit) => {
    expect(amount(typed, unit)).toBeNull();
  });

  test('a bare gallon, pint or ounce is asked about with both to choose from, never guessed', () => {
    expect(amountFrom('3 gal', 'L', 'amount')).toEqual({
      ok: false,
      troubles: [
        {
          kind: 'not understood',
          field: 'amount',
          text: '3 gal',
          expected: 'us gal or imp gal',
          example: '3 us gal or 3 imp gal',
        },
      ],
    });
    expect(amount('1 pint', 'L')).toBeNull();
    expect(amount('8 fl oz', 'L')).toBeNull();
  });

  test('a comma before three digits is asked about: it could be thousands', () => {
    expect(amountFrom('3,412', 'h', 'reading')).toMatchObject({
      troubles: [{ field: 'reading', example: '3412 or 3.412' }],
    });
  });

  test('any number written plainly comes back as itself, with point or comma', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1_000_000, max: 1_000_000 }),
        fc.integer({ min: 1, max: 2 }),
        (whole, digits) => {
          const text = (whole / 10 ** digits).toFixed(digits);
          expect(amount(text, 'L')).toBe(Number(text));
          expect(amount(text.replace('.', ','), 'L')).toBe(Number(text));
        },
      ),
      { seed: 20260203 },
    );
  });

  test('whatever is typed, nothing but a finite number is understood', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.stringMatching(/^[0-9., /½a-z%+-]{0,12}$/)),
        (typed) => {
          for (const unit of ['L', 'h', 'kn', 'mm'] as const) {
            const value = amount(typed, unit);
            if (value !== null) expect(Number.isFinite(value)).toBe(true);
          }
        },
      ),
      { numRuns: 3000, seed: 20260203 },
    );
  });
});

describe('a level', () => {
  test.each([
    ['0.8', { level: 0.8 }],
    ['300 ml', { level: 0.3 }],
    ['1/4', { share: 0.25 }],
    ['1/4 l', { level: 0.25 }],
    ['1 1/2', { level: 1.5 }],
    ['60%', { share: 0.6 }],
    ['half', { share: 0.5 }],
    ['Full', { share: 1 }],
    ['low', { share: 0 }],
    ['off', { off: 'below' }],
    ['over', { off: 'above' }],
    ['+0.2', { change: 0.2 }],
    ['\u2212300 ml', { change: -0.3 }],
  ])('%s', (typed, level) => {
    expect(levelFrom(typed, 'level')).toEqual({ ok: true, value: level });
  });

  test('a lone fraction with a sign is asked about: of a litre, or of the stick?', () => {
    expect(levelFrom('+1/4', 'level')).toMatchObject({ ok: false, troubles: [{ example: '+1/4 L' }] });
  });

  test('a bare gallon is asked about here too', () => {
    expect(levelFrom('2 gal', 'level')).toMatchObject({ troubles: [{ example: '2 us gal or 2 imp gal' }] });
  });

  test('what is none is told all that would be one', () => {
    expect(levelFrom('banana', 'level')).toMatchObject({
      troubles: [{ expected: 'litres, a share from low to full, or off the stick' }],
    });
  });
});

test('a bare 60 is asked about where a share is wanted: 60 % or 60 times?', () => {
  expect(shareFrom('60', 'share').ok).toBe(false);
  expect(shareFrom('60 %', 'share')).toEqual({ ok: true, value: 0.6 });
  expect(shareFrom('1/3', 'share')).toEqual({ ok: true, value: 1 / 3 });
  expect(shareFrom('new', 'share')).toEqual({ ok: true, value: 1 });
});

test('yes and no are understood in the words used aboard, and nothing else is taken for either', () => {
  for (const word of ['y', 'Yes', 'OK', 'true'])
    expect(yesNoFrom(word, 'ok')).toEqual({ ok: true, value: true });
  for (const word of ['n', 'NO', 'false']) expect(yesNoFrom(word, 'ok')).toEqual({ ok: true, value: false });
  for (const word of ['', 'maybe', '1', 'yn']) expect(yesNoFrom(word, 'ok').ok).toBe(false);
});

test("a check's number may carry the check's own unit, and no other", () => {
  expect(numberIn('12.7', 'V', 'value')).toEqual({ ok: true, value: 12.7 });
  expect(numberIn('12,7 v', 'V', 'value')).toEqual({ ok: true, value: 12.7 });
  expect(numberIn('6', null, 'value')).toEqual({ ok: true, value: 6 });
  expect(numberIn('12.7 A', 'V', 'value').ok).toBe(false);
});
