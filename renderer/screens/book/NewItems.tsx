import { useId } from 'react';
import type { NewItem } from '#shared/contract/nearItems.ts';
import { number } from '../../parts/format.ts';
import { words } from './words.ts';

interface NewItemsProps {
  readonly items: readonly NewItem[];
  /** What was said last; it stands at once, while the preview that follows from it is still on its way. */
  readonly said: Readonly<Record<string, string>>;
  readonly busy: boolean;
  readonly onMeant: (item: string, meant: string) => void;
}

const shownLines = 10;

/** New items of a file that read almost like known ones: the person says which are meant, nothing is guessed. */
export function NewItems({ items, said, busy, onMeant }: NewItemsProps) {
  const id = useId();
  return (
    <section aria-labelledby={`${id}-head`}>
      <h4 id={`${id}-head`}>{words.newItems}</h4>
      {items.some(({ meant }) => meant === null) ? <p className="needs">{words.newItemsLine}</p> : null}
      {items.map(({ item, nearest, sentence, lines, rows, meant }) => (
        <fieldset key={item} className="new-item">
          <legend>{sentence}</legend>
          <p className="soft small">{words.newItemRows(rows, `${lines.slice(0, shownLines).map((line) => number(line)).join(', ')}${rows > shownLines ? ` ${words.more(number(rows - shownLines))}` : ''}`)}</p>
          <div className="ticks">
            {[...nearest.map((one) => one.item), item].map((choice) => (
              <label key={choice}>
                <input type="radio" name={`${id} ${item}`} checked={(said[item] ?? meant) === choice} disabled={busy} onChange={() => onMeant(item, choice)} />
                {choice === item ? words.isNewItem(item) : words.isItem(choice)}
              </label>
            ))}
          </div>
        </fieldset>
      ))}
    </section>
  );
}
