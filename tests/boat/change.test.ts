import { describe, expect, it } from 'vitest';
import { changedText } from '../../source/boat/change.ts';

const TEXT = `{ "format": 1, "name": "Tern", "mine": [1,  2],
  "checks": [
    { "id": "steering",   "name": "Steering", "colour": "red" },
    { "id": "seacocks", "name": "Seacocks" }
  ]
}
`;

describe('a change to boat.json', () => {
  it('leaves all else as it was written, unknown fields and odd spaces included', () => {
    const set = [{ path: ['name'], value: 'Wheel' }];
    expect(changedText(TEXT, { kind: 'checks', id: 'steering', how: 'change', set })).toBe(
      TEXT.replace('"Steering"', '"Wheel"'),
    );
  });

  it('puts a value in, however deep, and takes one out', () => {
    const put = changedText(TEXT, {
      kind: 'checks',
      id: 'seacocks',
      how: 'change',
      set: [{ path: ['loss', 'perDay', 'mean'], value: 2 }],
    });
    expect(JSON.parse(put).checks[1]).toEqual({
      id: 'seacocks',
      name: 'Seacocks',
      loss: { perDay: { mean: 2 } },
    });
    const set = [{ path: ['colour'], value: undefined }];
    const taken = changedText(TEXT, { kind: 'checks', id: 'steering', how: 'change', set });
    expect(JSON.parse(taken).checks[0]).toEqual({ id: 'steering', name: 'Steering' });
  });

  it('adds an item at the end of its list, also where there was no list, and retires one', () => {
    const set = [{ path: ['name'], value: 'Flares' }];
    const added = changedText(TEXT, { kind: 'dated', id: 'flares', how: 'add', set });
    expect(JSON.parse(added)).toMatchObject({ mine: [1, 2], dated: [{ id: 'flares', name: 'Flares' }] });
    const more = changedText(TEXT, { kind: 'checks', id: 'flares', how: 'add', set });
    expect(JSON.parse(more).checks.map(({ id }: { id: string }) => id)).toEqual([
      'steering',
      'seacocks',
      'flares',
    ]);
    const retired = changedText(TEXT, { kind: 'checks', id: 'steering', how: 'retire', set: [] });
    expect(JSON.parse(retired).checks).toEqual([{ id: 'seacocks', name: 'Seacocks' }]);
  });

  it('of an item that is not there changes nothing', () => {
    expect(changedText(TEXT, { kind: 'fluids', id: 'oil', how: 'retire', set: [] })).toBe(TEXT);
  });
});
