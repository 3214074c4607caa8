import { describe, expect, test } from 'vitest';
import { hasStopWord } from '../../src/machine/stop-words.ts';
import { afterQuestion, nextQuestions, stopOver, takenBack } from '../../src/machine/stops.ts';

describe('stop words', () => {
  test.each([
    'it cracked', 'CRACK', 'I heard a crack.', 'a splinter in the limb', 'the limb is delaminating', 'it popped', 'dry fire', 'dry-fired it', 'dryfire', 'the string derailed',
    'the string came off', 'cable off', 'a strand is cut', 'the clip is missing', 'missing clip', 'lost a clip', 'a new noise', 'new rattle', 'I am hurt', 'injured', 'he is bleeding',
    'someone in front', 'somebody is in front', 'a nock broke', 'broken', 'it snapped', 'it exploded', 'STOP', 'stop!', 'emergency', '(crack)', 'pop-up rest, and then it popped',
    // what a person at a bow shouts or types besides
    'STOOOP', 'sotp', 'stop by the shop tomorrow', 'cut', 'I cut myself', 'cut my finger', 'I am bleeding', 'the string let go', 'it let go at full draw', 'dry fired', 'it derailed', 'string slipped off', 'the string has come right off the cam',
    'cable jumped out of the track', 'limb split', 'the limb is splintered', 'limb delaminated', 'the limb is lifting', 'axle is bent', 'peep in the eye', 'the peep hit my eye', 'something in my eye', 'arrow stuck in my hand', 'arrow through the hand',
    'kid ran out', 'a kid just ran onto the range', 'dog ran across', 'people walking behind the target', 'he went down range', 'someone is in front of the target', 'someone walked in', 'it went over the backstop', 'it bounced back', 'the release went off',
    'misfired', 'ouch', 'my shoulder is in pain', 'fingers trapped', 'I feel dizzy', 'it hit me', 'help me', 'cease fire', 'loud bang', 'strange noise', 'limbs are creaking', 'the loop slipped', 'serving is separated', 'frayed string', 'the string is cut',
    'the clip fell off', 'the arrow fell off', 'the bow fell', 'I dropped the bow', 'blew up', 'shattered', 'unsafe', '64stop', 'high 1/2cracked', 'Old BSTOP', 'it\u2019s cracked', 'not safe',
  ])('"%s" stops', (words) => expect(hasStopWord(words)).toBe(true));
  test.each([
    'pop-up rest fits', 'popup blind', 'crack of dawn', 'no cracks', 'no crack seen', 'no damage', 'cracker', 'unstoppable', 'stopwatch', 'the stops touch', 'population', 'high 1/2', '',
    'clipped the paper', 'the peep is off centre', 'the string is new',
    'drop-away rest', 'the drop-away drops early', 'a new one of 24 strands', '24-strand string', 'split limbs', 'split-limb bow', 'split yoke', 'the nock snaps on the string', 'the draw stop meets the cable', 'string stop 1/16 off the string', 'nothing broken',
    'never let go', 'ran out of paper', 'nobody is in front', 'no one behind the target', 'arrows cut to 28 in', 'dominant eye is the right one', 'the grip sits better in the hand', 'sun came out', 'it came in low', 'torn paper', 'windy today', 'left', 'as told', 'not now',
    'another', 'clean', 'missed', 'missed the target', 'bad high 3', '1/32 in', 'with my wife from the left', 'Kim', 'Old Blue', 'we walked home at five', 'popular', 'NONSTOPPER', 'paper hung anew', 'moved the sight down',
  ])('"%s" does not', (words) => expect(hasStopWord(words)).toBe(false));
  test('a harmless use hides no other word beside it', () => expect(hasStopWord('no crack in the riser, but the limb cracked')).toBe(true));
});

const of = (step: string) => ({ step, line: 1, inForce: true });

describe('stops that lie on one another', () => {
  const dealer = { cause: 'gate', ask: ['released'], from: 'limbs' } as const;
  const word = { cause: 'word', ask: ['what-happened'], from: 'word' } as const;

  test('a word said on top of a dealer\'s stop adds its question and takes none away', () => {
    const both = stopOver(dealer, word);
    expect(both.ask).toEqual(['what-happened']);
    expect(afterQuestion(both, 'what-happened')).toEqual(dealer);
    expect(afterQuestion(afterQuestion(both, 'what-happened'), 'released')?.ask).toEqual([]);
  });
  test('the next question of each is known, so that nobody draws for the upper one before the lower one is looked at', () => {
    const drawn = { cause: 'gate', ask: ['shaft-ahead', 'peak-weight'], from: 'shaft-ahead' } as const;
    expect(nextQuestions(stopOver(dealer, drawn))).toEqual(['shaft-ahead', 'released']);
    expect(nextQuestions(null)).toEqual([]);
  });
  test('an answer that leads out of the lower one counts at once', () => {
    expect(afterQuestion(stopOver(dealer, word), 'released')).toEqual(word);
  });
  test('a stop that asks all that an older one did takes it up', () => {
    expect(stopOver({ ...dealer, ask: ['bolts-bottom'] }, { ...dealer, ask: ['bolts-top', 'bolts-bottom'] })).not.toHaveProperty('under');
    expect(stopOver(word, word)).toEqual(word);
    expect(stopOver(null, dealer)).toEqual(dealer);
  });
  test('two reasons for a dealer: taking one back leaves the other, and his word clears both', () => {
    const both = stopOver({ ...dealer, cause: 'word', from: 'word' }, { ...dealer, from: 'axle-clips' });
    expect(takenBack(both, of('axle-clips'))).toEqual({ ...dealer, cause: 'word', from: 'word' });
    expect(afterQuestion(both, 'released')?.ask).toEqual([]);
    expect(stopOver(dealer, dealer)).toEqual(dealer);
  });
  test('only the line that raised it takes it back: another answer to the same question leaves it standing', () => {
    const raised = { ...dealer, from: 'history', line: 7 };
    expect(takenBack(raised, { step: 'history', line: 34, inForce: true })).toBeNull();
    expect(takenBack(raised, { step: 'history', line: 7, inForce: false })?.ask).toEqual([]);
    const twice = stopOver(raised, { ...raised, line: 34 });
    expect(takenBack(twice, { step: 'history', line: 34, inForce: true })).toEqual(raised);
    expect(afterQuestion(twice, 'released')?.ask).toEqual([]);
  });
  test('taking back the answer that raised one leaves the others', () => {
    const both = stopOver(dealer, { cause: 'gate', ask: ['backstop'], from: 'backstop' });
    expect(takenBack(both, of('backstop'))).toEqual(dealer);
    expect(takenBack(both, of('limbs'))).toEqual({ cause: 'gate', ask: ['backstop'], from: 'backstop' });
    expect(takenBack(both, of('range'))).toBeNull();
    expect(takenBack(dealer, of('limbs'))?.ask).toEqual([]);
    expect(takenBack(null, of('limbs'))).toBeNull();
    expect(afterQuestion(null, 'limbs')).toBeNull();
  });
});
