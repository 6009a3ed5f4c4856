import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Files that take long although they are short. The runner goes by the size of a file where it has not yet seen it run,
 * as on a fresh machine, and one of these at the very end would keep one processor waiting for the other.
 */
const long = [
  'tests/book/processes.test.ts',
  'tests/journal/randomActs.test.ts',
  'tests/exchange/badFiles.test.ts',
  'tests/desk/asOf.test.ts',
  'tests/reference/survivalPeer.test.ts',
  'tests/house/documents.test.ts',
  'tests/desk/decision.test.ts',
  'tests/desk/workPlan.test.ts',
  'tests/journal/overTheDesk.test.ts',
  'tests/screens/losses.test.ts',
  'tests/hosts/command.test.ts',
  'tests/screens/colonies.test.ts',
  'tests/screens/orders.test.ts',
  'tests/screens/tonight.test.ts',
  'tests/screens/rounds.test.ts',
  'tests/screens/lines.test.ts',
  'tests/screens/find.test.ts',
  'tests/screens/keys.test.ts',
  'tests/screens/line.test.ts',
  'tests/screens/stock.test.ts',
];

/** Within each project the files above, in that order, before all others. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const projects = Map.groupBy(sorted, ({ project }) => project.name);
    const place = ({ moduleId }: TestSpecification) => {
      const at = long.findIndex((name) => moduleId.endsWith(name));
      return at < 0 ? long.length : at;
    };
    return [...projects.values()].flatMap((own) => own.toSorted((a, b) => place(a) - place(b)));
  }
}
