import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { parseGoldenFile } from './golden/goldenFile.ts';
import { goldenMethods } from './golden/methods.ts';
import { failed, runCases, type CaseResult } from './golden/runCases.ts';

const USAGE = 'Usage: npm run -s golden -- FILE.json [--method km,kmBy,...]';

/**
 * Compares this program's statistics with a file of values computed elsewhere. Prints each difference and each
 * method that is not covered, closes with `N passed, N failed` (cases), and exits 0 only if none failed and at
 * least one was compared; 2 with a sentence if the file or the arguments cannot be used.
 */
function main(): number {
  const { values, positionals } = parseArgs({ allowPositionals: true, options: { method: { type: 'string' } } });
  const [name] = positionals;
  if (name === undefined || positionals.length > 1) throw new Error(`Name one file. ${USAGE}`);
  // npm starts scripts in the project's own folder; a relative name means the folder npm was called in.
  const from = process.env['npm_lifecycle_event'] === 'golden' ? process.env['INIT_CWD'] : undefined;
  const file = parseGoldenFile(textOf(resolve(from ?? '.', name)));
  const only = values.method === undefined ? null : new Set(values.method.split(',').map((method) => method.trim()));

  const { results, notCovered } = runCases(file, goldenMethods, only);
  for (const result of results.filter(failed)) print(result);
  for (const [method, cases] of notCovered) console.log(`not covered: ${method} (${cases} ${cases === 1 ? 'case' : 'cases'})`);
  const failures = results.filter(failed).length;
  if (results.length === 0) console.error('No case of the file was compared.');
  console.log(`${results.length - failures} passed, ${failures} failed`);
  return failures === 0 && results.length > 0 ? 0 : 1;
}

function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(`The file cannot be read (${why}). Name a file that exists. ${USAGE}`, { cause: error });
  }
}

function print({ id, threw, mismatches }: CaseResult): void {
  if (threw !== null) console.log(`FAILED ${id}: ${threw}`);
  for (const { path, got, want } of mismatches) {
    console.log(`FAILED ${id} at ${path}: got ${written(got)}, want ${written(want)}`);
  }
}

function written(value: unknown): string {
  return typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? 'nothing');
}

try {
  process.exitCode = main();
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 2;
}
