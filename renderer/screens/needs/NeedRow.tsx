import { useRef, useState } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { NeedLine } from '#shared/contract/needs.ts';
import type { DateOrder, Day } from '#shared/days.ts';
import { Entering } from '../../parts/Entering.tsx';
import { dayShort } from '../../parts/format.ts';
import { useMarginNote } from '../../parts/Margin.tsx';
import { NeedNote } from './NeedNote.tsx';
import { pageLinks } from './pageLinks.ts';
import { PutOffForm } from './PutOffForm.tsx';
import { words } from './words.ts';

export interface NeedRowProps {
  readonly line: NeedLine;
  readonly yard: YardId | null;
  readonly today: Day;
  readonly most: Day;
  readonly order: DateOrder;
}

const fewMembers = 3;

/** One line: what, for whom, why, by when; opened, each colony with what its own record says. */
export function NeedRow({ line, yard, today, most, order }: NeedRowProps) {
  const [open, setOpen] = useState(false);
  const [leaving, setLeaving] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const leave = (gone: boolean) => {
    setLeaving(false);
    // A line that goes leaves the keyboard at the head of the page.
    requestAnimationFrame(() => (gone ? document.querySelector('h1') : opener.current)?.focus());
  };
  const note = useMarginNote();
  const who = whoOf(line);
  const few = line.members.length <= fewMembers && line.count === line.members.length;
  return (
    <li {...note(() => <NeedNote line={line} />)}>
      <div className="needs-head">
        <span className="needs-act">{line.act}</span>
        <span className={line.status === 'overdue' ? 'needs' : 'soft'}>{whenOf(line)}</span>
        <span className="soft number">{words.hours(line.minutes)}</span>
      </div>
      <p className="soft small">
        {line.because}
        {line.overdue > 0 && line.overdue < line.count ? ` ${words.someLate(line.overdue)}.` : ''}
      </p>
      <div className="needs-acts">
        {who === '' || few ? null : (
          <button type="button" className="link" aria-expanded={open} aria-label={words.show(line.act, who)} onClick={() => setOpen(!open)}>
            {who}
          </button>
        )}
        <ToPage line={line} />
        <Entering>
          <button ref={opener} type="button" className="link" aria-expanded={leaving} aria-label={words.laterOf(line.act)} onClick={() => setLeaving(!leaving)}>
            {words.later}
          </button>
        </Entering>
      </div>
      {few || open ? <Members line={line} /> : null}
      {leaving ? <PutOffForm line={line} yard={yard} today={today} most={most} order={order} onLeft={leave} /> : null}
    </li>
  );
}

function ToPage({ line }: { readonly line: NeedLine }) {
  const found = pageLinks(line);
  if (found === null) return null;
  const links = found.links.map(({ at, text, label }) => (
    <Link key={at} href={at} aria-label={label}>
      {text}
    </Link>
  ));
  return found.name === null ? (
    links
  ) : (
    <span className="needs-pages">
      <span className="soft">{found.name}:</span> {links}
    </span>
  );
}

function Members({ line }: { readonly line: NeedLine }) {
  return (
    <ul className="needs-members">
      {line.members.map(({ key, colony, yard, detail, status }) => (
        <li key={key}>
          {colony === null ? yard === null ? null : <Link href={`/yards/${yard.id}`}>{yard.name}</Link> : <Link href={`/colonies/${colony.id}`}><bdi>{colony.label}</bdi></Link>}
          {colony !== null && yard !== null ? <span className="soft">, {yard.name}</span> : null}
          {detail === null ? null : <span className="soft">{colony === null && yard === null ? detail : <>: {detail}</>}</span>}
          {status === 'overdue' && line.overdue < line.count ? <span className="needs">, {words.late}</span> : null}
        </li>
      ))}
      {line.count > line.members.length ? <li className="soft">{words.moreOf(line.count - line.members.length)}</li> : null}
    </ul>
  );
}

function whoOf({ members, count, yards }: NeedLine): string {
  const colonies = members.some(({ colony }) => colony !== null);
  if (!colonies) return yards.length === 0 ? '' : words.yards(count);
  return yards.length > 1 ? `${words.colonies(count)}, ${words.yards(yards.length)}` : `${words.colonies(count)}, ${yards[0]?.name ?? ''}`;
}

function whenOf({ status, earliest, latest }: NeedLine): string {
  if (status === 'coming') return words.from(dayShort(earliest));
  return status === 'overdue' ? words.overdue(dayShort(latest)) : words.by(dayShort(latest));
}
