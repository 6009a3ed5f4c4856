import { parseSync } from 'oxc-parser';
import type { Finding } from './finding.ts';
import { lineFinder } from './lineFinder.ts';

export const mostLines = 400;

/**
 * A file of code longer than 400 lines holds more than one concept. Lines of data tables (top-level constants made of
 * nothing but literals) are not counted: a long table is still one thing.
 */
export function judgeLength(file: string, text: string): Finding[] {
  const lines = text.split('\n').length - (text.endsWith('\n') ? 1 : 0);
  if (lines <= mostLines) return [];
  const counted = lines - linesOfTables(file, text);
  if (counted <= mostLines) return [];
  return [{ file, line: mostLines + 1, sentence: `has ${counted} lines beside its tables; past ${mostLines} split it by concept` }];
}

function linesOfTables(file: string, text: string): number {
  if (!/\.[cm]?[jt]sx?$/.test(file)) return 0;
  const lineAt = lineFinder(text);
  let lines = 0;
  for (const statement of parseSync(file, text).program.body) {
    const declared = statement.type === 'ExportNamedDeclaration' ? statement.declaration : statement;
    if (declared?.type !== 'VariableDeclaration') continue;
    for (const { init } of declared.declarations) {
      if (init !== null && isData(init)) lines += lineAt(init.end) - lineAt(init.start) + 1;
    }
  }
  return lines;
}

/** True for a literal, or an array or object of nothing but data. */
function isData(node: unknown): boolean {
  const part = node as { type: string } & Record<string, unknown>;
  switch (part.type) {
    case 'Literal':
      return true;
    case 'UnaryExpression':
    case 'TSAsExpression':
    case 'TSSatisfiesExpression':
      return isData(part['argument'] ?? part['expression']);
    case 'TemplateLiteral':
      return (part['expressions'] as unknown[]).length === 0;
    case 'ArrayExpression':
      return (part['elements'] as unknown[]).every((element) => element !== null && isData(element));
    case 'ObjectExpression':
      return (part['properties'] as { type: string; computed?: boolean; value?: unknown }[]).every(
        (property) => property.type === 'Property' && property.computed !== true && isData(property.value),
      );
    default:
      return false;
  }
}
