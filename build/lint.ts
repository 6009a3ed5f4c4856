import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { printFinding } from './checks/finding.ts';
import { houseChecks } from './checks/houseChecks.ts';

// The linter and the house's own checks; both always run, so that one look shows everything there is to mend.
// Another folder than this house's can be named; it is read by the settings it holds itself.
const house = fileURLToPath(new URL('..', import.meta.url));
const root = process.argv[2] ?? house;
const linter = join(house, 'node_modules', 'oxlint', 'bin', 'oxlint');
const oxlint = spawnSync(process.execPath, [linter, '--deny-warnings', '.'], { cwd: root, stdio: 'inherit' });
const findings = houseChecks(root);
for (const finding of findings) console.error(printFinding(finding));
console.log(findings.length === 0 ? 'House rules: nothing to mend.' : `House rules: ${findings.length} to mend.`);
process.exitCode = oxlint.status === 0 && findings.length === 0 ? 0 : 1;
