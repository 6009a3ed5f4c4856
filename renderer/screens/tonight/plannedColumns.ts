import type { PlannedSheet } from '#shared/contract/trips.ts';
import type { RoundColumn } from '#shared/roundSheets.ts';

/** The columns that planned work needs beside those of the sheet. */
export function plannedColumns(planned: PlannedSheet | null): RoundColumn[] {
  return (planned?.works ?? []).flatMap(({ columns }) => columns);
}
