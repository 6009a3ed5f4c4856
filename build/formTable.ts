import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { withFormTable } from './checks/formTable.ts';

// Makes the README's tables of the exchange form anew, after the form has changed.
const file = fileURLToPath(new URL('../README.md', import.meta.url));
const made = withFormTable(readFileSync(file, 'utf8'));
if (made === null) throw new Error('README.md has lost the marks between which the tables stand.');
writeFileSync(file, made);
