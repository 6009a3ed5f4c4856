import { useId, useState } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { WinterLineView } from '#shared/contract/stores.ts';
import type { Fault } from '#shared/faults.ts';
import { winterTasks, type WinterTask } from '#shared/winterTasks.ts';
import { useBook } from '../../desk/useBook.ts';
import { useCalmRead, useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { words } from './words.ts';

const tasks = Object.keys(winterTasks) as WinterTask[];

/** What each colony is made ready with; of the yard that is chosen, or of all. */
export function WinterSection({ yard }: { readonly yard: YardId | null }) {
  const { data, fault } = useCalmRead('stores.winter', {}, { keep: true });
  const note = useMarginNote();
  const heading = useId();
  const yards = data?.yards.filter(({ id }) => yard === null || id === yard) ?? [];
  const rows = yards.flatMap(({ colonies }) => colonies);
  const { shown, more } = useFirstRows(rows, words.winter);
  const items = rows[0]?.lines.map(({ item }) => item) ?? [];
  const chosen = yard === null ? undefined : yards[0];
  return (
    <section className="section" aria-labelledby={heading}>
      <h2 id={heading}>{words.winter}</h2>
      <FaultNote fault={fault} />
      {data === undefined ? null : !data.began ? (
        <p className="soft">{words.winterLater(dayText(data.from))}</p>
      ) : (
        <>
          <p className="soft stores-phase">
            {words.winterLine(dayText(data.from))} {words.dryMeans}
          </p>
          {rows.some(({ lines }) => lines.some(({ state }) => state === 'short')) ? <p className="soft stores-phase">{words.winterShort(dayText(data.feedBy))}</p> : null}
          {chosen === undefined ? null : <WriteDown code={chosen.code} />}
          <div className="scroll" tabIndex={0} role="group" aria-labelledby={heading}>
            <table className="tight" aria-labelledby={heading}>
              <thead>
                <tr>
                  <th scope="col">{words.colony}</th>
                  {items.map((item) => (
                    <th key={item} scope="col">
                      {words.winterHeads[item]}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {shown.map(({ id, label, lines }) => (
                  <tr key={id} {...note(() => <LinesNote label={label} lines={lines} />)}>
                    <th scope="row">
                      <Link href={`/colonies/${id}`}>{label}</Link>
                    </th>
                    {lines.map(({ item, state }) => (
                      <td key={item} className={state === 'to do' || state === 'short' ? 'needs' : undefined}>
                        {words.winterState[state]}
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
              <tfoot>
                <tr>
                  <th scope="row">{words.winterReady}</th>
                  {items.map((item) => (
                    <td key={item}>{words.readyOf(rows.filter(({ lines }) => lines.some((line) => line.item === item && line.state === 'done')).length, rows.length)}</td>
                  ))}
                </tr>
              </tfoot>
            </table>
          </div>
          {more}
        </>
      )}
    </section>
  );
}

/** What was done at every hive of a yard, written down as work. */
function WriteDown({ code }: { readonly code: string }) {
  const { today } = useBook();
  const { send, busy } = useWrite('journal.enter');
  const { say } = useNotice();
  const [fault, setFault] = useState<Fault | undefined>(undefined);
  // Not disabled meanwhile: the keyboard would lose its place.
  const enter = async (task: WinterTask) => {
    if (today === undefined || busy) return;
    const answer = await send({ rows: [{ date: today, entry: 'work', yard: code, task: winterTasks[task] }] });
    if (!answer.ok) return setFault(answer);
    setFault(undefined);
    say(words.taskEntered(words.tasks[task], code), { undoGesture: answer.value.gesture });
  };
  return (
    <Entering>
      <FaultNote fault={fault} />
      <p className="choices">
        {words.write(code)}
        {tasks.map((task) => (
          <button key={task} type="button" onClick={() => void enter(task)}>
            {words.tasks[task]}
          </button>
        ))}
      </p>
    </Entering>
  );
}

function LinesNote({ label, lines }: { readonly label: string; readonly lines: readonly WinterLineView[] }) {
  return (
    <MarginPart heading={label}>
      {lines.map(({ item, words: said }) => (
        <p key={item}>
          <strong>{words.winterHeads[item]}.</strong> {said}
        </p>
      ))}
    </MarginPart>
  );
}
