import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    testTimeout: 30_000,
    hookTimeout: 30_000,
    // Every core: left alone, one is kept free, which on a machine of two is half of them.
    maxWorkers: '100%',
  },
});
