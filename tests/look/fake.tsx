// The screen by hand, with no bow, no journal and no content: `npx tsx tests/look/fake.tsx [view …]`; with `--plain` the
// plain face. h shows fifteen changes, r sixty answers.

import { ANSWERS, FakeSession, LONG_HISTORY, VIEWS } from '../screens/fake-session.ts';

delete process.env['CI'];
delete process.env['CONTINUOUS_INTEGRATION'];
if (process.env['NO_COLOR']) process.env['FORCE_COLOR'] = '0';

const { runScreen } = await import('../../src/screens/run.tsx');
const { runPlain } = await import('../../src/screens/plain.ts');
const plain = process.argv.includes('--plain');
const names = process.argv.slice(2).filter((name) => name !== '--plain');
const views = Object.entries(VIEWS).filter(([name]) => names.length === 0 || names.includes(name)).map(([, view]) => view);
const transcript = Array.from({ length: 30 }, (_, at) => ({
  seq: at, who: at % 2 === 0 ? ('coach' as const) : ('archer' as const), text: at % 2 === 0 ? `What does the tape read at number ${at}?` : `${at} in`,
}));
const answers = Array.from({ length: 15 }, () => ANSWERS).flat().map((one, at) => ({ ...one, seq: at + 2 }));
const session = new FakeSession({ views, transcript, history: LONG_HISTORY, answers });
if (plain) await runPlain(session, { input: process.stdin, output: process.stdout, now: () => new Date(), echo: false });
const exit = plain ? 0 : await runScreen(session, { stdin: process.stdin, stdout: process.stdout, now: () => new Date(), notices: ['A torn last line was set aside.'] });
process.stdout.write(`${JSON.stringify(session.sent)}\n`);
process.exit(exit);
