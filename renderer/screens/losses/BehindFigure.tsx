import { Link } from 'wouter';
import type { OutputOf } from '#shared/contract/contract.ts';
import { seasonName } from '#shared/seasons.ts';
import { useRead } from '../../desk/useDesk.ts';
import { dayTight } from '../../parts/format.ts';
import { factorWords as words } from './factorWords.ts';
import type { Scope } from './useFactors.ts';

/** Which figure's colonies are asked for. */
export interface Asked {
  readonly factor: string;
  readonly group: string | null;
  readonly yard?: string;
}

export function sameAsked(one: Asked | null, other: Asked): boolean {
  return one !== null && one.factor === other.factor && one.group === other.group && one.yard === other.yard;
}

/** A figure that opens the colonies behind it, below its row. */
export function FigureButton({ text, name, open, onToggle }: { readonly text: string; readonly name: string; readonly open: boolean; readonly onToggle: () => void }) {
  return (
    <button type="button" className="link figure-open" aria-expanded={open} aria-label={`${text}. ${words.show(name)}`} onClick={onToggle}>
      {text}
    </button>
  );
}

type Colony = OutputOf<'losses.factorGroup'>['colonies'][number];
/** More than this are counted, not listed. */
const most = 300;

/** The colonies behind a figure, lost ones first, each with its page. */
export function BehindFigure({ asked, season, scope }: { readonly asked: Asked; readonly season: number; readonly scope: Scope }) {
  const { data, fault } = useRead('losses.factorGroup', { season, scope, ...asked });
  if (fault) return <p className="fault-note">{fault.sentence}</p>;
  if (!data) return <p className="soft small">{words.reading}</p>;
  const lost = data.colonies.filter((colony) => colony.lost);
  const lived = data.colonies.filter((colony) => !colony.lost);
  return (
    <div className="behind-figure" role="group" aria-label={words.listOf(data.name, data.colonies.length)}>
      <p className="soft small">{words.listOf(data.name, data.colonies.length)}</p>
      <ColonyList head={words.lostHead} colonies={lost} scope={scope} />
      {lived.length > 0 && <ColonyList head={words.livedHead} colonies={lived} scope={scope} />}
    </div>
  );
}

function ColonyList({ head, colonies, scope }: { readonly head: string; readonly colonies: readonly Colony[]; readonly scope: Scope }) {
  return (
    <p className="small">
      <span className="soft">{head}: </span>
      {colonies.length === 0 && words.nobody}
      {colonies.slice(0, most).map((colony, at) => (
        <span key={`${colony.id} ${colony.season}`} className="behind-colony">
          {at > 0 && ', '}
          <Link href={`/colonies/${colony.id}`}>{colony.label}</Link>
          {detail(colony, scope)}
        </span>
      ))}
      {colonies.length > most && ` ${words.more(colonies.length - most)}`}
    </p>
  );
}

function detail({ day, season, causes }: Colony, scope: Scope): string {
  const parts = [...(day === null ? (scope === 'all' ? [seasonName(season)] : []) : [dayTight(day)]), ...causes];
  return parts.length === 0 ? '' : ` (${parts.join('; ')})`;
}
