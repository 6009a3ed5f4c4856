import { Link } from 'wouter';
import { useBook } from '../../desk/useBook.ts';
import { Entering } from '../../parts/Entering.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { BookFile } from './BookFile.tsx';
import { CheckBook } from './CheckBook.tsx';
import { ExportJournal } from './ExportJournal.tsx';
import { ImportRecords } from './ImportRecords.tsx';
import { SortOutSection } from './SortOutSection.tsx';
import { words } from './words.ts';
import { Yards } from './Yards.tsx';

export function BookScreen() {
  const { status, book } = useBook();
  if (!status || !book) return null;
  return (
    <Page title={words.title} line={words.line}>
      <BookFile key={book.path} book={book} program={status.program} />
      <Entering>
        <Yards yards={book.yards} />
        <ImportRecords />
        <SortOutSection />
      </Entering>
      <section className="section">
        <h2>{words.rulesHeading}</h2>
        <p>
          {words.rulesLine} <Link href="/book/rules">{words.rulesOpen}</Link>
        </p>
      </section>
      <section className="section">
        <h2>{words.returnsHeading}</h2>
        <p>
          {words.returnsLine} <Link href="/book/returns">{words.returnsOpen}</Link>
        </p>
      </section>
      <div className="pair">
        <ExportJournal />
        <CheckBook />
      </div>
      <MarginContent heading={words.marginFile}>
        <p>{words.marginFileText}</p>
      </MarginContent>
      <MarginContent heading={words.marginImport}>
        <p>{words.marginImportText}</p>
      </MarginContent>
    </Page>
  );
}
