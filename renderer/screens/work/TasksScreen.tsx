import { useEffect, useId, useRef, useState, type FormEvent, type ReactNode } from 'react';
import type { OwnTask } from '#shared/contract/work.ts';
import { weatherNeeds } from '#shared/contract/work.ts';
import type { Fault } from '#shared/faults.ts';
import { ownTimeOf } from '#shared/taskKeys.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { focusPart } from '../../parts/focusPart.ts';
import { dayText, number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { Page } from '../../parts/Page.tsx';
import { restoredParts } from '../../parts/restoredParts.ts';
import { useDraft } from '../../parts/useDraft.ts';
import { hoursWords as words } from './hoursWords.ts';
import { freshTask, overBy, pastDay, readTask, typedTask, type TaskPart, type TypedTask } from './taskForm.ts';
import { WorkNav } from './WorkNav.tsx';
import './work.css';

/** Tasks that only the person knows of, once or again and again. */
export function TasksScreen() {
  const { data, fault } = useRead('work.ownTasks', {});
  const asked = useRead('work.tasks', {});
  const { book, today } = useBook();
  const settle = useWrite('work.settleTask');
  const back = useWrite('work.taskBack');
  const { say } = useNotice();
  const [open, setOpen] = useState<OwnTask | 'new' | null>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const wasOpen = useRef(false);
  // The form took the keyboard when it opened; when it goes, the button is back and takes it.
  useEffect(() => {
    if (wasOpen.current && open === null) opener.current?.focus();
    wasOpen.current = open !== null;
  }, [open]);
  const yardName = (id: OwnTask['yard']) => (id === null ? words.atHome : (book?.yards.find((yard) => yard.id === id)?.name ?? ''));
  const repeatName = (rule: string | null) => (rule === null ? words.repeats[''] : rule in words.repeats ? words.repeats[rule as keyof typeof words.repeats] : words.otherRepeat(rule));
  const act = async (task: OwnTask, day: OwnTask['earliest'] | null, how: 'done' | 'struck') => {
    const answer = await settle.send({ key: task.key, day, how });
    if (!answer.ok) return say(answer.sentence);
    say(day === null ? words.takenAway(task.what) : words.settled(task.what), {
      takeBack: async () => {
        const there = await back.send({ task });
        return there.ok ? words.isBack(task.what) : there.sentence;
      },
    });
  };
  /** The time of a task that is asked for next; of a repeating one each is done by itself. */
  const nextOf = ({ key, repeat, earliest }: OwnTask) => (repeat === null ? earliest : (asked.data?.tasks.find((one) => ownTimeOf(one.key)?.task === key)?.earliest ?? null));
  const actsOn = (task: OwnTask): [string, () => void][] => {
    const next = nextOf(task);
    const settling: [string, () => void][] =
      next === null ? [] : task.repeat === null ? [[words.done, () => void act(task, next, 'done')]] : [[words.doneOn(dayText(next)), () => void act(task, next, 'done')], [words.struckOn(dayText(next)), () => void act(task, next, 'struck')]];
    return [[words.taskChange, () => setOpen(task)], ...settling, [words.taskDrop, () => void act(task, null, 'struck')]];
  };
  const tasks = data?.tasks ?? [];
  const overOf = (task: OwnTask) => (asked.data === undefined || today === undefined ? null : overBy(task, asked.data.tasks, today));
  return (
    <Page title={words.tasksTitle} line={words.tasksLine}>
      <WorkNav />
      <FaultNote fault={fault} />
      <Entering>
        {open === null ? (
          <p className="acts work-acts">
            <button type="button" ref={opener} onClick={() => setOpen('new')}>
              {words.taskNew}
            </button>
          </p>
        ) : book === undefined || today === undefined ? null : (
          <TaskForm key={open === 'new' ? 'new' : open.key} task={open === 'new' ? null : open} onDone={() => setOpen(null)} />
        )}
        {data !== undefined && tasks.length === 0 && open === null ? <p className="soft">{words.tasksNone}</p> : null}
        {tasks.length === 0 ? null : (
          <table className="tight" aria-label={words.tasksTitle}>
            <thead>
              <tr>
                <th scope="col">{words.what}</th>
                <th scope="col">{words.yard}</th>
                <th scope="col">{words.earliest}</th>
                <th scope="col">{words.latest}</th>
                <th scope="col" className="number">
                  {words.minutes}
                </th>
                <th scope="col">{words.repeat}</th>
                <td />
              </tr>
            </thead>
            <tbody>
              {tasks.map((task) => (
                <tr key={task.key}>
                  <th scope="row">{task.what}</th>
                  <td>{yardName(task.yard)}</td>
                  <td>{dayText(task.earliest)}</td>
                  <td>
                    {dayText(task.latest)}
                    {((over) => (over === null ? null : <span className="needs small block">{words.over[over]}</span>))(overOf(task))}
                  </td>
                  <td className="number">{number(task.minutes)}</td>
                  <td>{task.settled.some(({ day }) => day === task.earliest) && task.repeat === null ? words.done : repeatName(task.repeat)}</td>
                  <td>
                    {actsOn(task).map(([name, run]) => (
                      <span key={name}>
                        <button type="button" className="link" disabled={settle.busy} onClick={run}>
                          {name}
                          <span className="visually-hidden"> ({task.what})</span>
                        </button>{' '}
                      </span>
                    ))}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </Entering>
      <MarginContent heading={words.marginTasks}>
        <p>{words.marginTasksText}</p>
      </MarginContent>
    </Page>
  );
}

function TaskForm({ task, onDone }: { readonly task: OwnTask | null; onDone(): void }) {
  const id = useId();
  const { book, today } = useBook();
  const { send, busy } = useWrite('work.setTask');
  const { say } = useNotice();
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => focusPart(form.current, 'what'), []);
  const [typed, setTyped] = useState<TypedTask>(() => (task === null ? freshTask(today ?? '') : typedTask(task)));
  const draft = useDraft(`own task ${task?.key ?? 'new'}`, (body) => setTyped((before) => restoredParts(body, before)));
  const [trouble, setTrouble] = useState<{ part: TaskPart; sentence: string } | null>(null);
  const [fault, setFault] = useState<Fault | undefined>();
  const change = (part: TaskPart, value: string) => {
    setTrouble(null);
    const next = { ...typed, [part]: value };
    setTyped(next);
    draft.keep(JSON.stringify(next));
  };
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    if (busy || book === undefined) return;
    const read = readTask(typed, task?.colonies ?? [], book.dateOrder);
    setTrouble(read.trouble);
    setFault(undefined);
    if (read.trouble !== null) {
      focusPart(form.current, read.trouble.part);
      return;
    }
    const answer = await send({ key: task?.key ?? null, task: read.task });
    if (!answer.ok) return setFault(answer);
    draft.drop();
    const { what, latest, repeat } = answer.value.task;
    say(repeat === null && today !== undefined && latest < today ? words.taskKeptPast(what, latest) : words.taskKept(what));
    onDone();
  };
  const labels: Record<TaskPart, string> = {
    what: words.what, yard: words.yard, earliest: words.earliest, latest: words.latest, minutes: words.minutesEach, people: words.persons, weather: words.weather, bring: `${words.bring} (${words.bringHelp})`, repeat: words.repeat, note: words.note,
  };
  const over = book === undefined || today === undefined ? null : pastDay(typed, today, book.dateOrder);
  const overPart: TaskPart = typed.latest.trim() === '' ? 'earliest' : 'latest';
  // What an empty field means is said beside it, and to whoever hears it.
  const helps: Partial<Record<TaskPart, string>> = { latest: typed.repeat === '' ? words.latestHelp : words.latestHelpEach };
  const field = (part: TaskPart, input: ReactNode, wide = false) => (
    <div className={wide ? 'field wide' : 'field'}>
      <label htmlFor={`${id}${part}`}>{labels[part]}</label>
      {input}
      {helps[part] === undefined ? null : (
        <span className="soft small" id={`${id}${part}-help`}>
          {helps[part]}
        </span>
      )}
      {trouble?.part === part ? (
        <span className="field-fault" id={`${id}${part}-says`}>
          {trouble.sentence}
        </span>
      ) : over !== null && part === overPart ? (
        <span className="needs small" role="status">
          {words.dayOver(over)}
        </span>
      ) : null}
    </div>
  );
  const text = (part: TaskPart, wide = false) =>
    field(part, <input id={`${id}${part}`} name={part} type="text" autoComplete="off" value={typed[part]} aria-invalid={trouble?.part === part || undefined} aria-describedby={[...(helps[part] === undefined ? [] : [`${id}${part}-help`]), ...(trouble?.part === part ? [`${id}${part}-says`] : [])].join(' ') || undefined} onChange={(event) => change(part, event.target.value)} />, wide);
  const select = (part: TaskPart, of: readonly (readonly [string, string])[]) =>
    field(
      part,
      <select id={`${id}${part}`} name={part} value={typed[part]} onChange={(event) => change(part, event.target.value)}>
        {of.map(([value, name]) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>,
    );
  const repeats = Object.entries(words.repeats) as [string, string][];
  return (
    <form ref={form} className="entry-form" aria-label={words.taskNew} onSubmit={(event) => void keep(event)} onKeyDown={(event) => { if (event.key === 'Escape') onDone(); }} noValidate>
      <div className="fields">
        {text('what', true)}
        {select('yard', [['', words.atHome], ...(book?.yards ?? []).map((yard) => [String(yard.id), yard.name] as const)])}
        {text('earliest')}
        {text('latest')}
        {text('minutes')}
        {text('people')}
        {select('weather', weatherNeeds.map((need) => [need, words.weathers[need]] as const))}
        {select('repeat', typed.repeat in words.repeats ? repeats : [...repeats, [typed.repeat, words.otherRepeat(typed.repeat)]])}
        {text('bring', true)}
        {text('note', true)}
      </div>
      <FaultNote fault={fault} />
      <div className="acts">
        <button type="submit" disabled={busy}>
          {words.taskKeep}
        </button>
        <button type="button" className="quiet" onClick={onDone}>
          {words.leave}
        </button>
      </div>
    </form>
  );
}
