import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

// Two worlds, two settings: what runs in Node, and what runs in the window. Both are always checked.
const root = fileURLToPath(new URL('..', import.meta.url));
const codes = await Promise.all(
  ['tsconfig.json', 'renderer/tsconfig.json'].map(
    (project) =>
      new Promise<number>((done) => {
        const compiler = spawn(process.execPath, ['node_modules/typescript/bin/tsc', '--noEmit', '--pretty', 'false', '-p', project], {
          cwd: root,
          stdio: 'inherit',
        });
        compiler.on('close', (code) => done(code ?? 1));
      }),
  ),
);
const faulty = codes.filter((code) => code !== 0).length;
console.log(faulty === 0 ? 'Types: nothing to mend.' : 'Types: something to mend, see above.');
process.exitCode = faulty === 0 ? 0 : 1;
