import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { build } from 'rolldown';
import { boatJsonSchema } from '../source/boat/schema.ts';
import { tableJsonSchema } from '../source/tracing/table.ts';

const out = process.argv[2] ?? 'built';

rmSync(out, { recursive: true, force: true });
mkdirSync(out);
const { output } = await build({
  input: { main: 'source/main.tsx' },
  platform: 'node',
  // jsonc-parser's `main` is UMD, which cannot be bundled.
  resolve: {
    mainFields: ['module', 'main'],
    // Nothing is written but in one go, so the hooks of `when-exit` have nothing to clean up; they would raise every signal a second time.
    alias: {
      'react-devtools-core': join(import.meta.dirname, 'nothing.js'),
      'when-exit': join(import.meta.dirname, 'nothing.js'),
      // Preferences are checked by hand, without the schema these would compile.
      'ajv/dist/2020.js': join(import.meta.dirname, 'nothing.js'),
      'ajv-formats': join(import.meta.dirname, 'nothing.js'),
      // Versions are only compared to migrate preferences from an older one: none is.
      semver: join(import.meta.dirname, 'nothing.js'),
      'string-width': join(import.meta.dirname, 'string-width.cjs'),
      '@alcalzone/ansi-tokenize': join(import.meta.dirname, 'ansi-tokenize.js'),
    },
  },
  transform: {
    define: {
      // Yoga would fetch its own bytes where it can, and with that have Node load all of its client for the web.
      fetch: 'undefined',
      'process.env.DEV': '"false"',
      'process.env.NODE_ENV': '"production"',
    },
    target: 'node22',
  },
  output: { dir: out, format: 'esm', minify: true, chunkFileNames: '[name].js', cleanDir: false },
  logLevel: 'warn',
});
// The decoder loads its WebAssembly from beside itself, so both are shipped as they are; .cjs, since this package is of modules.
const codec = createRequire(import.meta.url).resolve('@cornerstonejs/codec-openjpeg/decodewasmjs');
mkdirSync(`${out}/openjpeg`);
copyFileSync(codec, `${out}/openjpeg/openjpegwasm_decode.cjs`);
copyFileSync(codec.replace(/js$/, 'wasm'), `${out}/openjpeg/openjpegwasm_decode.wasm`);
writeFileSync(`${out}/boat.schema.json`, `${JSON.stringify(boatJsonSchema(), null, 2)}\n`);
writeFileSync(`${out}/tracing.schema.json`, `${JSON.stringify(tableJsonSchema(), null, 2)}\n`);
writeFileSync(`${out}/LICENSES.txt`, licences(bundled(output)));
writeFileSync(`${out}/hoveshort.js`, readFileSync('source/launch.js'));
chmodSync(`${out}/hoveshort.js`, 0o755);

/** The packages whose code is in what users get, by name. */
function bundled(chunks: readonly { readonly type: string; readonly modules?: object }[]): readonly string[] {
  const names = chunks
    .flatMap(({ modules }) => Object.keys(modules ?? {}))
    .map((file) => /.*[\\/]node_modules[\\/]((?:@[^\\/]+[\\/])?[^\\/]+)/.exec(file)?.[1]?.replace('\\', '/'));
  return [...new Set([...names, '@cornerstonejs/codec-openjpeg'])]
    .filter((name) => name !== undefined)
    .sort();
}

/** Their licences, as these ask for. */
function licences(names: readonly string[]): string {
  return names
    .map((name) => {
      const folder = join('node_modules', name);
      const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
      const { license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
        license?: string;
      };
      return `${name}\n\n${file ? readFileSync(join(folder, file), 'utf8').trim() : `Licence: ${license}`}\n`;
    })
    .join(`\n${'-'.repeat(72)}\n\n`);
}
