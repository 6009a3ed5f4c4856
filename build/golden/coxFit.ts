import { z } from 'zod';
import { coxModel, type CoxModel } from '#core/stats/coxModel.ts';
import type { Columns } from './goldenFile.ts';
import { column, spansOf } from './survivalColumns.ts';

const input = z.object({ terms: z.union([z.string(), z.array(z.string())]) });

/** The model of a case; throws if there is none to fit. */
export function coxFit(given: Readonly<Record<string, unknown>>, columns: Columns): { readonly names: readonly string[]; readonly model: CoxModel } {
  const names = [input.parse(given).terms].flat();
  const covariates = names.map((name) => ({
    name,
    values: column(columns, name).map((value, row) => {
      if (typeof value === 'string') throw new Error(`column ${name}, row ${row}: ${value} is not a number`);
      return value;
    }),
  }));
  const model = coxModel(spansOf(columns), covariates);
  if (model === null) throw new Error('there is nothing to fit: no losses, or no covariate that varies');
  return { names, model };
}
