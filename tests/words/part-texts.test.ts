import { afterEach, describe, expect, it } from 'vitest';
import { fieldsOf, type PartField } from '../../source/boat/part-fields.ts';
import type { PartKind } from '../../source/boat/parts.ts';
import { meaningOf, usualWords } from '../../source/words/part-meaning.ts';
import { textOf, valueFrom } from '../../source/words/part-texts.ts';
import { FILE_UNITS, prefer } from '../../source/words/preferred.ts';
import { aBoat } from '../helpers/a-boat.ts';

const boat = aBoat();

function field(kind: PartKind, path: string): PartField {
  const found = fieldsOf(kind, { engines: ['main'], legs: 1 }).find((one) => one.path.join('.') === path);
  if (!found) throw new Error(`${kind} has no ${path}`);
  return found;
}

const read = (kind: PartKind, path: string, text: string, about = 0) => {
  const value = valueFrom(text, field(kind, path), boat, about);
  return value.ok ? value.value : value.troubles[0];
};
const meaning = (kind: PartKind, path: string, typed: string) =>
  meaningOf(read(kind, path, typed), field(kind, path), { boat, typed, begins: null });

afterEach(() => prefer(FILE_UNITS));

describe('what is typed for boat.json', () => {
  it.each<[PartKind, string, string, unknown]>([
    ['fluids', 'low', '300 ml', 0.3],
    ['fluids', 'low', '1,5', 1.5],
    ['limits', 'wind', 'f6', 24.5],
    ['limits', 'wind', 'off', false],
    ['limits', 'seas', '5 ft', 1.524],
    ['limits', 'daylight', '0.5 1', { afterSunrise: 0.5, beforeSunset: 1 }],
    ['limits', 'daylight', '30 min after sunrise', { afterSunrise: 0.5, beforeSunset: 0 }],
    ['limits', 'daylight', 'off', false],
    ['anodes', 'limit', '1/4', 0.25],
    ['passages', 'motoring.main.mean', '35%', 0.35],
    ['passages', 'reserveDays', '2 weeks', 14],
    ['passages', 'shelter', 'y', true],
    ['spares', 'expected.perEngineHour', '2 in 1000 h', 0.002],
    ['spares', 'expected.perEngineHour', 'once in 500 engine hours', 0.002],
    ['spares', 'expected.perDay', '4 a year', 0.01095],
    ['anodes', 'metal', 'ZINC', 'zinc'],
    ['fluids', 'engine', 'Main engine', 'main'],
    ['fluids', 'stock', 'gear oil in cans', 'gear-oil-can'],
    ['services', 'unsettles', 'raw-water; house bank', ['raw-water', 'house-bank']],
    [
      'services',
      'uses',
      'impellers 1, gear-oil-can 300 ml',
      [
        { spare: 'impellers', count: 1 },
        { spare: 'gear-oil-can', count: 0.3 },
      ],
    ],
    [
      'services',
      'uses',
      '2 fuses, gear oil in cans 1,2',
      [
        { spare: 'fuses', count: 2 },
        { spare: 'gear-oil-can', count: 1.2 },
      ],
    ],
    ['services', 'uses', 'fuses', [{ spare: 'fuses', count: 1 }]],
    ['anchorages', 'at', "41°12'N 30°24'W", [41.2, -30.4]],
    ['anchorages', 'at', 'Heron Bight', [41.2, -30.4]],
    [
      'anchorages',
      'sectors',
      '120-230 24 kn 1.5 m; nw to ne: 15',
      [
        { from: 120, to: 230, wind: 24, seas: 1.5 },
        { from: 315, to: 45, wind: 15 },
      ],
    ],
    ['anchorages', 'sectors', '120-230 seas 5 ft', [{ from: 120, to: 230, seas: 1.524 }]],
  ])('%s %s: %s', (kind, path, text, value) => expect(read(kind, path, text)).toEqual(value));

  it.each<[PartKind, string, string, string, string?]>([
    ['fluids', 'low', 'some', 'a number of litres, 0 to 1000000'],
    ['fluids', 'low', '-1', 'a number of litres, 0 to 1000000'],
    ['fluids', 'low', '1 gal', 'us gal or imp gal', '1 us gal or 1 imp gal'],
    ['anodes', 'metal', 'zink', 'one of zinc, aluminium, magnesium', 'zinc'],
    ['dated', 'expires', 'soon', 'a date as year-month-day, as in "2027-03-31"'],
    ['fluids', 'stock', 'geer-oil-can', 'the id of a spare', 'gear-oil-can'],
    ['fluids', 'stock', 'oars', 'the id of a spare', 'impellers, gear-oil-can, pencils'],
    ['services', 'uses', 'impelers 1', 'the id of a spare, and how many', 'impellers'],
    [
      'anchorages',
      'sectors',
      'so-w 20',
      'e for east and w for west: o is east in some languages and west in others',
      'se or sw',
    ],
    [
      'limits',
      'daylight',
      '13',
      'hours after sunrise and before sunset, each 0 to 12, or off for any hour',
      '0.5 after sunrise, 1 before sunset',
    ],
  ])('%s %s: %s is not understood, and what is', (kind, path, text, expected, example) => {
    expect(read(kind, path, text)).toEqual({
      kind: 'not understood',
      field: path,
      text: text === 'so-w 20' ? 'so' : text === 'impelers 1' ? 'impelers' : text,
      expected,
      ...(example === undefined ? {} : { example }),
    });
  });

  it('is shown as it can be typed again, in the units preferred', () => {
    expect(textOf(0.3, field('fluids', 'low'), boat)).toBe('0.3 L');
    expect(textOf(1, field('passages', 'reserveDays'), boat)).toBe('1 day');
    prefer({ ...FILE_UNITS, volume: 'US', height: 'ft' });
    expect(textOf(200, field('fluids', 'full'), boat)).toBe('52.8344 US gal');
    expect(read('fluids', 'full', '50', 200)).toBeCloseTo(189.27, 2);
    const sectors = [{ from: 300, to: 60, seas: 1.524 }];
    expect(textOf(sectors, field('anchorages', 'sectors'), boat)).toBe('300-60 seas 5 ft');
    expect(read('anchorages', 'sectors', '300-60 seas 5')).toEqual(sectors);
  });

  it('is told in other words where there are any', () => {
    expect(meaning('fluids', 'low', '300 ml')).toBe('0.3 L');
    expect(meaning('fluids', 'low', '0.3 L')).toBeNull();
    expect(meaning('services', 'uses', 'fuses 2')).toBe('Fuses 2');
    expect(meaning('services', 'unsettles', 'raw-water')).toBe('Raw water flows, no weep at the plugs');
    expect(meaning('spares', 'expected.perEngineHour', '0.002')).toBe('about once in 500 engine hours');
    expect(meaning('anchorages', 'at', '41.2 -30.4')).toBe("41°12.0'N 30°24.0'W, Heron Bight");
    const leg = field('passages', 'legs.0.to');
    const value = { to: [41.2, -30.4], place: 'Home' };
    expect(meaningOf(value, leg, { boat, typed: '', begins: [40.2, -30.4] })).toBe(
      "41°12.0'N 30°24.0'W, Home; Heron Bight; 60 nm as the rhumb line",
    );
  });

  it('has its default told with where it comes from', () => {
    expect(usualWords(field('fluids', 'atAnchor'))).toBe(
      '1 where nothing is written: common practice, no source.',
    );
    expect(usualWords(field('passages', 'motorBelow'))).toBe(
      '8 where nothing is written: common practice, no source.',
    );
    expect(usualWords(field('fluids', 'fuel'))).toBe('no where nothing is written.');
    expect(usualWords(field('fluids', 'reserve'))).toBeNull();
  });
});
