import { isBuiltin } from 'node:module';
import { posix } from 'node:path';
import type { Finding } from './finding.ts';
import type { ImportFact, ModuleFacts } from './scanModule.ts';

export const layers = ['shared', 'core', 'electron', 'renderer', 'tests', 'build'] as const;
export type Layer = (typeof layers)[number];

/** The whole law of who may import whom: a folder at the top is a place where code runs. */
export const mayImport: Readonly<Record<Layer, readonly Layer[]>> = {
  shared: ['shared'],
  core: ['shared', 'core'],
  electron: ['shared', 'core', 'electron'],
  renderer: ['shared', 'renderer'],
  tests: layers,
  build: layers,
};

/** The two rooms of core that touch the file, the clock and the machine; every other room is pure. */
const touchingRooms = ['book', 'desk'];
const databasePackages = ['better-sqlite3', 'kysely'];
const windowPackages = ['react', 'react-dom'];
/** What passes messages between the window and the rest, and the one place on each side that may. */
const gates = [
  { name: 'ipcMain', place: 'electron/main/bridge.ts' },
  { name: 'ipcRenderer', place: 'electron/preload/' },
  { name: 'contextBridge', place: 'electron/preload/' },
];
/** Types of a package that has none, written down for the compiler, may pass them on. */
const declarations = /\.d\.[cm]?ts$/;

/** What the rules need to know of the house around one file. */
export interface House {
  /** Every file, from the root, with `/`. */
  readonly files: ReadonlySet<string>;
  /** Package names by where package.json lists them. */
  readonly dependencies: ReadonlySet<string>;
  readonly devDependencies: ReadonlySet<string>;
  /** Subpath imports of package.json: `#core/*` -> `./core/*`. */
  readonly subpaths: Readonly<Record<string, string>>;
}

export function layerOf(file: string): Layer | null {
  const top = file.split('/')[0];
  return layers.find((layer) => layer === top) ?? null;
}

/** True for code that must give the same answer everywhere and always: shared and the rooms of core but book and desk. */
export function isPure(file: string): boolean {
  const [top, room] = file.split('/');
  return top === 'shared' || (top === 'core' && !touchingRooms.includes(room ?? ''));
}

/** Every way in which one file breaks the law of the layers. */
export function judgeModule(file: string, facts: ModuleFacts, house: House): Finding[] {
  const at = (line: number, sentence: string): Finding => ({ file, line, sentence });
  const layer = layerOf(file);
  if (layer === null) return [at(1, `code lies in no layer; it belongs in one of: ${layers.join(', ')}`)];

  const findings = facts.syntaxFaults.map((fault) => at(fault.line, `cannot be read: ${fault.message}`));
  if (/(?:^|\/)index\.[cm]?[jt]sx?$/.test(file)) findings.push(at(1, 'is named index: name the file after what it holds'));
  if (!declarations.test(file)) {
    for (const line of facts.exportStars) findings.push(at(line, 'passes on a whole module: import from the file that holds it'));
    if (facts.onlyPassesOn) findings.push(at(1, 'only passes on what other files hold: import from those files'));
  }
  if (isPure(file)) {
    for (const { what, line } of facts.impurities) {
      findings.push(at(line, `uses ${what}: this code is pure; take the day, the chance or the setting as an argument`));
    }
  }
  for (const fact of facts.imports) {
    const sentence = judgeImport(file, layer, fact, house);
    if (sentence !== null) findings.push(at(fact.line, sentence));
  }
  return findings;
}

function judgeImport(file: string, layer: Layer, fact: ImportFact, house: House): string | null {
  const { specifier } = fact;
  if (specifier === null) {
    return layer === 'tests' || layer === 'build' ? null : 'imports a computed name: nobody can tell what it loads; write the name out';
  }
  if (specifier.startsWith('.')) return judgeRelative(file, layer, specifier, house);
  if (specifier.startsWith('#')) return judgeSubpath(file, layer, specifier, house);
  if (/^(?:\/|[a-z]+:\/\/|file:|data:)/i.test(specifier)) return `imports ${specifier}: an address is no import`;
  return judgePackage(file, layer, fact, specifier, house);
}

