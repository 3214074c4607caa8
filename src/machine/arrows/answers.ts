// What the questions of this chapter that are no steps of content take for an answer.

import { namesOf, oneOf } from '../../maths/closed.ts';
import type { ArrowClass } from '../notes.ts';

/** What was found on an arrow that no nock has mended, and the class that follows from it. */
export const LOOKS = { crack: 'never again', wobble: 'repair', vane: 'repair', nothing: 'practice' } as const satisfies Readonly<Record<string, ArrowClass>>;
export const isLook = oneOf(namesOf(LOOKS));

/** What was done with the list of nocks. */
export const TURN_ANSWERS = ['done', 'one stays', 'leave'] as const;
export const isTurnAnswer = oneOf(TURN_ANSWERS);
