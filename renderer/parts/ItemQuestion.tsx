import { useEffect, useRef } from 'react';
import type { NearItem } from '#shared/contract/nearItems.ts';
import { itemQuestionWords as words } from './itemQuestionWords.ts';

interface ItemQuestionProps {
  readonly found: NearItem;
  /** The name to write in place of what was typed. */
  onUse(instead: string): void;
  onNew(): void;
}

/** Asks which item is meant; each answer is a button, so that one key goes on with it. */
export function ItemQuestion({ found, onUse, onNew }: ItemQuestionProps) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), [found]);
  return (
    <div className="item-question" role="group" aria-label={found.sentence}>
      <p className="field-fault" role="alert">
        {found.sentence}
      </p>
      <p className="item-answers">
        {found.nearest.map(({ item, instead }, at) => (
          <button key={item} type="button" {...(at === 0 ? { ref: first } : {})} onClick={() => onUse(instead)}>
            {words.use(item)}
          </button>
        ))}
        <button type="button" onClick={onNew}>
          {words.make(found.item)}
        </button>
      </p>
    </div>
  );
}
