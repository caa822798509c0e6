import { describe, expect, it } from 'vitest';
import { lineVersion, upgraded } from '../../source/logbook/upgrades.ts';

describe('the version of a line', () => {
  it('is 1 until its form changes', () => {
    expect(lineVersion).toBe(1);
  });

  it('tells what this program can read', () => {
    const record = { v: lineVersion, kind: 'remark' };
    expect(upgraded(record)).toBe(record);
    expect(upgraded({ v: lineVersion + 1 })).toBe('newer');
    for (const v of [undefined, null, '1', 0, -1, 1.5, Number.NaN]) expect(upgraded({ v })).toBeNull();
  });
});
