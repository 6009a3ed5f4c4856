import { Link } from 'wouter';
import { useRead } from '../desk/useDesk.ts';
import { words } from './words.ts';

/** Sellers' last days that are near and not ordered by yet: one calm line each, the soonest two. */
export function OrderDeadlines() {
  const { data } = useRead('orders.deadlines', {});
  const lines = data?.lines.slice(0, 2) ?? [];
  if (lines.length === 0) return null;
  return (
    <div className="order-deadlines" role="note" aria-label={words.deadlines}>
      {lines.map(({ sentence }) => (
        <p key={sentence}>
          {sentence} <Link href="/orders">{words.toOrder}</Link>
        </p>
      ))}
    </div>
  );
}
