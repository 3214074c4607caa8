// Whole tunes that end with the arrows one by one: what is odd is found and mended or set aside, what is sound is cleared,
// and one wild shot makes no bad arrow.

import { describe, expect, it } from 'vitest';
import type { Advice, Ask, Finding, Intent, Tear, View } from '../../src/machine/types.ts';
import type { Bow } from './archer.ts';
import { nextMinute, play } from './play.ts';

/** A bow in tune, so that the walk comes to the arrows soon, and an archer who shoots all twelve. */
const tuned = (seed: number, more: Partial<Bow> = {}): Bow => ({
  start: { x: 0.03, y: 0.06 }, gain: {}, sd: 0.08, seed, ...more, answers: { 'arrows-wanted': 'all', 'cams': 'screw-adjust', ...more.answers },
});

type Played = ReturnType<typeof play>;
type ArrowFinding = Extract<Finding, { kind: 'arrow' }>;
const classesOf = ({ findings }: Played): readonly ArrowFinding[] => findings.filter((one) => one.kind === 'arrow');
const said = ({ views }: Pick<Played, 'views'>): string => views.flatMap(({ say }) => say).join('\n');
const inRecord = ({ last }: Played, title: string): readonly string[] =>
  last.record?.sections.find((section) => section.title === title)?.rows.map(({ name, value }) => `${name}: ${value}`) ?? [];
const shotsAt = ({ views }: Pick<Played, 'views'>): readonly Extract<Ask, { kind: 'tear' }>[] =>
  views.flatMap(({ ask }) => (ask?.kind === 'tear' && ask.step.endsWith('-arrow') ? [ask] : []));
/** Every change of an arrow that was advised, in order: `3 nock-turn 1`. */
const changes = ({ views }: Played): readonly string[] =>
  views.flatMap(({ ask, advice }) => (ask?.about === 'moved' && advice?.arrow !== undefined ? [`${advice.arrow} ${advice.knob} ${advice.amount?.value}`] : []));

const EVERY = Array.from({ length: 12 }, (_, i) => `${i + 1}`);
const BENT: Tear = { x: -0.7, y: 0.1 };

describe('one bent arrow and one bad nock among twelve', () => {
  const played = play(tuned(3, { arrows: { 4: { error: BENT, look: 'wobble' }, 9: { nock: { x: 0.1, y: 0.6 } } } }));

  it('are both found, and the ten others cleared, each once', () => {
    const found = classesOf(played);
    expect(found.map(({ arrow }) => arrow).toSorted((a, b) => Number(a) - Number(b))).toEqual(EVERY);
    expect(found.find(({ arrow }) => arrow === '4')).toMatchObject({ class: 'repair' });
    expect(found.find(({ arrow }) => arrow === '9')).toMatchObject({ class: 'first choice', why: expect.stringContaining('new nock') as string });
    expect(found.filter((one) => one.class === 'first choice')).toHaveLength(11);
  });

  it('are worked on one at a time, the nock first, then every turn of it; the bow is left alone', () => {
    const done = changes(played);
    expect(done[0]).toBe('4 nock-swap 1');
    expect(done.filter((text) => text.startsWith('4 nock-turn')).length).toBeGreaterThanOrEqual(2);
    expect(done.filter((text) => text.startsWith('9'))).toEqual(['9 nock-swap 1']);
    expect(done.findIndex((text) => text.startsWith('9'))).toBeGreaterThan(done.findLastIndex((text) => text.startsWith('4')));
    expect(played.last.bow).toEqual({});
  });

  it('get two shots after each change, in turn with a reference that is none of them', () => {
    const mending = shotsAt(played).filter(({ step }) => step === 'shoot-mended-arrow').map(({ arrow }) => arrow ?? '');
    expect(mending.filter((_, i) => i % 2 === 1).every((arrow) => ['4', '9'].includes(arrow))).toBe(true);
    expect(mending.filter((_, i) => i % 2 === 0).every((arrow) => ['1', '2', '3'].includes(arrow))).toBe(true);
  });

  it('that do not land with the others at the proving shot: what to do with them is said', () => {
    const bow = tuned(3, { arrows: { 9: { nock: { x: 0.1, y: 0.6 } } }, answers: { 'proving-shot': false } });
    const { session } = play(bow, { until: ({ say }) => say.some((line) => line.startsWith('Shoot that arrow twice more')) });
    expect(session.view().say.join(' ')).toContain('its nock goes back to where it stood');
  });

  it('stand in the record with class and reason, and the changed nock gets its proving shot', () => {
    const rows = inRecord(played, 'Arrows, one by one');
    expect(rows).toHaveLength(12);
    expect(rows[3]).toMatch(/^Arrow 4: repair: .*wobbles/);
    expect(rows[8]).toMatch(/^Arrow 9: first choice: .*new nock/);
    expect(inRecord(played, 'Not checked').join()).not.toContain('Each arrow');
    expect(played.asked).toContain('proving-shot');
    expect(played.session.transcript().map(({ text }) => text)).toEqual(expect.arrayContaining(['arrow 9: new nock', 'arrow 4: nock turned by 1 vane']));
  });

  it('are shown side by side with the others', () => {
    const picture = played.views.findLast((view) => view.picture?.kind === 'arrows')?.picture;
    expect(picture?.kind === 'arrows' ? picture.arrows.map(({ arrow }) => arrow) : []).toEqual(EVERY);
    const atVerdict = played.views.find((view) => view.advice?.knob === 'nock-swap')?.picture;
    expect(atVerdict?.kind === 'arrows' ? atVerdict.arrows.filter(({ standsOut }) => standsOut).map(({ arrow }) => arrow) : []).toEqual(['4', '9']);
  });
});

