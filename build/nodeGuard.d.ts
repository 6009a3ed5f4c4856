/** The oldest Node that reads .ts files as they are and carries the database: major, minor. */
export const oldest: readonly [number, number];
/** What to tell the person about their Node; null when it serves. */
export function nodeSentence(version: string): string | null;
