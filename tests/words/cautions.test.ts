import { describe, expect, it } from 'vitest';
import { cautionsFor } from '../../source/words/cautions.ts';

describe('cautions', () => {
  it.each(['fluid', 'anode', 'service'] as const)(
    'stand beside work on a %s, and defer to the maker',
    (kind) => {
      const [said] = cautionsFor(kind);
      expect(said).toMatch(/engine stopped/);
      expect(said).toMatch(/The maker's manual comes first\.$/);
    },
  );

  it('are not said where no tool is taken up', () => {
    for (const kind of ['spare', 'check', 'dated'] as const) expect(cautionsFor(kind)).toEqual([]);
  });
});
