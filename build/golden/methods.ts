import type { GoldenMethod } from './goldenMethod.ts';
import { betaBinomial } from './methods/betaBinomial.ts';
import { cox } from './methods/cox.ts';
import { coxMonotone } from './methods/coxMonotone.ts';
import { forecast } from './methods/forecast.ts';
import { km } from './methods/km.ts';
import { kmBy } from './methods/kmBy.ts';
import { logrank } from './methods/logrank.ts';
import { logrankStratified } from './methods/logrankStratified.ts';
import { lossRate } from './methods/lossRate.ts';
import { mites } from './methods/mites.ts';
import { proportion } from './methods/proportion.ts';
import { table2x2 } from './methods/table2x2.ts';
import { tableRxC } from './methods/tableRxC.ts';
import { yieldPerColony } from './methods/yield.ts';

/** Every method that is computed: a new one is a file in methods/ and a line here. */
export const goldenMethods: ReadonlyMap<string, GoldenMethod> = new Map(
  [km, kmBy, proportion, lossRate, betaBinomial, forecast, logrank, logrankStratified, cox, coxMonotone, table2x2, tableRxC, yieldPerColony, mites].map((method) => [method.method, method]),
);
