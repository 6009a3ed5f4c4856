import type { YardRow } from '#shared/contract/book.ts';
import type { WorkPlan, WorkTask } from '#shared/contract/work.ts';
import { tellTroubles, type NamedTrouble, type TroubleGroup } from './troubleGroups.ts';
import { words } from './words.ts';

interface TroublesProps {
  readonly plan: WorkPlan;
  readonly tasks: ReadonlyMap<string, WorkTask>;
  readonly yards: readonly YardRow[];
}

/** So many reasons stand there at once; the others open. */
const shown = 4;

/** What does not fit or comes late, by its reason and with what would mend it, and what was overdue before. */
export function Troubles({ plan, tasks, yards }: TroublesProps) {
  const { groups, overdue } = tellTroubles(plan, tasks);
  const nameOf = ({ yard }: { readonly yard: YardRow['id'] | null }) => (yard === null ? null : (yards.find(({ id }) => id === yard)?.name ?? null));
  const rest = groups.slice(shown);
  return (
    <section className="troubles" aria-label={words.troubles}>
      {groups.length === 0 ? (
        plan.outings.length === 0 ? null : <p className="soft">{overdue.length === 0 ? words.troublesNone : words.troublesOverdue}</p>
      ) : (
        <>
          <h2>{words.troubles}</h2>
          <Groups groups={groups.slice(0, shown)} nameOf={nameOf} />
          {rest.length === 0 ? null : (
            <details>
              <summary>{words.moreTroubles(rest.reduce((sum, { named }) => sum + named.length, 0))}</summary>
              <Groups groups={rest} nameOf={nameOf} />
            </details>
          )}
        </>
      )}
      {overdue.length === 0 ? null : (
        <details>
          <summary>{words.overdue(overdue.length, overdue.at(-1)?.day ?? plan.from)}</summary>
          <ul>
            {overdue.map(({ task, day }) => (
              <li key={task.key}>{words.overdueLine(nameOf(task), task.what, task.latest, day, task.source === 'round' ? task.reason : null)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** So many tasks are named in a sentence; more are a list that opens. */
const atOnce = 3;

function Groups({ groups, nameOf }: { readonly groups: readonly TroubleGroup[]; nameOf(trouble: NamedTrouble): string | null }) {
  return (
    <ul>
      {groups.map(({ kind, reason, mend, named }) => {
        const yards = [...Map.groupBy(named, nameOf)].map(([yard, own]): [string | null, string[]] => [yard, own.map(words.trouble)]);
        const few = named.length <= atOnce;
        return (
          <li key={`${kind} ${reason} ${mend ?? ''}`}>
            <span className="needs">{few ? words.troubled(kind, yards) : words.troubledMany(kind, named.length)}</span> {reason} {mend ?? ''}
            {few ? null : (
              <details>
                <summary>{words.which}</summary>
                <ul>
                  {yards.map(([yard, own]) => (
                    <li key={yard ?? ''}>{words.ofYard(yard, own)}.</li>
                  ))}
                </ul>
              </details>
            )}
          </li>
        );
      })}
    </ul>
  );
}
