/**
 * The command line: `npm run -s outyard -- <verb> ...`. It works on the same desk as the screens, in this process.
 * The exit code is set and the process left to end by itself, so that a long result is written out whole into a pipe.
 */
import { unfitNode } from '#electron/keeper/nodeGuard.ts';
import { CommandError, ended, type Ended, type Speech, type Verb } from './verb.ts';

const verbs: Readonly<Record<string, () => Promise<Verb>>> = {
  import: async () => (await import('./verbs/importJournal.ts')).importJournal,
  export: async () => (await import('./verbs/exportJournal.ts')).exportJournal,
  report: async () => (await import('./verbs/report.ts')).report,
  check: async () => (await import('./verbs/check.ts')).check,
  rules: async () => (await import('./verbs/rules.ts')).rules,
  calendar: async () => (await import('./verbs/calendar.ts')).calendar,
  demo: async () => (await import('./verbs/demo.ts')).demo,
};

const speech: Speech = {
  print: (text) => void process.stdout.write(text.endsWith('\n') ? text : `${text}\n`),
  complain: (sentence) => void process.stderr.write(`${sentence}\n`),
};

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // Whoever read the result has had enough of it, as `head` has.
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await run(process.argv.slice(2));

async function run(args: readonly string[]): Promise<Ended> {
  const unfit = unfitNode(process.versions.node);
  if (unfit !== null) {
    speech.complain(unfit);
    return ended.notDone;
  }
  const [name = 'help', ...rest] = args;
  if (name === 'help' || name === '--help' || name === '-h') {
    speech.print(await help());
    return ended.well;
  }
  const load = Object.hasOwn(verbs, name) ? verbs[name] : undefined;
  if (load === undefined) {
    speech.complain(`There is no “${name}” here.`);
    speech.complain(await help());
    return ended.notDone;
  }
  const verb = await load();
  if (rest.includes('--help') || rest.includes('-h')) {
    speech.print(line(name, verb));
    return ended.well;
  }
  try {
    return await verb.run(rest, speech);
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    speech.complain(error.mend === undefined ? error.message : `${error.message} ${error.mend}`);
    return ended.notDone;
  }
}

async function help(): Promise<string> {
  const lines: string[] = [];
  for (const [name, load] of Object.entries(verbs)) lines.push(line(name, await load()));
  return [
    'Outyard on the command line.',
    '',
    ...lines,
    '',
    'Exit code 0: all was read and is in order. 1: the result is printed in full, but rows are to sort out or the book',
    'is not sound. 2: nothing was done, and a sentence says why.',
  ].join('\n');
}

function line(name: string, verb: Verb): string {
  return `  ${name} ${verb.usage}\n      ${verb.summary}`;
}
