import { defineConfig } from 'vitest/config';

/** Whole-program tests in a real Chromium. They drive the built page (`npm run build` first), one file at a time: the machine has few cores. */
export default defineConfig({
  test: {
    include: ['test/browser/**/*.spec.ts'],
    testTimeout: 240_000,
    hookTimeout: 120_000,
    // How long something may be awaited on a busy machine; what a test says of speed it measures itself.
    expect: { poll: { timeout: 30_000 } },
    fileParallelism: false,
    setupFiles: ['test/matchers.ts'],
  },
});
