import { useRef } from 'react';
import type { PutOff } from '#shared/contract/needs.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { Entering } from '../../parts/Entering.tsx';
import { dayText } from '../../parts/format.ts';
import { faultText, useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';

/** What was put off or dismissed, each with its reason, and the way back into the list. */
export function PutOffList({ items }: { readonly items: readonly PutOff[] }) {
  const { send, busy } = useWrite('needs.askAgain');
  const { say } = useNotice();
  const summary = useRef<HTMLElement>(null);
  if (items.length === 0) return null;
  const again = async ({ keys, act }: PutOff) => {
    if (busy) return;
    const answer = await send({ keys });
    say(answer.ok ? words.saidBack(act) : faultText(answer));
    // What goes leaves the keyboard at the head of its list, and the last of it at the head of the page.
    if (answer.ok) (items.length > 1 ? summary.current : document.querySelector('h1'))?.focus();
  };
  return (
    <details className="section">
      <summary ref={summary}>{words.offHeading(items.length)}</summary>
      <ul className="lines needs-off">
        {items.map((item) => (
          <li key={item.keys[0]}>
            <span>{item.until === null ? words.offGone : words.offUntil(dayText(item.until))}</span>
            <span>
              {item.act}, <bdi>{item.about}</bdi>
              {item.reason === '' ? null : <span className="soft">: <bdi>{item.reason}</bdi></span>}
              {item.asks && item.until === null ? <span className="soft"> ({words.offAsks})</span> : null}{' '}
              <Entering>
                <button type="button" className="link" aria-label={words.againOf(item.act, item.about)} onClick={() => void again(item)}>
                  {words.again}
                </button>
              </Entering>
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
