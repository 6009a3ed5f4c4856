import type { DemoOperation } from './demoOperation.ts';
import { ossarSeed } from './ossarPlan.ts';
import { simulateOssar } from './simulateOssar.ts';

/** The invented operation of the demo, the examples and the pictures: five full seasons and a sixth up to 25 November 2026. */
export function ossarValley(seed: number = ossarSeed): DemoOperation {
  return simulateOssar(seed).operation;
}
