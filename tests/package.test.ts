import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
/** What is bundled, as the built package says itself: a section each, its name first. */
const bundled = readFileSync(join(root, 'built', 'LICENSES.txt'), 'utf8')
  .split(`\n${'-'.repeat(72)}\n\n`)
  .map((section) => section.split('\n')[0]!);

describe('what a user installs', () => {
  it('asks for no other package', () => {
    expect(manifest.dependencies).toBeUndefined();
    expect(manifest.optionalDependencies).toBeUndefined();
    expect(manifest.peerDependencies).toBeUndefined();
  });

  it('runs nothing when it is installed', () => {
    for (const hook of ['preinstall', 'install', 'postinstall', 'prepare'])
      expect(manifest.scripts[hook]).toBeUndefined();
  });

  it('bundles packages that run nothing when installed and have no native code', () => {
    expect(bundled).toEqual(expect.arrayContaining(['ink', 'react', 'zod', 'conf', 'date-fns']));
    for (const name of bundled) {
      expect(lock.packages[`node_modules/${name}`].hasInstallScript, name).toBeUndefined();
      const files = readdirSync(join(root, 'node_modules', name), { recursive: true, encoding: 'utf8' });
      expect(
        files.filter((file) => /\.node$|binding\.gyp$/.test(file)),
        name,
      ).toEqual([]);
    }
  });

  it('says where the lock file got nothing from: no address of a registry stands in it', () => {
    expect(JSON.stringify(lock)).not.toContain('"resolved"');
  });
});