describe('five of twelve bad', () => {
  const arrows = { 4: { error: BENT }, 5: { error: { x: 0.6, y: 0.3 } }, 9: { error: { x: 0, y: 0.6 } }, 10: { error: { x: 0.6, y: 0 } }, 12: { error: { x: 0, y: -0.6 } } };
  const played = play(tuned(3, { arrows }));

  it('culls nobody: bow and batch are looked at, the set is shot anew once, then it is a note for the shop', () => {
    expect(classesOf(played)).toEqual([]);
    expect(played.asked.filter((about) => about === 'inspected')).toHaveLength(1);
    expect(played.views.find(({ ask }) => ask?.about === 'inspected')?.ask?.step).toBe('inspect-many-odd');
    expect(changes(played)).toEqual([]);
    expect(inRecord(played, 'Note for the shop').join()).toContain('5 of 12');
    expect(inRecord(played, 'Not checked').join()).toContain('Each arrow');
    expect(inRecord(played, 'Arrows, one by one')).toEqual([]);
    expect(played.last.type).toBe('done');
  });

  it('does not shoot the rounds to their end for that', () => {
    expect(shotsAt(played).length).toBeLessThan(2 * 36);
    expect(said(played)).not.toContain('looks like the arrow');
  });

  it('shoots the bow at paper again where a part was loose: what was called tuned rests on shots that no longer count', () => {
    const loose = play(tuned(3, { arrows, answers: { inspected: 'loose-part' } }), { most: 200 });
    const at = loose.views.findIndex(({ ask }) => ask?.about === 'inspected');
    const shotNext = loose.views.slice(at).find(({ ask }) => ask?.kind === 'tear');
    expect([shotNext?.chapter, shotNext?.ask?.step]).toEqual(['paper', 'shoot-shooting']);
    const tunedAgain = loose.views.slice(at + 1).flatMap(({ findings }) => findings).filter((one) => one.kind === 'axis' && one.result === 'tuned');
    expect(tunedAgain.length).toBeGreaterThanOrEqual(2);
  });

  it('judges the arrows once the cause is put right', () => {
    const mended = play(tuned(3, { arrows: { 4: { error: BENT } }, answers: { inspected: 'nock-fit', tear: shotUntilLooked(arrows) } }), { most: 260 });
    expect(mended.asked.filter((about) => about === 'inspected')).toHaveLength(1);
    expect(classesOf(mended)).toHaveLength(12);
    expect(classesOf(mended).filter((one) => one.class === 'first choice')).toHaveLength(11);
  });
});

/** Tears with the errors of these arrows until twelve arrows were shot about twice; afterwards only what the bow's own arrows do. */
function shotUntilLooked(arrows: Readonly<Record<string, { readonly error: Tear }>>): (ask: Ask, shot: () => Tear) => Tear {
  let counted = 0;
  return (ask, shot) => {
    const tear = shot();
    if (ask.kind !== 'tear' || ask.arrow === null) return tear;
    counted += 1;
    const off = counted > 30 || ask.arrow === '4' ? undefined : arrows[ask.arrow]?.error;
    return off === undefined ? tear : { x: tear.x + off.x, y: tear.y + off.y };
  };
}

