import { chmodSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { build } from 'rolldown';
import { boatJsonSchema } from '../source/boat/schema.ts';

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
const out = 'built';

rmSync(out, { recursive: true, force: true });
mkdirSync(out);
await build({
  input: { main: 'source/main.tsx' },
  platform: 'node',
  resolve: { alias: { 'react-devtools-core': './.ci/nothing.js' } },
  transform: {
    define: {
      'process.env.DEV': '"false"',
      'process.env.NODE_ENV': '"production"',
      HOVESHORT_VERSION: JSON.stringify(version),
    },
    target: 'node22',
  },
  output: { dir: out, format: 'esm', minify: true, chunkFileNames: '[name].js', cleanDir: false },
  logLevel: 'warn',
});
writeFileSync(`${out}/boat.schema.json`, `${JSON.stringify(boatJsonSchema(), null, 2)}\n`);
writeFileSync(`${out}/hoveshort.js`, readFileSync('source/launch.js'));
chmodSync(`${out}/hoveshort.js`, 0o755);
