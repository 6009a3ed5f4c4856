import { dayFromIso, type Day } from './days.ts';

/** The key of one time of an own task, which begins on that day. */
export function ownTaskKey(task: string, earliest: Day): string {
  return `own|${task}|${earliest}`;
}

/** The own task that a key is a time of, and the first day of that time; null of any other task. */
export function ownTimeOf(key: string): { readonly task: string; readonly on: Day } | null {
  const [, task, first] = /^own\|(.+)\|([^|]+)$/.exec(key) ?? [];
  const on = dayFromIso(first ?? '');
  return task === undefined || on === null ? null : { task, on };
}
