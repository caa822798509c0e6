import { describe, expect, it } from 'vitest';
import { fieldsOf } from '../../source/boat/part-fields.ts';
import { KINDS, type PartKind } from '../../source/boat/parts.ts';

const PARTS: readonly PartKind[] = [...KINDS, 'boat', 'limits', 'alone'];
const lines = (kind: PartKind) => fieldsOf(kind, { engines: ['main', 'wing'], legs: 2 });

describe('the lines of a part', () => {
  it.each(PARTS)('of %s are said in the words of the schema, never the id, each path once', (kind) => {
    const fields = lines(kind);
    expect(fields.every(({ says }) => says.endsWith('.'))).toBe(true);
    expect(fields.some(({ path }) => path.join() === 'id')).toBe(false);
    const paths = fields.map(({ path }) => path.join('.'));
    expect(new Set(paths).size).toBe(paths.length);
  });

  it('leave nothing of a schema out but ids, the errors of forecasts, and the part that is one of its own', () => {
    const said = (kind: PartKind) => new Set(lines(kind).map(({ path }) => path[0]));
    expect(said('fluids')).toContain('engine');
    expect(said('services')).toContain('uses');
    expect(said('spares')).toContain('expected');
    expect(said('limits')).not.toContain('forecastError');
    expect(said('limits')).not.toContain('alone');
    expect(said('alone')).toContain('daylight');
    expect([...said('boat')]).toEqual(['name', 'crew', 'passage', 'anchorage']);
  });

  it('of a passage are its legs one by one, one more, and the motoring of each engine', () => {
    const paths = lines('passages').map(({ path }) => path.join('.'));
    expect(paths).toContain('legs.1.sectors');
    expect(paths).toContain('legs.+.to');
    expect(paths).toContain('motoring.wing.sd');
  });

  it('take a spread as a bad day: more of a loss, less of a speed', () => {
    const ways = [...lines('passages'), ...lines('fluids')].flatMap(({ path, holds }) =>
      holds.is === 'bad day' ? [`${path.join('.')} ${holds.way}`] : [],
    );
    expect(ways).toContain('speed.sd -1');
    expect(ways).toContain('loss.perDay.wide 1');
  });
});
