import { parseSync, Visitor } from 'oxc-parser';
import { lineFinder } from './lineFinder.ts';

/** One import of a file, static, dynamic, by `require` or in a type. */
export interface ImportFact {
  /** The text between the quotes; null where it is computed and nobody can tell what is loaded. */
  readonly specifier: string | null;
  /** Names taken from it, as the other file calls them; empty where it is taken whole or for its effect. */
  readonly names: readonly string[];
  readonly line: number;
  /** True when it is gone after types are stripped. */
  readonly typeOnly: boolean;
}

/** What the house rules need to know of one file of code. */
export interface ModuleFacts {
  readonly imports: readonly ImportFact[];
  /** Uses of the clock, of chance or of the surroundings: `Date`, `Math.random`, `process` and the like. */
  readonly impurities: readonly { readonly what: string; readonly line: number }[];
  readonly exportStars: readonly number[];
  /** True when the file has exports and every one of them comes from another file. */
  readonly onlyPassesOn: boolean;
  readonly syntaxFaults: readonly { readonly message: string; readonly line: number }[];
}

const surroundings = new Set([
  'Date', 'performance', 'process', 'globalThis', 'window', 'document', 'crypto', 'fetch', 'setTimeout', 'setInterval', 'setImmediate',
]);

/** Reads one file of TypeScript or JavaScript with a real parser, so that comments and strings never mislead it. */
export function scanModule(file: string, text: string): ModuleFacts {
  const parsed = parseSync(file, text);
  const lineAt = lineFinder(text);
  const imports: ImportFact[] = [];
  const impurities: { what: string; line: number }[] = [];
  const note = (specifier: string | null, at: number, typeOnly = false, names: readonly string[] = []) =>
    void imports.push({ specifier, names, line: lineAt(at), typeOnly });

  for (const statement of parsed.module.staticImports) {
    const typeOnly = statement.entries.length > 0 && statement.entries.every((entry) => entry.isType);
    const names = statement.entries.flatMap((entry) => entry.importName.name ?? []);
    note(statement.moduleRequest.value, statement.start, typeOnly, names);
  }
  const exportStars: number[] = [];
  let passedOn = 0;
  let own = 0;
  for (const entry of parsed.module.staticExports.flatMap((statement) => statement.entries)) {
    if (entry.moduleRequest === null) {
      own += 1;
      continue;
    }
    passedOn += 1;
    note(entry.moduleRequest.value, entry.start, entry.isType);
    if (entry.importName.kind !== 'Name') exportStars.push(lineAt(entry.start));
  }

  // Names that merely look like a global: `rule.process`, `{ performance: 1 }`.
  const notReferences = new Set<number>();
  const notMathItself = new Set<number>();
  const skipKey = (node: { key: { start: number }; computed?: boolean; shorthand?: boolean }) => {
    if (node.computed !== true && node.shorthand !== true) notReferences.add(node.key.start);
  };
  const found = (what: string, at: number) => void impurities.push({ what, line: lineAt(at) });
  // A name the file gives to something of its own (a planning `window`) is not the global one.
  const ownNames = new Set<string>();
  const bind = (pattern: unknown) => void boundNames(pattern).forEach((name) => ownNames.add(name));
  const globals: { name: string; at: number }[] = [];

  new Visitor({
    ImportExpression: (node) => note(literalText(node.source), node.start),
    TSImportType: (node) => note(literalText(node.source), node.start, true),
    TSExternalModuleReference: (node) => note(literalText(node.expression), node.start),
    CallExpression: (node) => {
      if (node.callee.type === 'Identifier' && node.callee.name === 'require') note(literalText(node.arguments[0]), node.start);
    },
    MemberExpression: (node) => {
      if (!node.computed) notReferences.add(node.property.start);
      if (node.object.type !== 'Identifier') return;
      const property = node.computed ? literalText(node.property) : nameOf(node.property);
      if (node.object.name === 'Math' && property !== null) {
        notMathItself.add(node.object.start);
        if (property === 'random') found('Math.random', node.start);
      }
      if (node.object.name === 'Temporal' && property === 'Now') found('Temporal.Now', node.start);
    },
    Property: skipKey,
    MethodDefinition: skipKey,
    PropertyDefinition: skipKey,
    TSPropertySignature: skipKey,
    TSMethodSignature: skipKey,
    TSQualifiedName: (node) => void notReferences.add(node.right.start),
    ImportSpecifier: (node) => void notReferences.add(node.imported.start),
    ExportSpecifier: (node) => void notReferences.add(node.exported.start),
    Identifier: (node) => {
      if (node.name === 'Math' && !notMathItself.has(node.start)) found('Math passed on whole', node.start);
      else if (surroundings.has(node.name) && !notReferences.has(node.start)) globals.push({ name: node.name, at: node.start });
    },
    VariableDeclarator: (node) => bind(node.id),
    FunctionDeclaration: (node) => node.params.forEach(bind),
    FunctionExpression: (node) => node.params.forEach(bind),
    ArrowFunctionExpression: (node) => node.params.forEach(bind),
    TSFunctionType: (node) => node.params.forEach(bind),
  }).visit(parsed.program);
  for (const { name, at } of globals) if (!ownNames.has(name)) found(name, at);

  return {
    imports: imports.sort((a, b) => a.line - b.line),
    impurities: impurities.sort((a, b) => a.line - b.line),
    exportStars,
    onlyPassesOn: passedOn > 0 && own === 0,
    syntaxFaults: parsed.errors.map((error) => ({ message: error.message, line: lineAt(error.labels[0]?.start ?? 0) })),
  };
}

/** Every name that a parameter or declaration binds, however deep its pattern. */
function boundNames(pattern: unknown): string[] {
  if (typeof pattern !== 'object' || pattern === null) return [];
  const node = pattern as { type: string } & Record<string, unknown>;
  switch (node.type) {
    case 'Identifier':
      return [String(node['name'])];
    case 'ObjectPattern':
      return (node['properties'] as { type: string; value?: unknown }[]).flatMap((one) => boundNames(one.type === 'RestElement' ? one : one.value));
    case 'ArrayPattern':
      return (node['elements'] as unknown[]).flatMap(boundNames);
    case 'AssignmentPattern':
      return boundNames(node['left']);
    case 'RestElement':
      return boundNames(node['argument']);
    default:
      return [];
  }
}

interface AnyNode {
  readonly type: string;
}

function literalText(node: AnyNode | null | undefined): string | null {
  if (node?.type === 'Literal' && 'value' in node && typeof node.value === 'string') return node.value;
  if (node?.type === 'TSLiteralType' && 'literal' in node) return literalText(node.literal as AnyNode);
  if (node?.type === 'TemplateLiteral' && 'quasis' in node && 'expressions' in node) {
    const { quasis, expressions } = node as unknown as { quasis: { value: { cooked: string } }[]; expressions: unknown[] };
    return expressions.length === 0 ? (quasis[0]?.value.cooked ?? null) : null;
  }
  return null;
}

function nameOf(node: AnyNode): string | null {
  return node.type === 'Identifier' && 'name' in node && typeof node.name === 'string' ? node.name : null;
}
