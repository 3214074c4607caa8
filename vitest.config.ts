import { defineConfig } from 'vitest/config';

// These change what a terminal program prints, so a test must not depend on where it runs.
for (const name of ['CI', 'CONTINUOUS_INTEGRATION', 'NO_COLOR', 'FORCE_COLOR', 'QUARTERTURN_HOME']) delete process.env[name];

const notRun = ['tests/look/**', 'tests/bench/**', 'node_modules/**'];
const STARTS_THE_PROGRAM = 'tests/cli/**/*.test.{ts,tsx}';
// Numbers in, numbers out, or whole tunes on a store of their own: nothing that one file could leave behind for the next,
// so the sources are loaded once a worker and not once a file. That is a third of the time.
const PURE = ['maths', 'archery', 'content', 'machine', 'explore', 'cases', 'tunes', 'report', 'docs', 'tooling', 'faces', 'sources', 'properties', 'practice', 'training'].map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`);

export default defineConfig({
  test: {
    pool: 'forks',
    maxWorkers: 2,
    // A bound against hanging, not a measure of speed: a busy machine is slow, not wrong.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    allowOnly: false,
    // Whole tunes are played on the built content, and the program itself is started: both must be of today.
    globalSetup: ['tests/tools/fresh-build.ts'],
    // A snapshot that is not there is a failure, never written by itself: look at it, then `npx vitest run -u`.
    update: 'none',
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, exclude: notRun, isolate: false } },
      { extends: true, test: { name: 'floors', include: ['tests/**/*.test.{ts,tsx}'], exclude: [...notRun, STARTS_THE_PROGRAM, ...PURE] } },
      { extends: true, test: { name: 'program', include: [STARTS_THE_PROGRAM], exclude: notRun } },
    ],
  },
});
