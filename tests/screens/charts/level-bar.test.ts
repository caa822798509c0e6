import { describe, expect, it } from 'vitest';
import { levelBar, levelSentence } from '../../../source/screens/charts/level-bar.ts';

const bar = (now: number, end: number | null) => levelBar({ low: 1, full: 2, now, end }, 11);

describe('the level bar', () => {
  it('has the low mark at its left end, the full mark at its right', () => {
    expect(bar(1, null)).toBe('[▪          ]');
    expect(bar(2, null)).toBe('[          ▪]');
    expect(bar(1.5, null)).toBe('[     ▪     ]');
  });

  it('leaves the way to the end of the stretch open', () => {
    expect(bar(1.6, 1.3)).toBe('[   ▫▫▫▪    ]');
    expect(bar(1.3, 1.6)).toBe('[   ▪▫▫▫    ]');
  });

  it('breaks the bracket the level lies beyond', () => {
    expect(bar(1.2, 0.7)).toBe('<▫▫▪        ]');
    expect(bar(0.9, null)).toBe('<▪          ]');
    expect(bar(2.2, null)).toBe('[          ▪>');
  });

  it('a tank with no room between its marks does not break it', () => {
    expect(levelBar({ low: 1, full: 1, now: 1, end: null }, 4)).toBe('[▪   ]');
  });

  it('says the same in a sentence', () => {
    expect(levelSentence({ low: 1, full: 2, now: 1.6, end: 1.3 })).toBe(
      'about 1.6 L; low 1 L, full 2 L; about 1.3 L at the end of the stretch',
    );
  });
});
