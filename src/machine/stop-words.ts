// Words that stop the walk at once, as whole words and phrases, as a person at a bow would shout or type them.
// Better one stop too many than one too few: a stop too many costs one question ("nothing, it was only a word").
// Only the harmless uses that are known ("pop-up rest") are taken out first.

const any = (...words: readonly string[]): string => `(?:${words.join('|')})`;

/** Names of parts, negations and turns of speech. Each is cut out by itself, so that it hides no other word beside it. */
const HARMLESS = any(
  'pop-?up', 'crack(ed)? of dawn', String.raw`(draw|cable|limb|string|cam)[- ]stops?`, 'stop-?watch',
  String.raw`no (cracks?|splinters?|damage|injur(y|ies)|blood|fray(ing)?|noises?|creak(s|ing)?|dents?)`,
  String.raw`(nothing|none|not|never) (is |was )?(cracked|broken|frayed|splintered|delaminated|hurt|derailed|dry[- ]?fired)`,
  String.raw`\d+[- ]strands?`, 'strand count', String.raw`split[- ](limbs?|yokes?|cables?|fingers?|buss?)`,
  String.raw`snap[- ]?(on|in|fit|caps?|rings?|swivels?)`, String.raw`(nocks?|it) snaps (on|onto)`,
  String.raw`(cannot|can not|can't|never|not|don't|won't|doesn't) let go`, 'burst of',
  String.raw`no[- ]?(one|body|people|person|kids?|children|dogs?)[a-z' ]{0,12} (in front|behind|downrange|down range)`, 'ran out of',
);

const SIDE = any('in front', 'down ?range', 'behind', 'across', 'into', 'onto', 'in', 'out', 'towards?', '(?:by|at|to|up to|near|over to) the (?:targets?|backstop|paper|butts?)');
const WHO = any('someone', 'somebody', 'some one', 'people', 'persons?', 'man', 'woman', 'guy', 'boy', 'girl', 'kids?', 'child', 'children', 'dogs?', 'horse', 'buddy', 'friend', 'neighbou?r', 'hiker', 'he', 'she', 'they');
const GOES = any('ran', 'runs?', 'running', 'walk(?:s|ed|ing)?', 'stepp?(?:s|ed|ing)?', 'cross(?:es|ed|ing)?', 'came', 'comes?', 'coming', 'went', 'going', 'gone', 'stands?', 'standing', 'stood');
const BODY = any('eyes?', 'face', 'head', 'neck', 'chest', 'hands?', 'fingers?', 'thumbs?', 'wrists?', 'arms?', 'forearm', 'legs?', 'foot', 'feet', 'skin');
/** "is", "has just", "got": what may stand between a part and what became of it. */
const BECAME = String.raw`(?:(?:is|are|was|were|has|have|had|been|got|just|now|all|it)\s+)*`;
const OFF = String.raw`(?:(?:came|comes|coming|slipped|slips|jumped|fell|flew|popped|slid)\s+)?(?:right\s+)?`;

