// The tests that mutants are held against: fast ones, without the build. Those of the mutated file come first, for the first failure
// ends a run; the examples, which need the compiler, come last.

import { basename } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

class NearestFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const own = (this.ctx.config.related ?? []).map((file) => basename(file, '.ts'));
    const rank = ({ moduleId }: TestSpecification): number => {
      const name = basename(moduleId, '.test.ts');
      return own.includes(name) ? 0 : name === 'examples' ? 2 : 1;
    };
    return Promise.resolve([...files].sort((a, b) => rank(a) - rank(b) || a.moduleId.localeCompare(b.moduleId)));
  }
}

export default defineConfig({
  test: {
    include: ['tests/{maths,archery,sources}/**/*.test.ts', 'tests/tooling/examples.test.ts'],
    exclude: ['**/*.chance.test.ts', 'tests/sources/{grubbs-extreme-spread,huber-1964}.test.ts'],
    // The same every time: a mutant is not to live or die by chance.
    setupFiles: ['tests/tools/mutate.setup.ts'],
    sequence: { sequencer: NearestFirst },
    isolate: false,
  },
});
