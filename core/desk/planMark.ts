import { createHash } from 'node:crypto';
import { readPutOff } from './needPapers.ts';
import { readFreeHours } from './freeHours.ts';
import type { Book } from './openBook.ts';
import { readChoices, readDistances, readOwnTasks } from './workPapers.ts';

const partNames = { record: 'the record', rules: 'the house rules', yards: 'the yards', hours: 'the hours', ways: 'the ways between the yards', tasks: 'your own tasks', fixed: 'what you have fixed', putOff: 'what is put off' } as const;
type Part = keyof typeof partNames;
const parts = Object.keys(partNames) as Part[];

/** Stands for all that a plan was made from, as a whole and by its parts; what is fixed and what is put off stand among the parts only, as plans kept by older programs have no mark of them. */
export interface PlanMark {
  readonly mark: string;
  readonly parts: Record<string, string>;
}

/**
 * Stands for all that a plan was made from: the journal, the rules, hours, ways, own tasks, what is fixed and which needs are put off. What else is written beside the
 * journal (what a calendar was told, the plan itself) makes no plan old, though it moves the book’s position on.
 */
export async function planMark(book: Book): Promise<PlanMark> {
  const { store } = book;
  const { entry } = await store.nextIds();
  const { entries } = await store.counts();
  const { rules, yardList } = await book.picture();
  const told = {
    record: [entry, entries], rules: [...rules], yards: yardList, hours: (await readFreeHours(store)).hours, ways: await readDistances(store), tasks: await readOwnTasks(store),
    fixed: (await readChoices(store)).toSorted((a, b) => (a.key < b.key ? -1 : 1)),
    putOff: [...(await readPutOff(store))].toSorted(([a], [b]) => (a < b ? -1 : 1)),
  } satisfies Record<Part, unknown>;
  return {
    mark: hashOf([entry, entries, told.rules, told.yards, told.hours, told.ways, told.tasks]).slice(0, 24),
    parts: Object.fromEntries(parts.map((part) => [part, hashOf(told[part]).slice(0, 8)])),
  };
}

/** What has changed since a plan was made, in a sentence; null where nothing has. `then` of a plan kept by an older program has no parts, or not all of them. */
export function changedSince(now: PlanMark, then: { readonly mark: string; readonly parts?: PlanMark['parts'] | undefined }): string | null {
  const changed = parts.filter((part) => then.parts?.[part] !== undefined && then.parts[part] !== now.parts[part]).map((part) => partNames[part]);
  if (changed.length > 0) return changedSays(changed);
  return now.mark === then.mark ? null : movedOn;
}

/** Where it is not known what. */
export const movedOn = 'The record, the rules or the hours have changed since this plan was made.';

function changedSays(names: readonly string[]): string {
  const listed = names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  const many = names.length > 1 || listed.endsWith('s');
  return `${listed.charAt(0).toUpperCase()}${listed.slice(1)} ${many ? 'have' : 'has'} changed since this plan was made.`;
}

function hashOf(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value)).digest('hex');
}
