// The tests that mutants are held against: fast ones, without the build. Those of the mutated file come first, for the first failure
// ends a run; the examples, which need the compiler, and the laws that all functions share, which take longest, come last.

import { basename } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

class NearestFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const own = (this.ctx.config.related ?? []).map((file) => basename(file, '.ts'));
    const rank = ({ moduleId }: TestSpecification): number => {
      const name = basename(moduleId, '.test.ts');
      return own.includes(name) ? 0 : 1 + ['examples', 'laws'].indexOf(name) + 1;
    };
    return Promise.resolve([...files].sort((a, b) => rank(a) - rank(b) || a.moduleId.localeCompare(b.moduleId)));
  }
}

export default defineConfig({
  test: {
    include: ['tests/{maths,archery,sources,properties}/**/*.test.ts', 'tests/tooling/examples.test.ts'],
    // What is simulated, and whole tunes.
    exclude: ['**/*.chance.test.ts', '**/mirror-tunes.test.ts'],
    // The same every time: a mutant is not to live or die by chance.
    setupFiles: ['tests/tools/mutate.setup.ts'],
    sequence: { sequencer: NearestFirst },
    isolate: false,
    runner: 'tests/tools/mutate.runner.ts',
  },
});
