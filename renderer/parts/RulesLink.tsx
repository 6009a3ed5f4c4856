import { Link } from 'wouter';
import { words } from './words.ts';

/** Leads to the page of all house rules, opened at one of its headings. */
export function RulesLink({ room }: { readonly room?: string }) {
  return (
    <p className="no-print">
      <Link href={room === undefined ? '/book/rules' : `/book/rules/${room}`}>{words.allRules}</Link>
    </p>
  );
}
