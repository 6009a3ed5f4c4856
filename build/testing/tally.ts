/** What a run of the suite came to. */
export interface Tally {
  readonly passed: number;
  readonly failed: number;
  /** Tests that could not run on this machine, by full name. */
  readonly notRun: readonly string[];
}

/** One step of the check and how it ended. */
export interface Step {
  readonly name: string;
  readonly passed: boolean;
  readonly seconds: number;
}

/**
 * The closing lines of a check; the last one is always `N passed, N failed`, steps counted beside tests.
 * @param tally null when the tests never got to an end; that counts as one failure.
 */
export function closingLines(steps: readonly Step[], tally: Tally | null): string[] {
  const lines = steps.map((step) => `${step.passed ? 'passed' : 'FAILED'}  ${step.name}  ${step.seconds.toFixed(1)} s`);
  if (tally === null) lines.push('FAILED  tests  did not come to an end');
  else {
    lines.push(`${tally.failed === 0 ? 'passed' : 'FAILED'}  tests  ${tally.passed} passed, ${tally.failed} failed, ${tally.notRun.length} not run here`);
    for (const name of tally.notRun) lines.push(`        not run here: ${name}`);
  }
  const stepsFailed = steps.filter((step) => !step.passed).length;
  const passed = steps.length - stepsFailed + (tally?.passed ?? 0);
  const failed = stepsFailed + (tally?.failed ?? 1);
  return [...lines, `${passed} passed, ${failed} failed`];
}

/** True only if every step and every test passed and there was at least one test. */
export function isGreen(steps: readonly Step[], tally: Tally | null): boolean {
  return steps.every((step) => step.passed) && tally !== null && tally.failed === 0 && tally.passed > 0;
}
