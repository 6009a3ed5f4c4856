import { Link, useLocation } from 'wouter';
import { words } from './words.ts';

/** The two pages of stock and orders, one beside the other. */
export function StockParts() {
  const [location] = useLocation();
  return (
    <nav className="stock-parts" aria-label={words.stockPages}>
      {([['/stock', words.stockPart], ['/orders', words.orderPart]] as const).map(([at, name]) => (
        <Link key={at} href={at} aria-current={location === at ? 'page' : undefined}>
          {name}
        </Link>
      ))}
    </nav>
  );
}