function judgeRelative(file: string, layer: Layer, specifier: string, house: House): string | null {
  if (specifier.includes('../../..')) return `imports ${specifier}: too far up; use a subpath import such as #core/...`;
  const target = posix.normalize(posix.join(posix.dirname(file), specifier.replace(/\?.*$/, '')));
  const targetLayer = layerOf(target);
  const crosses = targetLayer !== layer;
  if (crosses && layer !== 'tests' && layer !== 'build') {
    return judgeEdge(file, layer, target) ?? `imports ${specifier}: from another layer use a subpath import such as #shared/...`;
  }
  return judgeEdge(file, layer, target) ?? judgeTarget(target, specifier, house);
}

function judgeSubpath(file: string, layer: Layer, specifier: string, house: House): string | null {
  for (const [pattern, place] of Object.entries(house.subpaths)) {
    const head = pattern.replace(/\*$/, '');
    if (!pattern.endsWith('*') || !specifier.startsWith(head)) continue;
    const rest = specifier.slice(head.length).replace(/\?.*$/, '');
    const target = posix.normalize(place.replace(/^\.\//, '').replace('*', rest));
    return judgeEdge(file, layer, target) ?? judgeTarget(target, specifier, house);
  }
  return `imports ${specifier}: package.json knows no such subpath`;
}

function judgeEdge(file: string, layer: Layer, target: string): string | null {
  const targetLayer = layerOf(target);
  if (targetLayer === null) {
    return layer === 'tests' || layer === 'build' ? null : `imports ${target}, which lies in no layer`;
  }
  if (!mayImport[layer].includes(targetLayer)) {
    return `imports ${target}: ${layer} may import ${mayImport[layer].join(', ')} only`;
  }
  if (isPure(file) && targetLayer === 'core' && !isPure(target)) {
    return `imports ${target}: a pure room may not reach the file or the machine; let the desk pass in what it needs`;
  }
  if (file.startsWith('electron/preload/') && targetLayer !== 'shared' && !target.startsWith('electron/preload/')) {
    return `imports ${target}: the preload script sees shared and its own folder only`;
  }
  return null;
}

function judgeTarget(target: string, specifier: string, house: House): string | null {
  if (house.files.has(target)) return null;
  const near = ['.ts', '.tsx'].find((ending) => house.files.has(target + ending));
  return near === undefined
    ? `imports ${specifier}, but there is no ${target}`
    : `imports ${specifier}: write the ending, ${specifier}${near}`;
}

function judgePackage(file: string, layer: Layer, fact: ImportFact, specifier: string, house: House): string | null {
  if (layer === 'tests' || layer === 'build') return judgeListed(fact, specifier, layer, house);
  const name = packageName(specifier);
  const where = isPure(file) ? 'pure code' : layer;
  const touching = layer === 'core' && !isPure(file);
  if (isBuiltin(specifier)) {
    const allowed = touching || (layer === 'electron' && !file.startsWith('electron/preload/'));
    return allowed ? null : `imports ${specifier}: ${where} does not know Node`;
  }
  if (name === 'electron') return layer === 'electron' ? judgeShell(file, fact) : `imports electron: ${where} does not know the shell it runs in`;
  if (databasePackages.includes(name) && !touching) return `imports ${specifier}: only core/book and core/desk know the database`;
  if (windowPackages.includes(name) && layer !== 'renderer') return `imports ${specifier}: only renderer draws`;
  return judgeListed(fact, specifier, layer, house);
}

/** The wall has one gate on each side; a second one would be a way past its checks. */
function judgeShell(file: string, fact: ImportFact): string | null {
  const gate = fact.names.flatMap((name) => gates.filter((known) => known.name === name)).find(({ place }) => !file.startsWith(place));
  return gate === undefined ? null : `imports ${gate.name} from electron: only ${gate.place} does, so that the wall has one gate`;
}

function judgeListed(fact: ImportFact, specifier: string, layer: Layer, house: House): string | null {
  if (isBuiltin(specifier)) return null;
  const name = packageName(specifier);
  if (house.dependencies.has(name)) return null;
  if (!house.devDependencies.has(name)) return `imports ${specifier}, which package.json does not list`;
  // What the window needs is bundled, so it is a tool; what runs from source must be a dependency.
  const bundled = layer !== 'core' && layer !== 'shared' && layer !== 'electron';
  return bundled || fact.typeOnly ? null : `imports ${specifier}, which package.json lists as a tool only`;
}

function packageName(specifier: string): string {
  return specifier.split('/').slice(0, specifier.startsWith('@') ? 2 : 1).join('/');
}
