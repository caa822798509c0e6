import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // No test leaves anything behind in the modules it loads, so files may share them: loading them anew for each took up to a third of the time.
    isolate: false,
    // Every core: left alone, one is kept free, which on a machine of two is half of them.
    maxWorkers: '100%',
  },
});
