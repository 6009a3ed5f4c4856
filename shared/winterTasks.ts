/** Work on a hive that makes it ready for winter, and the task of the work entry by which the program writes it down. */
export const winterTasks = { reduce: 'entrances reduced', wrap: 'hives wrapped', dry: 'hives made dry' } as const;
export type WinterTask = keyof typeof winterTasks;
