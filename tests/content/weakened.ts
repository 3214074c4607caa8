// Every single way to make the shipped content a little less careful, one at a time. Nobody would write most of these on purpose;
// each is what a slip, a merge or a well-meant shortcut could leave behind.

import type { Content } from '../../src/content/types.ts';
import { ofAdjustments } from './weakened-adjustments.ts';
import { ofOrder } from './weakened-order.ts';
import { ofSteps } from './weakened-steps.ts';
import { ofWords } from './weakened-words.ts';
import type { Weakening } from './weakening.ts';

export const weakened = (content: Content): Weakening[] =>
  [...ofSteps(content), ...ofOrder(content), ...ofAdjustments(content), ...ofWords(content)];
