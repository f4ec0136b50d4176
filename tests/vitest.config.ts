import { defineConfig } from 'vitest/config';

/** A worker serves many files: one of its own for each takes twice as long to load the program. Two, for the main thread has little to do. */
export default defineConfig({
  test: {
    isolate: false,
    maxWorkers: 2,
    testTimeout: 30_000,
    expect: { poll: { timeout: 15_000 } },
    setupFiles: ['tests/properties.ts'],
  },
});
