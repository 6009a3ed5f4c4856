import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { headings, judgeDocument } from './documents.ts';
import { judgeLength } from './fileLength.ts';
import type { Finding } from './finding.ts';
import { withFormTable } from './formTable.ts';
import { houseFiles, isCode } from './houseFiles.ts';
import { checkImports } from './imports.ts';
import { isText, judgeMachineWords } from './machineWords.ts';
import { judgeShortcuts } from './shortcuts.ts';

/** Every house rule that a general linter does not know, over every file of the house. */
export function houseChecks(root: string): Finding[] {
  const files = houseFiles(root);
  const read = (file: string) => readFileSync(join(root, file), 'utf8');
  const scripts = Object.keys((JSON.parse(read('package.json')) as { scripts?: object }).scripts ?? {});
  const house = { files: new Set(files), scripts: new Set(scripts) };

  const findings = checkImports(root);
  for (const file of files.filter(isText)) {
    const text = read(file);
    findings.push(...judgeMachineWords(file, text));
    if (isCode(file)) findings.push(...judgeShortcuts(file, text));
    if (isCode(file) || file.endsWith('.css')) findings.push(...judgeLength(file, text));
    if (file === 'README.md' && (withFormTable(text) ?? text) !== text) {
      findings.push({ file, line: 1, sentence: 'its tables of the exchange form are old: run node build/formTable.ts' });
    }
    if (file.endsWith('.md')) findings.push(...judgeDocument(file, text, house, (other) => headings(read(other))));
  }
  return findings.sort((a, b) => (a.file === b.file ? a.line - b.line : a.file < b.file ? -1 : 1));
}
