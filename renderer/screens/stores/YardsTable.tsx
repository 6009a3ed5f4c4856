import type { YardId } from '#shared/brands.ts';
import type { StoresList, StoresTotals } from '#shared/contract/stores.ts';
import type { MassUnit } from '#shared/units.ts';
import { missing, number } from '../../parts/format.ts';
import { YardsToEnter } from '../needs/YardsToEnter.tsx';
import { massFigure, syrupText } from './storesText.ts';
import { words } from './words.ts';

interface YardsTableProps {
  readonly list: StoresList;
  readonly unit: MassUnit;
  readonly chosen: YardId | null;
  onChoose(yard: YardId | null): void;
}

/** Yards down; what is short, the syrup and sugar it takes, and a way to enter what was fed. */
export function YardsTable({ list, unit, chosen, onChoose }: YardsTableProps) {
  return (
    <YardsToEnter
      yards={list.yards}
      words={{ ...words, enter: words.enterFeed, enterAt: words.enterFeedAt }}
      heads={[words.ofColonies, words.toldOf, words.shortCount, `${words.short}, ${unit}`, words.syrup, `${words.sugar}, ${unit}`, words.supersOff]}
      figures={(yard) => <Figures totals={(yard ?? list).totals} unit={unit} />}
      round="feed"
      chosen={chosen}
      onChoose={onChoose}
    />
  );
}

function Figures({ totals, unit }: { readonly totals: StoresTotals; readonly unit: MassUnit }) {
  return (
    <>
      <td className="number">{number(totals.colonies)}</td>
      <td className="number">{number(totals.told)}</td>
      <td className="number">{totals.told === 0 ? missing : number(totals.feed)}</td>
      <td className="number">{totals.feed === 0 ? missing : massFigure(totals.short, unit, 0)}</td>
      <td className="number">{syrupText(totals, unit)}</td>
      <td className="number">{totals.sugar === 0 ? missing : massFigure(totals.sugar, unit, 0)}</td>
      <td className="number">{totals.supers === 0 ? missing : number(totals.supers)}</td>
    </>
  );
}
