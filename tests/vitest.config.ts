import { defineConfig } from 'vitest/config';

/** One worker serves many files: a worker of its own for each takes twice as long to load the program. */
export default defineConfig({
  test: { isolate: false, testTimeout: 30_000, setupFiles: ['tests/properties.ts'] },
});
