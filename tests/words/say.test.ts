import { describe, expect, it } from 'vitest';
import {
  amountWords,
  badHundred,
  counted,
  currentWords,
  dayWords,
  durationWords,
  experimentWords,
  goodHundred,
  hundred,
  lastingWords,
  momentWords,
  moneyWords,
  rateWords,
  sentence,
} from '../../source/words/say.ts';

describe('figures in words', () => {
  it.each([
    [0.849, 'L', '0.849 L'],
    [1.18456, 'L', '1.18 L'],
    [214.4, 'L', '214 L'],
    [3412.6, 'h', '3413 h'],
    [0, 'L', '0 L'],
    [0.402, 'share', '40 %'],
    [1, 'share', '100 %'],
    [2, 'each', '2'],
    [12.7, 'V', '12.7 V'],
    [7, null, '7'],
  ])('%d %s is %s', (value, unit, words) => {
    expect(amountWords(value, unit)).toBe(words);
  });

  it('never rounds a score up to what it has not reached', () => {
    expect(hundred(94.999)).toBe('94 in 100');
    expect(hundred(95)).toBe('95 in 100');
    expect(hundred(99.99)).toBe('99 in 100');
    expect(hundred(100)).toBe('100 in 100');
  });

  it('never calls a chance of something bad nothing', () => {
    expect(badHundred(0)).toBe('less than 1 in 100');
    expect(badHundred(0.004)).toBe('less than 1 in 100');
    expect(badHundred(0.041)).toBe('4 in 100');
  });

  it.each([
    [0.2, '12 min'],
    [0.9999, '1 h'],
    [7.5, '7 h 30 min'],
    [9, '9 h'],
    [23.9999, '1 d'],
    [46, '1 d 22 h'],
    [48.2, '2 d'],
  ])('%d hours last %s', (hours, words) => {
    expect(durationWords(hours)).toBe(words);
  });

  it.each([
    ['beyond', 'more than ten years'],
    [3.29, '3.2 days'],
    [0, '0 days'],
    [191.9, '191 days'],
  ] as const)('what lasts %s days is never said to last longer: %s', (days, words) => {
    expect(lastingWords(days)).toBe(words);
  });

  it('tells how often something happens the way a person would', () => {
    expect(rateWords({ mean: 0.00385, per: 'engine hour' })).toBe('about once in 260 engine hours');
    expect(rateWords({ mean: 3, per: 'day' })).toBe('about 3 a day');
    expect(rateWords({ mean: 0.7, per: 'engine hour' })).toBe('about 0.7 an engine hour');
  });

  it('asks for dips where they tell running from lying, and for a pad where they would not', () => {
    expect(experimentWords({ runs: 1, hours: 2 })).toBe('dip before and after one charging run of 2 h');
    expect(experimentWords({ runs: 4, hours: 1.4 })).toBe(
      'dip before and after each of 4 charging runs of 1.4 h',
    );
    expect(experimentWords(null)).toContain('a clean pad');
  });

  it('has currents in what they are read in, money to the penny, and no chance read off a log as certain', () => {
    expect([currentWords(0.0032), currentWords(1.13)]).toEqual(['3.2 mA', '1.1 A']);
    expect([moneyWords(38), moneyWords(7.5)]).toEqual(['38', '7.50']);
    expect([goodHundred(1), goodHundred(0.81)]).toEqual(['more than 99 in 100', '81 in 100']);
  });

  it('counts one thing and several', () => {
    expect([counted(1, 'look', 'looks'), counted(9, 'look', 'looks')]).toEqual(['1 look', '9 looks']);
  });
});

describe('times in words', () => {
  const at = Date.UTC(2026, 11, 31, 23, 5);

  it('are those of the zone asked for', () => {
    expect(momentWords(at, 'UTC')).toBe('Thu 31 Dec 2026 23:05');
    expect(momentWords(at, 'Pacific/Auckland')).toBe('Fri 1 Jan 2027 12:05');
    expect(dayWords(at, 'Pacific/Auckland')).toBe('1 Jan 2027');
  });

  it('leave the year out beside a moment of the same year, by the same clocks', () => {
    expect(momentWords(at, 'UTC', Date.UTC(2026, 0, 1))).toBe('Thu 31 Dec 23:05');
    expect(momentWords(at, 'Pacific/Auckland', Date.UTC(2026, 0, 1))).toBe('Fri 1 Jan 2027 12:05');
  });
});

it('a phrase becomes a sentence, once', () => {
  expect(sentence('gear oil is low')).toBe('Gear oil is low.');
  expect(sentence('Is it?')).toBe('Is it?');
});
