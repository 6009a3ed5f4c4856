import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { reportFromJournal } from '#core/desk/report.ts';
import { reportText } from '#core/desk/reportWords.ts';

const bytes = readFileSync(join(import.meta.dirname, '../reference/data/ossar-journal.csv'));

test('a report as of an earlier day counts as living those that lived then', async () => {
  const answer = await reportFromJournal({ bytes, fileName: 'journal.csv', asOf: day('2023-11-25'), today: day('2026-11-25') });
  if (!answer.ok) throw new Error(answer.sentence);
  const value = answer.value.report;
  const then = value.colonies.filter(({ start, end }) => start <= '2023-11-25' && (end === null || end > '2023-11-25')).length;
  expect(then).not.toBe(value.import?.living);
  expect(value.living).toBe(then);
  expect(reportText(value)).toContain(`${then} colonies are alive on 25 November 2023.`);
});
