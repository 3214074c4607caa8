#!/usr/bin/env node
// Everything that must hold, in one command: types with lint, content and floors count as one check each, then every test.
// A skipped test counts as failed: it holds nothing. The last line is always `N passed, N failed`.

import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { ROOT } from './build.mjs';

const bin = (name) => join(ROOT, 'node_modules', name);
const CHECKS = [
  { name: 'types and lint', args: [bin('oxlint/bin/oxlint'), '--quiet', 'src', 'tests', 'vitest.config.ts'], help: 'mend the lines above; the rules are in .oxlintrc.json' },
  { name: 'content', args: ['tests/tools/check-content.mjs'], help: 'mend the content at the lines named above' },
  { name: 'floors', args: ['--import', 'tsx', 'tests/tools/floors.ts'], help: 'mend the imports above; the floors are in tests/tools/floors.ts' },
];

/** Runs node with these arguments; resolves with its exit code and all it printed. */
function run(args) {
  const env = { ...process.env };
  for (const name of ['CI', 'CONTINUOUS_INTEGRATION', 'FORCE_COLOR']) delete env[name];
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, { cwd: ROOT, env, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    child.stdout.on('data', (data) => { output += data; });
    child.stderr.on('data', (data) => { output += data; });
    child.on('error', (error) => resolve({ code: 1, output: error.message }));
    child.on('close', (code) => resolve({ code: code ?? 1, output }));
  });
}

async function runChecks() {
  const tally = { passed: 0, failed: 0 };
  // One after the other, beside the tests: the machine that checks this may have two cores.
  for (const { name, args, help } of CHECKS) {
    const { code, output } = await run(args);
    tally[code === 0 ? 'passed' : 'failed'] += 1;
    console.log(`${code === 0 ? 'ok    ' : 'FAILED'} ${name}`);
    if (code !== 0) console.log(`${indent(output.trim() || `ended with ${code}`)}\n    To do: ${help}.`);
  }
  return tally;
}

const indent = (text) => text.split('\n').map((line) => `    ${line}`).join('\n');

async function runTests() {
  const folder = mkdtempSync(join(tmpdir(), 'quarterturn-check-'));
  const file = join(folder, 'result.json');
  const { code, output } = await run([bin('vitest/vitest.mjs'), 'run', '--reporter=json', `--outputFile=${file}`]);
  let result;
  try {
    result = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    console.log(`FAILED tests: they did not run\n${indent(output.trim())}`);
    return { passed: 0, failed: 1 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  const tally = { passed: 0, failed: 0 };
  for (const suite of result.testResults) countSuite(suite, tally);
  if (tally.passed + tally.failed === 0) return failedOnce(tally, 'no test was found');
  // Something went wrong outside of any test (an error after the end, a failed set-up): it must not pass unseen.
  if (code !== 0 && tally.failed === 0) return failedOnce(tally, `the test run ended with ${code}\n${indent(output.trim())}`);
  console.log(`${tally.failed === 0 ? 'ok    ' : 'FAILED'} tests: ${result.testResults.length} files`);
  return tally;
}

function failedOnce(tally, why) {
  console.log(`FAILED tests: ${why}`);
  return { ...tally, failed: tally.failed + 1 };
}

function countSuite(suite, tally) {
  const file = relative(ROOT, suite.name);
  if (suite.assertionResults.length === 0) {
    tally.failed += 1;
    console.log(`FAILED ${file}\n${indent(suite.message || 'it holds no test')}`);
  }
  for (const { status, fullName, failureMessages } of suite.assertionResults) {
    tally[status === 'passed' ? 'passed' : 'failed'] += 1;
    if (status === 'passed') continue;
    const why = status === 'failed' ? failureMessages.join('\n') : `it is ${status}: a test that does not run holds nothing`;
    console.log(`FAILED ${file} > ${fullName}\n${indent(why)}`);
  }
}

const started = Date.now();
const [checks, tests] = await Promise.all([runChecks(), runTests()]);
const failed = checks.failed + tests.failed;
console.log(`in ${((Date.now() - started) / 1000).toFixed(1)} s`);
console.log(`${checks.passed + tests.passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
