import type { ReactNode } from 'react';
import type { LinesPicture } from '#shared/contract/lines.ts';
import { seasonName } from '#shared/seasons.ts';
import type { LinesView } from './useLines.ts';
import { words } from './words.ts';

export interface LineChoicesProps {
  readonly picture: LinesPicture;
  readonly view: LinesView;
  readonly onChange: (change: Partial<Omit<LinesView, 'book'>>) => void;
  /** What can be done with the picture, at the right. */
  readonly children: ReactNode;
}

const mostLines = 400;

export function LineChoices({ picture: { families, seasons, yards }, view, onChange, children }: LineChoicesProps) {
  // The largest come first; a list of thousands could not be chosen from, and each lane leads to its line.
  const offered = families.filter(({ id }, place) => place < mostLines || id === view.family);
  return (
    <div className="choices">
      <Choice name={words.line1} all={words.allLines} value={view.family} options={offered.map(({ id, name, colonies }) => ({ id, name: words.familyChoice(name, colonies) }))} onPick={(family) => onChange({ family })} />
      <Choice name={words.season} all={words.allSeasons} value={view.season} options={seasons.toReversed().map(({ season }) => ({ id: season, name: seasonName(season) }))} onPick={(season) => onChange({ season })} />
      <Choice name={words.yard} all={words.allYards} value={view.yard} options={yards} onPick={(yard) => onChange({ yard })} />
      <div className="push lines-acts">{children}</div>
    </div>
  );
}

interface ChoiceProps<Id extends number> {
  readonly name: string;
  readonly all: string;
  readonly value: Id | null;
  readonly options: readonly { readonly id: Id; readonly name: string }[];
  readonly onPick: (id: Id | null) => void;
}

function Choice<Id extends number>({ name, all, value, options, onPick }: ChoiceProps<Id>) {
  return (
    <label className="inline-choice lines-choice">
      {name}{' '}
      <select value={options.some(({ id }) => id === value) ? String(value) : ''} onChange={(event) => onPick(options.find(({ id }) => String(id) === event.target.value)?.id ?? null)}>
        <option value="">{all}</option>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.name}
          </option>
        ))}
      </select>
    </label>
  );
}