describe('one arrow left once', () => {
  // The first shot of arrow 4 goes 0.6 left, every other shot lies within 0.15.
  const wild = (): ((ask: Ask) => Tear) => {
    let seen = false;
    return (ask) => {
      if (ask.kind !== 'tear' || ask.arrow !== '4' || seen) return { x: 0.05, y: 0.06 };
      seen = true;
      return { x: -0.6, y: 0.06 };
    };
  };

  it('is shot twice more, in turn with a reference arrow; then it is the archer, and the arrow is first choice', () => {
    const played = play(tuned(1, { answers: { tear: wild() } }));
    const order = shotsAt(played).map(({ arrow }) => arrow);
    expect(order.slice(12, 16)).toEqual(['1', '4', '2', '4']);
    expect(said(played)).toContain('One shot is not a bad arrow');
    expect(said(played)).toContain('Arrow 4: not the same again');
    expect(changes(played)).toEqual([]);
    expect(classesOf(played).filter((one) => one.class === 'first choice')).toHaveLength(12);
  });

  it('leads to no verdict at the time: no change, no class, only shots', () => {
    const played = play(tuned(1, { answers: { tear: wild() } }), { until: (view) => said({ views: [view] }).includes('One shot is not a bad arrow') });
    expect(played.last.ask).toMatchObject({ kind: 'tear', arrow: '1' });
    expect(played.last.advice).toBeNull();
    expect(classesOf(played)).toEqual([]);
  });
});

describe('an uneven shaft in four even vanes', () => {
  it('is mended by the turn where its tear is foretold smallest, without trying the others', () => {
    const played = play(tuned(2, {
      start: { x: 0.12, y: 0.06 }, arrows: { 7: { error: { x: 0.6, y: 0.1 }, turns: { vanes: 4, twice: 0.5 } } }, answers: { vanes: 'four-even' },
    }));
    expect(changes(played)).toEqual(['7 nock-swap 1', '7 nock-turn 2']);
    expect(classesOf(played).find(({ arrow }) => arrow === '7')).toMatchObject({ class: 'first choice', why: expect.stringContaining('2 vanes') as string });
    const turned = played.views.find((view) => view.advice?.knob === 'nock-turn')?.advice as Advice;
    expect(turned.expect).toBeDefined();
    expect(shotsAt(played).filter(({ nockTurn }) => nockTurn === 2).map(({ arrow }) => arrow)).toEqual(['7', '7']);
  });
});

describe('an error that goes round with the nock', () => {
  it('is turned once, where it is foretold to do least; as it did what was foretold, the other turns are not tried', () => {
    const played = play(tuned(2, { arrows: { 7: { error: { x: 0.6, y: 0.1 }, turns: { vanes: 4 } } }, answers: { vanes: 'four-even' }, start: { x: 0.15, y: 0.06 } }));
    const turned = changes(played).filter((text) => text.startsWith('7 nock-turn'));
    expect(changes(played)[0]).toBe('7 nock-swap 1');
    // Perhaps back again, where it stood nearer the others; three other ways round there are.
    expect(new Set(shotsAt(played).filter(({ arrow, nockTurn }) => arrow === '7' && nockTurn > 0).map(({ nockTurn }) => nockTurn)).size).toBe(1);
    expect(turned.length).toBeLessThanOrEqual(2);
    expect(said(played)).toContain('Its fault went round with the nock');
    expect(classesOf(played).find(({ arrow }) => arrow === '7')).toMatchObject({ class: 'practice' });
  });
});

describe('an odd arrow among those that the bow was tuned with', () => {
  const odd = tuned(3, { arrows: { 2: { error: BENT, look: 'wobble' } } });
  const afterClasses = (played: Played): readonly View[] => played.views.slice(played.views.findIndex(({ ask }) => ask?.about === 'paper-again') + 1);

  it('three shots at paper without it are offered; wanted, they show whether "tuned" stands, and no arrow is shot alone again', () => {
    const played = play(odd);
    const then = afterClasses(played);
    expect(played.asked.filter((about) => about === 'paper-again')).toHaveLength(1);
    expect(then.find(({ ask }) => ask?.kind === 'tear')).toMatchObject({ chapter: 'paper', ask: { step: 'shoot-shooting' } });
    expect(said({ views: then })).toContain('takes its place');
    expect(then.flatMap(({ findings }) => findings).filter((one) => one.kind === 'axis' && one.result === 'tuned').length).toBeGreaterThanOrEqual(2);
    expect(shotsAt({ views: then })).toEqual([]);
    expect(played.last.type).toBe('done');
  });

  it('not wanted, the finish comes next', () => {
    const then = afterClasses(play({ ...odd, answers: { ...odd.answers, 'paper-again': 'leave' } }));
    expect(then.find(({ ask }) => ask?.kind === 'tear')?.chapter).toBe('finish');
  });

  it('an axis that could not be brought in is not gone through again for it', () => {
    const played = play({ ...odd, start: { x: 0.6, y: 0.06 } });
    const then = afterClasses(played);
    const ended = (views: readonly View[]): readonly string[] => views.flatMap(({ findings }) => findings).flatMap((one) => (one.kind === 'axis' ? [`${one.axis} ${one.result}`] : []));
    expect(ended(played.views)).toContain('side cannot');
    expect(ended(then)).toEqual(['height tuned']);
    expect(then.filter(({ advice }) => advice?.kind === 'adjust')).toEqual([]);
    expect(inRecord(played, 'Note for the shop')).toHaveLength(1);
  });

  it('is not asked where all three are sound', () => {
    expect(play(tuned(3, { arrows: { 4: { error: BENT, look: 'wobble' } } })).asked).not.toContain('paper-again');
  });
});

