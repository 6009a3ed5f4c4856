import type { Grouping, SurvivalGroup } from '#shared/contract/lossSections.ts';

/** "0.012"; a very small one is only said to be small. */
export function pText(p: number): string {
  if (p < 0.001) return 'below 0.001';
  return p < 0.1 ? p.toFixed(3) : p.toFixed(2);
}

const groupingNouns: Readonly<Record<Exclude<Grouping, 'none'>, string>> = {
  yard: 'yard', source: 'source', queenAge: 'age of the queen', line: 'queen line', treated: 'treatment', mites: 'mites in late summer', stores: 'autumn stores',
};

export function groupingNoun(by: Exclude<Grouping, 'none'>): string {
  return groupingNouns[by];
}

/** "71 in 100 (64 to 77)" at the end of a curve; null where it has no band there. */
export function aliveAtEnd({ curve }: Pick<SurvivalGroup, 'curve'>): string | null {
  const [alive, low, high] = [curve?.survival.at(-1), curve?.low.at(-1) ?? null, curve?.high.at(-1) ?? null];
  if (alive === undefined || low === null || high === null) return null;
  return `${Math.round(alive * 100)} in 100 (${Math.round(low * 100)} to ${Math.round(high * 100)})`;
}

export interface WinterWords {
  readonly all: SurvivalGroup;
  /** Null for all winters together, then how many there are. */
  readonly season: string | null;
  readonly winters: number;
  readonly complete: boolean;
  readonly few: number;
  /** Of all winters together, the one that is not over. */
  readonly running: string | null;
  /** United colonies that count as leaving alive. */
  readonly unitedAlive: number;
  /** By which day half of the losses were written down, in words; null where it means little. */
  readonly half: string | null;
}

/** What the curve of all colonies says of one winter, or of all of them. */
export function winterSentence({ all, season, winters, complete, few, unitedAlive, half, running }: WinterWords): string {
  const { colonies, losses } = all;
  const what = season === null ? `Over ${winters === 1 ? 'one winter' : `${winters} winters`}${running === null ? '' : ` (${running} only so far)`}, of ${colonies} colony ${colonies === 1 ? 'winter' : 'winters'}` : `Of ${colonies} ${colonies === 1 ? 'colony' : 'colonies'} watched in the winter of ${season}`;
  if (colonies === 0) return season === null ? 'No colony was watched in any winter.' : `No colony was watched in the winter of ${season}.`;
  const end = season === null ? '' : complete ? ' by its end' : ' so far';
  if (losses === 0) return `${what}, none was lost${end}.`;
  if (losses === colonies) return `${what}, ${losses === 1 ? 'it was lost' : `all ${losses} were lost`}${end}.`;
  const share = colonies < few ? null : aliveAtEnd(all);
  const left = unitedAlive === 0 ? '' : ` ${unitedAlive === 1 ? 'One united colony is' : `${unitedAlive} united colonies are`} taken as leaving alive.`;
  const middle = half === null ? '' : ` Half of the losses were written down by ${half}.`;
  return `${what}, ${losses} ${losses === 1 ? 'was' : 'were'} lost${end}${share === null ? '; with so few the counts say more than a curve' : running === null ? `: ${share} were still alive` : `; by the curve, in which those of a winter not over count only so far, ${share} were alive at a winter’s end`}.${middle}${left}`;
}

/** The counts of the groups: all of them while they are few, else the lowest and the highest share. */
export function groupCounts(groups: readonly SurvivalGroup[], noun: string): string {
  const counted = groups.filter(({ colonies }) => colonies > 0);
  const [only] = counted;
  const said = ({ label, losses, colonies }: SurvivalGroup) => `${label} ${losses} of ${colonies}`;
  if (counted.length === 0 || only === undefined) return '';
  if (counted.length === 1) return `By ${noun} there is one group only: ${said(only)} lost.`;
  if (counted.length <= 4) return `Lost by ${noun}: ${counted.map(said).join('; ')}.`;
  const ordered = counted.toSorted((a, b) => b.losses / b.colonies - a.losses / a.colonies);
  const [highest, lowest] = [ordered[0] ?? only, ordered.at(-1) ?? only];
  return `Lost by ${noun}, from ${said(highest)} to ${said(lowest)}.`;
}

export function madeSentence(p: number, strata: number): string {
  const within = strata > 1 ? `, compared within each of ${strata} winters` : '';
  return p < 0.05
    ? `The curves differ by more than chance alone makes likely (log-rank p ${pText(p)}${within}; it does not allow for the other groupings that can be looked at).`
    : `Differences of this size may well be chance (log-rank p ${pText(p)}${within}).`;
}
