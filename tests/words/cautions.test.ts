import { describe, expect, it } from 'vitest';
import { cautionOf, cautionsFor, passCaution } from '../../source/words/cautions.ts';

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

  it('of work that may be on a fuel say no flame', () => {
    for (const said of [
      cautionOf('work'),
      cautionOf('pour'),
      ...cautionsFor('service'),
      ...cautionsFor('fluid'),
    ])
      expect(said).toMatch(/Fuel: no flame/);
  });

  it('stand beside the looks at an engine, stopped or running, and not beside those before leaving', () => {
    expect(passCaution('stopped')).toMatch(/^Engine stopped/);
    expect(passCaution('running')).toMatch(/^Engine running: hands/);
    expect(passCaution('leaving')).toBeNull();
  });
});