describe('how many rounds are shot', () => {
  const eachShot = (played: Played): readonly number[] => EVERY.map((arrow) => shotsAt(played).filter((ask) => ask.arrow === arrow).length);

  it('two where nothing stands out: a third would hardly tell more', () => {
    const played = play(tuned(1));
    expect(eachShot(played)).toEqual(EVERY.map(() => 2));
    expect(said(played)).toContain('would hardly say otherwise');
    expect(classesOf(played).filter((one) => one.class === 'first choice')).toHaveLength(12);
  });

  it('three where the arrows may differ', () => {
    const played = play(tuned(8, { arrows: { 5: { error: { x: 0.2, y: 0 } }, 6: { error: { x: -0.2, y: 0 } } } }));
    expect(Math.min(...eachShot(played))).toBe(3);
    expect(said(played)).toContain('one more round tells them from luck');
  });
});

describe('what cannot be done to an arrow', () => {
  const until = (view: View): boolean => view.ask?.about === 'arrow-look';
  it('no spare nock: the turns come next; nocks that must not turn: the look at it', () => {
    const notNow = (view: View): Intent | null => (view.advice?.knob === 'nock-swap' && view.ask?.about === 'moved' ? { kind: 'answer', answer: 'not now' } : null);
    const bent = tuned(5, { arrows: { 4: { error: BENT } } });
    const turned = changes(play(bent, { until, instead: notNow }));
    expect(turned[0]).toBe('4 nock-swap 1');
    // Both other turns, and perhaps back to the best of the three.
    expect(turned.slice(1).every((text) => text.startsWith('4 nock-turn'))).toBe(true);
    expect([3, 4]).toContain(turned.length);
    expect(changes(play({ ...bent, answers: { ...bent.answers, 'nock-turns': 'fixed' } }, { until }))).toEqual(['4 nock-swap 1']);
  });
});

describe('another day in the middle of the rounds', () => {
  it('begins with a reference; an arrow that ticks that day is named, never shot again, and the others go on', () => {
    const bow = tuned(6);
    const first = play(bow, { until: ({ ask }) => ask?.step === 'shoot-each-arrow' && ask.kind === 'tear' && ask.shots.taken === 14 });
    const dayOne = first.store.facts.length;
    const nextDay = Date.parse(first.store.facts.at(-1)?.time ?? '') + 20 * 60 * 60 * 1000;
    const outs = [7, 0];
    const found: Readonly<Record<string, unknown>> = { 'gate:arrows-flexed': 'some-bad', 'arrows-set-aside': 1, 'arrow-out': () => outs.shift() ?? 0 };
    const played = play({ ...bow, seed: 7, answers: { ...bow.answers, ...found } }, { store: first.store, startAt: nextDay });
    expect(played.views.flatMap(({ ask }) => (ask?.kind === 'tear' && ask.step === 'shoot-each-arrow' ? [ask] : []))[0]).toMatchObject({ shots: { taken: 14 } });
    const tags = played.store.facts.flatMap((fact) => (fact.seq > dayOne && fact.kind === 'answered' ? (fact.decided.loop?.tags ?? []) : []));
    expect(tags[0]).toMatchObject({ reference: true });
    expect(tags.map(({ arrow }) => arrow)).not.toContain('7');
    expect(classesOf(played).find(({ arrow }) => arrow === '7')).toMatchObject({ class: 'never again' });
    expect(classesOf(played)).toHaveLength(12);
  });
});

