import { falseFindings, ossarRows } from '../losses/shuffledDemo.ts';

// npm run -s bench -- shuffle [times] [seed]
// Deals out the demo's losses anew within each winter, and counts how often the table of what went with losses finds
// something all the same. It promises at most one time in twenty; with exact tests it is less.
const times = Number(process.argv[2] ?? 500);
const seed = Number(process.argv[3] ?? 1);
if (!Number.isInteger(times) || times < 1 || !Number.isInteger(seed)) {
  console.error('Usage: npm run -s bench -- shuffle [times] [seed], both whole numbers, times from 1.');
  process.exit(2);
}
const demo = await ossarRows();
const start = performance.now();
const found = falseFindings(demo, times, seed);
console.log(`${times} shuffles of ${demo.rows.length} colony winters in ${((performance.now() - start) / 1000).toFixed(1)} s`);
// One in twenty, and what the chance of so many shuffles adds to it at most: three standard errors.
const allowed = times * 0.05 + 3 * Math.sqrt(times * 0.05 * 0.95);
console.log(`false findings: ${found} of ${times}`);
process.exitCode = found <= allowed ? 0 : 1;
