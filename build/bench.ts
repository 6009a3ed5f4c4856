import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

// npm run -s bench -- NAME [more]  runs tests/bench/NAME.ts; without a name it says which there are.
const root = fileURLToPath(new URL('..', import.meta.url));
const folder = join(root, 'tests', 'bench');
const names = existsSync(folder)
  ? readdirSync(folder).filter((file) => file.endsWith('.ts')).map((file) => file.replace(/\.ts$/, '')).sort()
  : [];

const [name, ...more] = process.argv.slice(2);
if (name !== undefined && names.includes(name)) {
  process.exitCode = spawnSync(process.execPath, [join(folder, `${name}.ts`), ...more], { cwd: root, stdio: 'inherit' }).status ?? 1;
} else {
  const list = names.length === 0 ? 'There is no bench yet.' : `Benches: ${names.join(', ')}.`;
  if (name === undefined) console.log(`npm run -s bench -- NAME    times one part of the program.\n${list}`);
  else {
    console.error(`There is no bench called ${name}. ${list}`);
    process.exitCode = 2;
  }
}
