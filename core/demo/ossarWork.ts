import type { WorkHours, WorkSlot } from '#shared/contract/work.ts';
import type { YardCode } from './ossarPlan.ts';

const evening: WorkSlot = { from: 18 * 60, until: 20 * 60 };
const saturday: WorkSlot = { from: 8 * 60, until: 16 * 60 };

/** One keeper with ten evening hours and a Saturday, and a helper on Saturdays; the valley’s place is invented like the valley. */
export const ossarHours: WorkHours = {
  people: [
    { name: 'Keeper', week: [evening, evening, evening, evening, evening, saturday, null], alone: true, exceptions: [] },
    { name: 'Helper', week: [null, null, null, null, null, saturday, null], alone: false, exceptions: [] },
  ],
  place: { latitude: 44, longitude: -92, zone: 'America/Chicago' },
};

/** Minutes between yards that lie on the same side of the valley. */
export const ossarWays: readonly (readonly [YardCode, YardCode, number])[] = [
  ['QY', 'OO', 14], ['QY', 'MR', 12], ['OO', 'MR', 20], ['QY', 'LB', 30], ['LB', 'KF', 14], ['KF', 'NS', 24], ['LB', 'NS', 34],
];
