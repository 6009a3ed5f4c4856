import { costLines, type CostLine } from '#shared/contract/budgetLines.ts';
import type { MoneyLineView } from '#shared/contract/returns.ts';
import { Entering } from '../../parts/Entering.tsx';
import { words } from './words.ts';

/** Which line a purchase stands under, to choose; the one that its words speak for is said to be a guess. */
export function LineChoice({ line, onChoose }: { readonly line: MoneyLineView; readonly onChoose: (line: CostLine | null) => void }) {
  const { bought, description } = line;
  if (bought === null) return words.lines[line.line] ?? line.line;
  const change = (value: string) => {
    const chosen = costLines.find((one) => one === value);
    if (chosen !== undefined) onChoose(chosen);
  };
  return (
    <Entering>
      <select className="returns-choice" aria-label={words.lineOf(description)} value={line.line} onChange={(event) => change(event.target.value)}>
        {costLines.map((one) => (
          <option key={one} value={one}>
            {one === bought.guess ? words.guessed(words.lines[one] ?? one) : (words.lines[one] ?? one)}
          </option>
        ))}
      </select>
      {bought.chosen && (
        <button type="button" className="link small" aria-label={words.takeBackOf(description)} onClick={() => onChoose(null)}>
          {words.takeBack}
        </button>
      )}
    </Entering>
  );
}
