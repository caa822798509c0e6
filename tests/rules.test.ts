import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

/** What a folder may import besides itself, `trouble.ts` and `outside.ts`. */
const everythingPure = [
  'boat',
  'passage',
  'forecast',
  'logbook',
  'condition',
  'inference',
  'readiness',
  'maths',
];
const mayImport: { readonly [folder: string]: readonly string[] } = {
  maths: [],
  boat: [],
  passage: ['boat', 'maths'],
  forecast: ['boat', 'maths'],
  logbook: ['boat', 'passage', 'forecast'],
  condition: ['boat', 'passage', 'logbook', 'maths'],
  inference: ['boat', 'condition', 'maths'],
  readiness: everythingPure,
  tracing: ['boat', 'condition', 'inference', 'maths'],
  words: [...everythingPure, 'tracing'],
  files: ['boat', 'logbook', 'forecast', 'tracing'],
  commands: [...everythingPure, 'tracing', 'words'],
  screens: [...everythingPure, 'tracing', 'words'],
};
const pure = [...everythingPure, 'tracing', 'words'];
/** Packages a pure folder may use; `node:`, ink, react and conf never. */
const packagesIn: { readonly [folder: string]: readonly string[] } = {
  boat: ['zod', 'jsonc-parser', 'fastest-levenshtein'],
  logbook: ['zod', 'fastest-levenshtein'],
  forecast: ['zod'],
  tracing: ['zod', 'jsonc-parser'],
  passage: ['suncalc'],
  condition: ['fastest-levenshtein'],
  readiness: ['date-fns', '@date-fns/utc'],
  words: ['date-fns', 'string-width', 'fastest-levenshtein'],
};
const impure = [
  /\bDate\.now\b/,
  /\bnew Date\(\)/,
  /\bMath\.random\b/,
  /\bprocess\./,
  /\bconsole\./,
  /\bset(Timeout|Interval|Immediate)\b/,
  /\bperformance\./,
];

const root = join(import.meta.dirname, '..', 'source');
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => ({ name: name.replaceAll('\\', '/'), text: readFileSync(join(root, name), 'utf8') }));

describe('the source keeps its layers', () => {
  it('lets each folder import only what stands before it', () => {
    expect(
      files.flatMap(({ name, text }) =>
        importsOf(text)
          .filter((to) => !isAllowed(name, to))
          .map((to) => `${name} imports ${to}`),
      ),
    ).toEqual([]);
  });

  it('keeps clock, chance, environment and terminal out of the pure folders', () => {
    const found = files
      .filter(({ name }) => pure.includes(folderOf(name)))
      .flatMap(({ name, text }) =>
        impure.filter((word) => word.test(text)).map((word) => `${name}: ${word.source}`),
      );
    expect(found).toEqual([]);
  });

  it('touches the process in main.tsx alone', () => {
    const found = files.filter(
      ({ name, text }) => name !== 'main.tsx' && /\bprocess\.(env|argv|exit|std)/.test(text),
    );
    expect(found.map(({ name }) => name)).toEqual([]);
  });

  it('has no file that nothing imports', () => {
    const imported = new Set(
      files.flatMap(({ name, text }) => importsOf(text).map((to) => target(name, to))),
    );
    expect(
      files.map(({ name }) => name).filter((name) => name !== 'main.tsx' && !imported.has(name)),
    ).toEqual([]);
  });

  it('has no index files', () => {
    expect(files.filter(({ name }) => /(^|\/)index\.tsx?$/.test(name))).toEqual([]);
  });
});

function importsOf(text: string): readonly string[] {
  const statement = /^(?:import|export)\b[^;]*?\bfrom '([^']+)'|\bimport\('([^']+)'\)/gm;
  return [...text.matchAll(statement)].map((match) => match[1] ?? match[2]!);
}

function folderOf(name: string): string {
  return name.includes('/') ? name.slice(0, name.indexOf('/')) : '';
}

function target(from: string, to: string): string {
  return to.startsWith('.') ? relative(root, join(root, dirname(from), to)).replaceAll('\\', '/') : to;
}

function isAllowed(from: string, to: string): boolean {
  const folder = folderOf(from);
  if (folder === '') return true;
  if (!to.startsWith('.'))
    return (
      !pure.includes(folder) ||
      (packagesIn[folder] ?? []).some((name) => to === name || to.startsWith(`${name}/`))
    );
  const reached = target(from, to);
  const into = folderOf(reached);
  return (
    into === folder ||
    reached === 'trouble.ts' ||
    reached === 'outside.ts' ||
    (mayImport[folder] ?? []).includes(into)
  );
}
