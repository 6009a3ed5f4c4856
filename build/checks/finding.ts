/** One place that breaks a house rule: a path from the root with `/`, a line from 1, and what to do instead. */
export interface Finding {
  readonly file: string;
  readonly line: number;
  readonly sentence: string;
}

export function printFinding(finding: Finding): string {
  return `${finding.file}:${finding.line}  ${finding.sentence}`;
}
