import type { YardId } from '#shared/brands.ts';
import type { SpaceColony, SpaceList } from '#shared/contract/space.ts';
import { missing, number } from '../../parts/format.ts';
import { YardsToEnter } from '../needs/YardsToEnter.tsx';
import { countsOf } from './spaceText.ts';
import { words } from './words.ts';

interface YardsTableProps {
  readonly list: SpaceList;
  readonly chosen: YardId | null;
  onChoose(yard: YardId | null): void;
}

/** Yards down; how many want a box, a look, a watchful eye, and a way to enter the supers put on. */
export function YardsTable({ list, chosen, onChoose }: YardsTableProps) {
  return (
    <YardsToEnter
      yards={list.yards}
      words={{ ...words, enter: words.enterSupers, enterAt: words.enterSupersAt }}
      heads={[words.ofColonies, words.wantBox, words.soonFull, words.lookFirst, words.highRisk, words.someRisk, words.maySplit]}
      figures={(yard) => <Figures colonies={yard?.colonies ?? list.yards.flatMap(({ colonies }) => colonies)} list={list} />}
      round="supers"
      className="space-yards"
      chosen={chosen}
      onChoose={onChoose}
    />
  );
}

/** Outside its season a thing is not counted, which is not none. */
function Figures({ colonies, list: { adding, swarming } }: { readonly colonies: readonly SpaceColony[]; readonly list: SpaceList }) {
  const { want, soon, first, high, some, split } = countsOf(colonies);
  const figures = [
    colonies.length, ...[want, soon, first].map((count) => (adding.now ? count : null)), ...[high, some].map((count) => (swarming.now ? count : null)), split,
  ];
  return figures.map((count, at) => (
    <td key={at} className="number">
      {count === null ? missing : number(count)}
    </td>
  ));
}
