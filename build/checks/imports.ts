import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Finding } from './finding.ts';
import { houseFiles, isCode } from './houseFiles.ts';
import { judgeModule, type House } from './layerRules.ts';
import { scanModule } from './scanModule.ts';

interface PackageFile {
  readonly dependencies?: Record<string, string>;
  readonly devDependencies?: Record<string, string>;
  readonly imports?: Record<string, string>;
}

/** Reads every file of code under the root and answers where the law of the layers is broken. */
export function checkImports(root: string): Finding[] {
  const files = houseFiles(root);
  const listed = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as PackageFile;
  const house: House = {
    files: new Set(files),
    dependencies: new Set(Object.keys(listed.dependencies ?? {})),
    devDependencies: new Set(Object.keys(listed.devDependencies ?? {})),
    subpaths: listed.imports ?? {},
  };
  return files.filter(isCode).flatMap((file) => judgeModule(file, scanModule(file, readFileSync(join(root, file), 'utf8')), house));
}