describe('an arrow that fails when it is looked at alone', () => {
  /** After `taken` shots a word is said of an arrow; its check then fails in `failed`, and `outs` are named as out. */
  function found(taken: number, failed: string, outs: readonly number[]): Played {
    const left = [...outs];
    let said = false;
    return play(tuned(6, { answers: { 'arrow-count': 6, 'what-happened': 'arrow', 'gate:arrow-check': failed, 'arrow-out': () => left.shift() ?? 0 } }), {
      instead: ({ ask, chapter }): Intent | null => {
        if (said || chapter !== 'arrows' || ask?.kind !== 'tear' || ask.shots.taken !== taken) return null;
        said = true;
        return { kind: 'stop', words: 'arrow 5 cracked' };
      },
    });
  }
  const shotAfter = ({ store }: Played): readonly (string | null)[] => {
    const stop = store.facts.find((fact) => fact.kind === 'stopped')?.seq ?? Infinity;
    return store.facts.flatMap((fact) => (fact.seq > stop ? (fact.decided.loop?.tags ?? []).map(({ arrow }) => arrow) : []));
  };

  it.each([0, 2])('is named, and is not shot again: after %i shots', (taken) => {
    const played = found(taken, 'arrow-flexed', [5, 0]);
    expect(shotAfter(played).length).toBeGreaterThan(5);
    expect(shotAfter(played)).not.toContain('5');
    expect(classesOf(played).find(({ arrow }) => arrow === '5')).toMatchObject({ class: 'never again' });
  });

  it('goes to repair for a torn vane; mended it is shot on', () => {
    expect(classesOf(found(2, 'arrow-vanes', [5, 0])).find(({ arrow }) => arrow === '5')).toMatchObject({ class: 'repair' });
    const mended = found(2, 'arrow-nock', [0]);
    expect(shotAfter(mended)).toContain('5');
    expect(classesOf(mended).every((one) => one.class === 'first choice')).toBe(true);
  });
});

describe('the arrows are passed over', () => {
  it.each([['another day', { 'arrows-wanted': 'later' }, 'left for another day'], ['an archer who scatters', {}, 'scatter too far']])('%s', (_name, answers, words) => {
    const hand = words.startsWith('scatter') ? { sd: 0.9 } : {};
    const played = play(tuned(4, { ...hand, answers: { 'arrows-wanted': 'all', ...answers } }));
    expect(said(played)).toContain(words);
    expect(shotsAt(played)).toEqual([]);
    expect(inRecord(played, 'Not checked').join()).toContain('Each arrow');
  });
});

describe('a shot that was written down wrongly', () => {
  const bow = tuned(3, { arrows: { 4: { error: BENT } } });

  /** Opens every shot of this arrow in the rounds and says that its tear was another. */
  function correctAll(played: Played, arrow: string, tear: Tear): readonly View[] {
    let at = Date.parse(played.store.facts.at(-1)?.time ?? '');
    const send = (intent: Intent): View => {
      const reply = played.session.send(intent, new Date((at += 60_000)));
      if (reply.error !== undefined) throw new Error(reply.error.message);
      return reply.view;
    };
    const wrong = played.store.facts.flatMap((fact) => (fact.kind === 'answered' && fact.decided.loop?.tags?.[0]?.arrow === arrow ? [fact.seq] : []));
    expect(wrong.length).toBeGreaterThanOrEqual(3);
    return wrong.map((seq) => {
      send({ kind: 'back', to: seq });
      expect(played.session.view().ask?.correcting).toBe(seq);
      return send({ kind: 'answer', answer: tear });
    });
  }

  it('is corrected before the verdict, and the verdict is another', () => {
    const before = play(bow, { until: ({ ask }) => ask?.kind === 'tear' && ask.step === 'shoot-each-arrow' && ask.shots.wanted - ask.shots.taken === 1 });
    correctAll(before, '4', { x: 0, y: 0.06 });
    const last = before.session.send({ kind: 'answer', answer: { x: 0, y: 0.06 } }, nextMinute(before.store)).view;
    expect(last.findings.filter((one) => one.kind === 'arrow' && one.class === 'first choice')).toHaveLength(12);
  });

  it('is corrected after all was classed: the class stays, and it is said and recorded that it would be another', () => {
    const played = play(bow, { until: ({ chapter }) => chapter === 'finish' });
    const views = correctAll(played, '6', { x: 0.9, y: 0.06 });
    expect(said({ views })).toContain('arrow 6 would be judged otherwise');
    expect(played.session.view().chapter).toBe('finish');
  });

  it('is corrected after the verdict: the arrows are judged anew, and said so', () => {
    const played = play(bow, { until: (view) => view.advice?.knob === 'nock-swap' });
    const views = correctAll(played, '4', { x: 0, y: 0.06 });
    expect(said({ views })).toContain('judged anew');
    expect(views.flatMap(({ findings }) => findings).filter((one) => one.kind === 'arrow' && one.class === 'first choice')).toHaveLength(12);
    expect(played.session.view().chapter).toBe('finish');
  });
});
