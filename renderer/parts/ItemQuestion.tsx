import { useEffect, useRef } from 'react';
import { itemQuestionWords as words } from './itemQuestionWords.ts';
import type { ItemQuestions } from './useItemQuestion.ts';

interface ItemQuestionProps {
  readonly question: ItemQuestions;
  /** The name to write in place of what was typed. */
  onUse(instead: string): void;
  /** It is a new one, and the form goes on with it. */
  onNew(): void;
}

/** While there is something to ask: which item is meant; each answer is a button, so that one key goes on with it. */
export function ItemQuestion({ question, onUse, onNew }: ItemQuestionProps) {
  const { found } = question;
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), [found]);
  if (found === null) return null;
  const isNew = () => {
    question.isNew();
    onNew();
  };
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
        <button type="button" onClick={isNew}>
          {words.make(found.item)}
        </button>
      </p>
    </div>
  );
}
