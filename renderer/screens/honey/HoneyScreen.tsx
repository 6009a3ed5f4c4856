import { Link } from 'wouter';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { RulesLink } from '../../parts/RulesLink.tsx';
import { words as frameWords } from '../../parts/words.ts';
import { LotsTable } from './LotsTable.tsx';
import { words } from './words.ts';

/** The lots of honey, newest first. */
export function HoneyScreen() {
  const { book } = useBook();
  const { data, fault } = useRead('lots.list', {}, { keep: true });
  if (!book) return null;
  const nothing = data !== undefined && data.lots.length === 0 && data.loose.length === 0;
  return (
    <Page title={words.title} line={words.line} asOf={data?.asOf}>
      <FaultNote fault={fault} />
      {data === undefined && fault === undefined ? <p role="status">{frameWords.loading}</p> : null}
      {nothing ? <Empty sentence={words.empty} action={<Link href="/colonies">{words.emptyNext}</Link>} /> : null}
      {data === undefined || nothing ? null : (
        <section className="section" aria-label={words.lots}>
          <p className="sentence">{data.sentence}</p>
          <LotsTable lots={data.lots} unit={book.massUnit} />
        </section>
      )}
      {/* What colonies yield stands here: a section of its own. */}
      <MarginContent heading={words.title}>
        <RulesLink room="honey" />
      </MarginContent>
    </Page>
  );
}