const STOPS: readonly string[] = [
  's+t+o+p+', 'sotp', 'stpo', 'tsop', 'emergency', 'cease ?fire', 'cease', 'hold (your )?fire', 'halt', 'abort', 'danger', 'dangerous', 'unsafe', 'not safe', 'accident', 'help me', 'help (him|her|us)', 'ambulance', 'hospital', 'first aid', 'mayday',
  // the bow
  'crack(s|ed|ing)?', String.raw`splinter\w*`, String.raw`delaminat\w*`, 'delam', 'pop(s|ped)?', 'snap(s|ped)?', 'broke', 'broken', 'is breaking', String.raw`explod\w*`, String.raw`shatter\w*`, 'burst', 'bang', 'blew', 'blown (up|apart|out)', 'gave way', 'split(s|ting)?', String.raw`fray\w*`, String.raw`unravel\w*`, 'strands?',
  String.raw`dry[- ]?fir\w*`, String.raw`mis-?fir\w*`, String.raw`derail\w*`, 'let go', 'went off', String.raw`fired by (itself|accident)`, String.raw`accidental(ly)?`,
  String.raw`(string|cable|serving|loop|yoke|peep|nock|arrow|cam|limb|module|weight) ${BECAME}${OFF}off(?! (?:centre|center|line|by|to|a|\d))`,
  String.raw`(string|cable|arrow|limb|axle|cam|peep|rest) ${BECAME}(?:(?:came|slipped|jumped|flew|shot|popped)\s+)?out`,
  String.raw`(off|out of) (the|its) (cams?|track|groove|wheel)`,
  String.raw`(string|cable|loop|serving|d-loop|yoke|muscle|tendon) ${BECAME}(cut|torn|tore|ripped|parted|slipped|gave|loose|separated|separating|gone)`,
  String.raw`(limb|axle|cam|riser) ${BECAME}(bent|loose|twisted|lifted|lifting|moved|slipped|failed|crooked)`,
  String.raw`clips? ${BECAME}(?:(?:came|fell|popped)\s+)?(missing|gone|off|out|lost|loose)`, 'missing clip', String.raw`lost (a |an |the |one )?(axle )?clip`, String.raw`(peep|nock|arrow) (flew|hit)`,
  String.raw`(new|strange|odd|funny|weird|loud|bad|awful) (noise|vibration|sound|rattle|bang|creak|click)`, String.raw`creak\w*`,
  String.raw`(bow|it) (fell|dropped)`, 'dropped (the|my|it|his|her)( bow)?',
  // a person
  String.raw`hurts?`, String.raw`injur\w*`, String.raw`bleed\w*`, 'bled', 'blood', 'ouch', 'pain', 'painful', String.raw`wound(ed|s)?`, String.raw`stab\w*`, String.raw`impal\w*`, String.raw`pierc\w*`, String.raw`punctur\w*`, String.raw`dizzy`, String.raw`faint(ed|ing)?`, String.raw`collaps\w*`, 'unconscious',
  String.raw`(i|he|she|i'm|i am|got) cut`, String.raw`cut (my|his|her|your|the|a|on)? ?(myself|himself|herself|${BODY})`, String.raw`cut (myself|himself|herself)`, String.raw`^\W*cut\W*$`,
  String.raw`(stuck|sticking|through|into|hit|hits|struck|went|caught|jammed|poked|burn(ed|t)?)[a-z' ]{0,14} ${BODY}`, String.raw`in (my|his|her|the|an|your) (eyes?|face|skin)`,
  String.raw`${BODY} ${BECAME}(stuck|caught|trapped|pinched|jammed|numb|cut)`, String.raw`hit (me|him|her|us|them|someone|somebody|a person|a dog)`, String.raw`(can't|cannot|can not) (see|breathe)`,
  // the range
  String.raw`${WHO} (?:(?:is|are|was|were|has|have|just|now|still)\s+)*(in front|down ?range|behind the|in the way|at the target|on the range|by the target)`, String.raw`${WHO} (?:(?:is|are|was|were|has|have|just|now|suddenly)\s+)*${GOES} ${SIDE}`,
  String.raw`(over|past|beyond|around|through) the (backstop|back ?stop|bank|berm|net|fence|wall|butt|target)`, String.raw`ricochet\w*`, String.raw`bounced? back`, String.raw`(arrow|it) came back`,
];

// A figure may stand right before a word ("64stop"): only letters make it part of a longer one.
const whole = (words: string, flags: string): RegExp => new RegExp(String.raw`(?<![\p{L}])(?:${words})(?![\p{L}])`, flags);
const HARMLESS_USE = whole(HARMLESS, 'giu');
const STOP_WORD = whole(STOPS.join('|'), 'iu');
/** Shouted into the middle of something that was half typed: "Old BSTOP". */
const SHOUTED = /STOP(?!P[A-Z]|[A-Z])/;

export const hasStopWord = (text: string): boolean => {
  // Typographic apostrophes come from phones and pastes.
  const plain = text.replace(/[\u2018\u2019]/g, "'").replace(/\s+/g, ' ').replace(HARMLESS_USE, ' , ');
  return STOP_WORD.test(plain) || SHOUTED.test(plain);
};
