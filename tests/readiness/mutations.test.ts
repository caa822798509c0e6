import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/** Faults that must not go unnoticed: each is planted in a copy of the source, and some closed form must no longer hold there. */
const faults = [
  { fault: 'speed is not truncated', file: 'passages.ts', from: 'low: mean / 4', to: 'low: -Infinity' },
  {
    fault: 'a shared stock is counted twice',
    file: 'fluids.ts',
    from: 'together[i]! > stockL',
    to: 'together[i]! > 2 * stockL',
  },
  { fault: 'the reserve is ignored', file: 'fluids.ts', from: 'fluid.reserve ?? fluid.low', to: 'fluid.low' },
  {
    fault: 'the reserve days are forgotten',
    file: 'fluids.ts',
    from: 'hours[i]! / 24 + reserveDays',
    to: 'hours[i]! / 24',
  },
  { fault: 'a spare is counted once too often', file: 'spares.ts', from: 'stock)) + 1', to: 'stock)) + 2' },
  { fault: 'the grace is forgotten', file: 'services.ts', from: 'left + service.graceHours', to: 'left' },
] as const;

const root = join(import.meta.dirname, '..', '..');
let copy = '';

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'hoveshort-faults-'));
  for (const part of ['source', 'tests', 'package.json'])
    cpSync(join(root, part), join(copy, part), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
});
afterAll(() => rmSync(copy, { recursive: true }));

describe('a fault planted in the model breaks a closed form', () => {
  it('and without one none is broken', () => expect(broken()).toEqual([]));

  it.each(faults)('$fault', ({ file, from, to }) => {
    const path = join(copy, 'source', 'readiness', file);
    const sound = readFileSync(path, 'utf8');
    expect(sound).toContain(from);
    writeFileSync(path, sound.replaceAll(from, to));
    try {
      expect(broken()).not.toEqual([]);
    } finally {
      writeFileSync(path, sound);
    }
  });
});

/** The closed forms that do not hold in the copy, in a process of its own. */
function broken(): readonly string[] {
  const script = `
    import { closedForms } from './tests/helpers/closed-forms.ts';
    const off = closedForms.filter(({ run }) => {
      const { got, expected, within } = run();
      return !(Math.abs(got - expected) <= within);
    });
    process.stdout.write(JSON.stringify(off.map(({ title }) => title)));`;
  const args = ['--input-type=module', '--eval', script];
  const stdio: ['ignore', 'pipe', 'inherit'] = ['ignore', 'pipe', 'inherit'];
  return JSON.parse(execFileSync(process.execPath, args, { cwd: copy, encoding: 'utf8', stdio }));
}
