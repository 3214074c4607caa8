import { defineConfig } from 'vitest/config';

// These change what a terminal program prints, so a test must not depend on where it runs.
for (const name of ['CI', 'CONTINUOUS_INTEGRATION', 'NO_COLOR', 'FORCE_COLOR', 'QUARTERTURN_HOME']) delete process.env[name];

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/look/**', 'tests/bench/**', 'node_modules/**'],
    pool: 'forks',
    maxWorkers: 2,
    // No source keeps anything that one file could leave behind for the next, but for what follows from values that never change: so the
    // sources are loaded once a worker and not once a file. That is a third of the time.
    isolate: false,
    // A bound against hanging, not a measure of speed: a busy machine is slow, not wrong.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    allowOnly: false,
    // Whole tunes are played on the built content, and the program itself is started: both must be of today.
    globalSetup: ['tests/tools/fresh-build.ts'],
    // A snapshot that is not there is a failure, never written by itself: look at it, then `npx vitest run -u`.
    update: 'none',
  },
});
