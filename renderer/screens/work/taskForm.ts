import type { OwnTask, OwnTaskBody, WorkTask } from '#shared/contract/work.ts';
import { dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import { ownTimeOf } from '#shared/taskKeys.ts';
import { readMeasure } from '#shared/typedMeasure.ts';
import type { YardId } from '#shared/brands.ts';
import { hoursWords as words } from './hoursWords.ts';

/** A task of one's own as typed. */
export type TypedTask = {
  readonly what: string;
  readonly yard: string;
  readonly earliest: string;
  readonly latest: string;
  readonly minutes: string;
  readonly people: string;
  readonly weather: OwnTaskBody['weather'];
  readonly bring: string;
  readonly repeat: string;
  readonly note: string;
};
export type TaskPart = keyof TypedTask;

export function freshTask(today: string): TypedTask {
  return { what: '', yard: '', earliest: today, latest: '', minutes: '30', people: '1', weather: 'any', bring: '', repeat: '', note: '' };
}

export function typedTask(task: OwnTask): TypedTask {
  return {
    what: task.what, yard: task.yard === null ? '' : String(task.yard), earliest: task.earliest, latest: task.latest, minutes: String(task.minutes), people: String(task.people), weather: task.weather,
    bring: task.bring.map(({ item, count }) => `${count} ${item}`).join(', '), repeat: task.repeat ?? '', note: task.note ?? '',
  };
}

/** The last day of a task that comes once, as typed, where it is over already; null where it is not, or cannot be read. */
export function pastDay(typed: Pick<TypedTask, 'earliest' | 'latest' | 'repeat'>, today: Day, order: DateOrder): Day | null {
  const last = dayFromTyped(typed.latest.trim() === '' ? typed.earliest : typed.latest, order);
  return typed.repeat !== '' || last === null || last >= today ? null : last;
}

/** What became of a task whose days are over undone: still asked for, or no longer. */
export function overBy({ key, repeat, latest, settled }: OwnTask, asked: readonly Pick<WorkTask, 'key'>[], today: Day): 'overdue' | 'past' | null {
  if (repeat !== null || latest >= today || settled.length > 0) return null;
  return asked.some((one) => ownTimeOf(one.key)?.task === key) ? 'overdue' : 'past';
}

/** Letters that have room. */
const longest = { what: 120, item: 80, note: 400 } as const;

export type TaskReading = { readonly task: OwnTaskBody; readonly trouble: null } | { readonly task: null; readonly trouble: { readonly part: TaskPart; readonly sentence: string } };

export function readTask(typed: TypedTask, colonies: OwnTaskBody['colonies'], order: DateOrder): TaskReading {
  const no = (part: TaskPart, sentence: string): TaskReading => ({ task: null, trouble: { part, sentence } });
  const what = typed.what.trim();
  if (what === '') return no('what', words.noWhat);
  if (what.length > longest.what) return no('what', words.tooLong(what.length, longest.what));
  const earliest = dayFromTyped(typed.earliest, order);
  if (earliest === null) return no('earliest', words.badDay(typed.earliest));
  const latest = typed.latest.trim() === '' ? earliest : dayFromTyped(typed.latest, order);
  if (latest === null) return no('latest', words.badDay(typed.latest));
  if (latest < earliest) return no('latest', words.daysTurned);
  const minutes = readMeasure(typed.minutes, { unit: 'min', least: 1, most: 6000, whole: true, suchAs: '90' });
  if (!minutes.ok) return no('minutes', minutes.sentence);
  const people = readMeasure(typed.people, { unit: null, own: ['person', 'persons', 'people'], least: 1, most: 8, whole: true, suchAs: '2' });
  if (!people.ok) return no('people', people.sentence);
  const bring: OwnTaskBody['bring'] = [];
  for (const part of typed.bring.split(/[,;]\s+|[;\n]/).map((one) => one.trim()).filter((one) => one !== '')) {
    const found = /^(\d+(?:[.,]\d+)?)\s*(?:×|x\s)?\s*(\S.*)$/.exec(part);
    if (found === null) return no('bring', words.badBring(part));
    const item = found[2] ?? '';
    if (item.length > longest.item) return no('bring', words.noteTooLong(item.length, longest.item));
    bring.push({ count: Number((found[1] ?? '').replace(',', '.')), item });
  }
  const note = typed.note.trim();
  if (note.length > longest.note) return no('note', words.noteTooLong(note.length, longest.note));
  return {
    task: {
      what, yard: typed.yard === '' ? null : (Number(typed.yard) as YardId), colonies, earliest, latest, minutes: minutes.value, people: people.value, weather: typed.weather, bring,
      repeat: typed.repeat === '' ? null : typed.repeat, note: note === '' ? null : note,
    },
    trouble: null,
  };
}
