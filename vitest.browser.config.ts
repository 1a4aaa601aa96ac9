import { defineConfig } from 'vitest/config';

/** Whole-program tests in a real Chromium. They drive the built page (`npm run build` first), one file at a time: the machine has few cores. */
export default defineConfig({
  test: {
    include: ['test/browser/**/*.spec.ts'],
    testTimeout: 240_000,
    hookTimeout: 60_000,
    fileParallelism: false,
    setupFiles: ['test/matchers.ts'],
  },
});
