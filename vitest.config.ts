import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'checks/**/*.test.ts', 'test/*.test.ts'],
    testTimeout: 120_000,
    setupFiles: ['test/matchers.ts'],
  },
});
