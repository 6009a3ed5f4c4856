import { parseSync, Visitor } from 'oxc-parser';
import type { Finding } from './finding.ts';
import { lineFinder } from './lineFinder.ts';

const testWords = new Set(['it', 'test', 'describe', 'suite', 'bench']);
const leftOutWords = new Set(['skip', 'only', 'todo']);
const oldSpellings = new Set(['xit', 'xtest', 'xdescribe', 'fit', 'fdescribe']);

/**
 * The ways of putting something off: tests left out or run alone, `any`, compiler faults silenced, lint rules silenced
 * without a reason, unfinished marks, waiting for a time. A test that cannot run on a machine says so with `skipIf` or `runIf` and a condition, which is allowed:
 * it is counted and named at the end of a run.
 */
export function judgeShortcuts(file: string, text: string): Finding[] {
  const parsed = parseSync(file, text);
  const lineAt = lineFinder(text);
  const findings: Finding[] = [];
  const found = (at: number, sentence: string) => void findings.push({ file, line: lineAt(at), sentence });

  for (const comment of parsed.comments) {
    const unfinished = /\b(?:TODO|FIXME|XXX|HACK)\b/.exec(comment.value);
    if (unfinished) found(comment.start, `${unfinished[0]}: finish it, or say in DEVELOPERS.md what is not built`);
    const silenced = /@ts-(?:ignore|nocheck)\b/.exec(comment.value);
    if (silenced) found(comment.start, `${silenced[0]} hides faults: mend the type`);
    const expected = /@ts-expect-error\b(.*)/.exec(comment.value);
    if (expected && (expected[1] ?? '').trim().length < 8) found(comment.start, '@ts-expect-error without a reason beside it');
    const quiet = /\b(?:oxlint|eslint)-disable(?:-next-line|-line)?\b(.*)/.exec(comment.value);
    if (quiet && !/--\s*\S.{7,}/.test(quiet[1] ?? '')) found(comment.start, 'a lint rule is silenced without a reason: add "-- why"');
  }

  new Visitor({
    TSAnyKeyword: (node) => found(node.start, 'any switches the types off: use unknown, or say what it is'),
    MemberExpression: (node) => {
      if (node.computed || node.property.type !== 'Identifier') return;
      if (node.property.name === 'waitForTimeout') found(node.start, 'waits for a time: wait for what should happen');
      if (!leftOutWords.has(node.property.name)) return;
      const root = rootName(node.object);
      if (root !== null && testWords.has(root)) found(node.start, `.${node.property.name} leaves tests out of the run`);
    },
    CallExpression: (node) => {
      if (node.callee.type === 'Identifier' && oldSpellings.has(node.callee.name)) {
        found(node.start, `${node.callee.name} leaves tests out of the run`);
      }
    },
  }).visit(parsed.program);
  return findings.sort((a, b) => a.line - b.line);
}

/** `describe` of `describe`, `describe.concurrent` and `describe.each([])`. */
function rootName(node: { readonly type: string }): string | null {
  if (node.type === 'Identifier' && 'name' in node) return String(node.name);
  if (node.type === 'MemberExpression' && 'object' in node) return rootName(node.object as { type: string });
  if (node.type === 'CallExpression' && 'callee' in node) return rootName(node.callee as { type: string });
  return null;
}
