// What a caution must say, and what follows from a finding. Common practice; the words around it are the author's.

import type { Book } from './shape.ts';

export const CAUTIONS: Book['cautions'] = {
  'press': [/maker allows for this model/i, /shown how/i, /glasses/i, /clear of the limbs/i, /maker's manual/i, /authorised dealer/i],
  'bolts': [/loosen the locks first/i, /both bolts alike/i, /1\/4 turn at a time/i, /never past the maker's limit/i, /locks tight again before any draw/i, /maker's manual/i, /authorised dealer/i],
  'flex': [/carbon only|only carbon/i, /no broadhead/i, /gloves and glasses/i, /away from your face/i, /creak or damage: never sho/i, /authorised dealer/i],
  'draw': [/checked arrow on/i, /at the backstop/i, /off the trigger/i],
  'let-down': [/stay on target/i, /clear of the trigger/i, /arrow on/i, /jerk/i],
  // A loop that fails at full draw lets the string hit the face.
  'loop': [/at full draw/i, /your face/i, /cut, flat, fuzzy/i, /replace it before any draw/i],
  'blades': [/blades cut/i, /head wrench, never fingers/i, /covered/i, /ahead of your hand/i],
  'broadheads': [/no broadheads at the paper/i, /none near people/i, /head wrench, never fingers/i, /covered/i],
  'dry-fire': [/never let the string go without an arrow/i, /no draw, no press/i, /authorised dealer/i],
  // An open hook that slips is a dry fire.
  'rig': [/closed hook/i, /cannot let go/i, /no arrow on the bow/i, /never an open hook/i],
  'manual': [/maker's manual, local rules and licensed practice come first/i],
};

// How the five are looked at, what holds for those who still grow, and the figure that decides where a limit is told in words.
export const SAYS: Book['says'] = {
  'backstop': [/take the paper out/i, /what lies behind it/i, /people and animals/i, /under 18 or still growing: an adult is there now/i],
  'history': [/last looked it over/i, /to you or to another/i],
  'limbs': [/both faces and both edges/i, /bright light/i, /bit of cotton/i, /where it snags is a splinter/i],
  'axle-clips': [/fully seated/i, /manual shows another way/i, /no axle has moved sideways/i],
  'arrows-flexed': [/bend 1 to 2 in, listen and feel/i, /all round; then the other way/i, /never shoot it again/i],
  'arrows-set-aside': [/mark an X at both ends/i, /do not break it by hand/i],
  'bolts-top': [/under 18 or still growing: a dealer does it/i, /under 18 or still growing, or a bolt near the end of its thread: an authorised dealer/i],
  'bolts-bottom': [/under 18 or still growing, or a bolt near the end of its thread: an authorised dealer/i],
  'bolt-limit': [/this bow's own manual/i],
  'arrow-mass': [/less than 5\.0 gr for each lb of draw weight is not shot/i, /there is no exception/i],
  'mass-way': [/a weighed figure always replaces it/i],
  'shaft-grains': [/of two kinds take the lighter/i],
  'shaft-length': [/the shortest arrow/i],
  'point-grains': [/the lightest/i],
  'peak-weight': [/more than 2 lb above the limbs' rating: do not draw it again/i],
  'shaft-ahead': [/let down at once/i, /2 in for those who still grow/i, /less than 1\/2 in is not shot/i],
  'growing': [/left to grown-ups who were shown how/i],
  'as-recorded': [/a growing archer: an authorised dealer/i],
  'use': [/under 18 or still growing: not with this coach/i],
  'blades-ahead': [/at least 1\/2 in/i],
  'method': [/only for who is grown/i, /never for a beginner/i],
  'unfletched-ready': [/18 or over, and grown/i, /nobody else shoots unfletched shafts/i, /never a broadhead on a shaft without vanes/i],
  'arrow-speed': [/these same arrows, field points on/i],
  'second-mass': [/a reading that is there already/i, /nothing is shot for it/i],
  'holding-weight': [/cannot let go/i, /nobody holds a bow drawn for this/i],
  'draw-mark': [/only if it is known/i, /cannot let go/i],
  'rated-speed': [/70 lb, 30 in of draw and 350 gr/i],
  'press': [/maker allows it for this model and you were shown how/i],
};

// Sentences of the coach where somebody could be hurt: stops, limits that hang on two answers, work that is asked for in passing.
export const PHRASES: Book['phrases'] = {
  'growing': [/an adult is there at every session/i, /at least 2 in ahead/i, /no press, no limb bolts and no broadheads/i],
  'stop-shop': [/do not draw this bow, do not press it, do not relax it yourself/i, /authorised dealer/i],
  'stop-here': [/nothing is shot before/i],
  'stopped-by-word': [/let down if you are at full draw, pointing at the backstop/i, /nothing is shot until this is clear/i],
  'stop-word-bow': [/not drawn, pressed or relaxed/i, /authorised dealer/i],
  'stop-word-arrow': [/look, feel, flex/i],
  'stop-word-person': [/people first/i],
  'arrows-kept': [/mark an X at both ends/i],
  'bolts-unequal': [/within the maker's limit/i, /a quarter turn at a time/i, /still growing: an authorised dealer/i],
  'bolts-over-limit': [/turn both in, a quarter turn at a time/i, /still growing, or a bolt near the end of its thread: an authorised dealer/i],
  'mass-added-up': [/until it is weighed/i],
  'mass-too-low': [/partial dry fire/i, /do not shoot these/i, /inside the maker's range/i, /under 18 or still growing, an authorised dealer sets it/i],
  'peak-over-rating': [/do not draw it again/i, /authorised dealer/i],
  'shaft-too-short': [/do not shoot/i, /longer arrows are needed/i],
  'shaft-rather-short': [/ask the arrow maker or an authorised dealer/i],
  'missed-stop': [/no further shot/i, /an authorised dealer/i],
  'shoot-how': [/nobody behind you/i, /away from your face/i],
  'how-nock-swap': [/gloves and glasses on, away from your face/i, /never shot again/i],
  'arrow-look-said-crack': [/never shot again/i, /mark an X at both ends/i],
  'arrows-end-never-again': [/never shot again/i],
  'noted-since-done': [/do not draw it, do not press it/i, /an authorised dealer looks at it first/i, /see to people first/i],
  'record-since-done': [/of before that/i, /not drawn, pressed or shot until an authorised dealer/i],
  'record-stopped-shop': [/not to be drawn, pressed or shot until an authorised dealer/i],
  'length-otherwise': [/measure once more/i, /authorised dealer looks before the next draw/i],
  'caution-nock': [/nock whole, fully seated/i, /dry fire/i],
};

export const FOUND: Book['found'] = {
  'scatter': 'one-arrow=one_arrow loose-part=loose_part contact=contact grip=grip face=face release=other tired=tired_archer other=other nothing',
  'gross': 'contact=contact rest-timing=contact nock-fit=other centre-shot=other grip=grip face=face loose-part=loose_part other=other nothing',
  'very-gross': 'shafts=other one-arrow=one_arrow contact=contact nock-fit=other loose-part=loose_part grip=grip misread=other other=other nothing',
  'missed': 'loose-part=loose_part one-arrow=one_arrow contact=contact nock-fit=other aim=other tired=tired_archer other=other nothing',
  'not-returned': 'not-exact=other loose-part=loose_part contact=contact one-arrow=one_arrow tired=tired_archer other=other nothing',
  'broadhead-scatter': 'head-wobbles=one_arrow insert-loose=one_arrow vanes-small=other contact=contact wind=other grip=grip tired=tired_archer '
    + 'other=other nothing',
  'plumb-bend': 'grip=grip canted=other vanes=contact wind=other one-arrow=one_arrow loose-part=loose_part tired=tired_archer other=other nothing',
  'many-odd': 'loose-part=loose_part shafts=other nock-fit=other contact=contact tired=tired_archer nothing',
  'references': 'tired=tired_archer loose-part=loose_part contact=contact grip=grip one-arrow=one_arrow nothing',
};

/** `inspection/what was found`. */
export const FOUND_SAYS: Book['foundSays'] = {
  'gross/nock-fit': /no shot before/i,
  'very-gross/nock-fit': /no shot before/i,
  'missed/nock-fit': /no shot before/i,
  'missed/one-arrow': /never shot again/i,
  'missed/nothing': /a shop/i,
  'very-gross/shafts': /stop shooting these/i,
  'very-gross/nothing': /seen together by a shop/i,
  'many-odd/nock-fit': /no shot before/i,
};
