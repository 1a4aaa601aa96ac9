import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'checks/**/*.test.ts', 'test/*.test.ts'],
    testTimeout: 120_000,
    // What is read once for all tests of a group is read in a hook: it may take as long as a test.
    hookTimeout: 120_000,
    setupFiles: ['test/matchers.ts'],
  },
});
