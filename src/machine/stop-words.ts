// Words that stop the walk at once, as whole words and phrases. Better one stop too many than one too few;
// the few harmless uses that are known ("pop-up rest") are taken out first.

const HARMLESS = /\bpop-?up\b|\bcrack(ed)? of dawn\b|\bno (crack|cracks|splinter|splinters|damage|injury)\b/gi;

const STOPS = new RegExp(
  String.raw`\b(crack|cracks|cracked|cracking|splinter|splinters|splintered|delaminat\w*|pop|popped|dry[- ]?fir\w*|derail\w*|(string|cable) (came |slipped |jumped )?off|strand|strands|clip (is )?(missing|gone|off)|missing clip|lost (a |the )?clip|new (noise|vibration|sound|rattle)|hurt|injur\w*|bleed\w*|blood|someone (is )?in front|somebody (is )?in front|person in front|broke|broken|snapped|exploded|stop|emergency)\b`,
  'i',
);

export const hasStopWord = (text: string): boolean => STOPS.test(text.replace(HARMLESS, ' '));
