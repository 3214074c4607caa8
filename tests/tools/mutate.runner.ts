// Once a test has failed the mutant is caught: no further file of tests is even loaded.

import { VitestTestRunner } from 'vitest/runners';

export default class CaughtAtOnce extends VitestTestRunner {
  private caught = false;

  override cancel(...reason: Parameters<VitestTestRunner['cancel']>): void {
    this.caught = true;
    super.cancel(...reason);
  }

  override importFile(path: string, source: 'collect' | 'setup'): unknown {
    return this.caught ? undefined : super.importFile(path, source);
  }
}
