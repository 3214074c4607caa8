// What there is to learn on a practice bow. The names are for the program; the words for the archer stand in content.

export const LESSONS = ['two things wrong', 'it is the archer', 'one bad arrow', 'the first guess is wrong', 'do not shoot this bow'] as const;
export type Lesson = (typeof LESSONS)[number];
