import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { closingLines, isGreen, type Step, type Tally } from './testing/tally.ts';

// Lint, types, the build that the screen and shell tests open, and the tests: all of them, whatever fails before.
const root = fileURLToPath(new URL('..', import.meta.url));
const tallyFile = join(root, 'out', 'tally.json');
/** Nothing here may hang for ever: a run that takes this long, even on a busy machine, is broken. */
const mostMinutes = 20;

/** Runs one program in the root; false if it failed or did not end in time. */
function run(program: string, parts: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<boolean> {
  return new Promise((done) => {
    const child = spawn(program, parts, {
      cwd: root,
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, ...env },
      // On Windows npm is a script that only a shell can start.
      shell: program === 'npm' && process.platform === 'win32',
    });
    const late = setTimeout(() => {
      console.error(`Stopped after ${mostMinutes} minutes: ${[program, ...parts].join(' ')}`);
      child.kill('SIGKILL');
    }, mostMinutes * 60_000);
    child.on('error', (error) => console.error(`${program} could not be started: ${error.message}`));
    child.on('close', (code) => {
      clearTimeout(late);
      done(code === 0);
    });
  });
}

async function step(name: string): Promise<Step> {
  const start = performance.now();
  const passed = await run('npm', ['run', '--silent', name]);
  return { name, passed, seconds: (performance.now() - start) / 1000 };
}

function readTally(): Tally | null {
  try {
    return JSON.parse(readFileSync(tallyFile, 'utf8')) as Tally;
  } catch {
    return null;
  }
}

const steps: Step[] = [];
for (const name of ['lint', 'types', 'build']) steps.push(await step(name));

rmSync(tallyFile, { force: true });
const testsPassed = await run(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', '-c', 'build/vitest.config.ts', ...process.argv.slice(2)], {
  OUTYARD_TALLY: tallyFile,
});
const told = readTally();
// A run that ends badly although no test failed (a worker that died) is still a failure.
const tally = told !== null && told.failed === 0 && !testsPassed ? { ...told, failed: 1 } : told;

for (const line of closingLines(steps, tally)) console.log(line);
process.exitCode = isGreen(steps, tally) ? 0 : 1;
