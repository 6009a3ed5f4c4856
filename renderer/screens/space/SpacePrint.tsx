import type { SpaceList, SpaceYard } from '#shared/contract/space.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { dayShort, dayText, missing } from '../../parts/format.ts';
import { PaperPage } from '../../parts/PaperPage.tsx';
import './space.css';
import { beesText, isRiskTold, isSeason, loadText, roomText, seenText, shareText, splitsOpen, waysText } from './spaceText.ts';
import { words } from './words.ts';

/** The list on paper, a table for each yard, with the boxes to load and room to write what was found. */
export function SpacePrint() {
  const { book } = useBook();
  const { data, fault } = useRead('space.list', {}, { keep: true });
  const title = data ? words.printTitle(dayText(data.asOf)) : words.title;
  return (
    <PaperPage title={title} className="space-paper" print={words.printButton} ready={data !== undefined && data.yards.length > 0} backTo="/needs/space" back={words.printBack} fault={fault}>
      {data && book ? <Sheets list={data} book={book.name} /> : null}
    </PaperPage>
  );
}

function Sheets({ list, book }: { readonly list: SpaceList; readonly book: string }) {
  const line = words.printLine(book, dayText(list.asOf));
  return (
    <article>
      <h1>{words.printTitle(dayText(list.asOf))}</h1>
      <p>{line}</p>
      <p className="paper-sentence">{list.sentence}</p>
      {splitsOpen(list) ? <p>{words.printSplits(waysText(list))}</p> : null}
      {list.yards.some(({ boxes }) => boxes.length > 0) ? <p>{list.lifting}</p> : null}
      {isSeason(list) ? list.yards.map((yard) => <YardSheet key={yard.id} yard={yard} list={list} line={line} />) : null}
    </article>
  );
}

function YardSheet({ yard: { code, name, colonies, boxes }, list, line }: { readonly yard: SpaceYard; readonly list: SpaceList; readonly line: string }) {
  return (
    <section>
      <h2>{words.printHead(code, name)}</h2>
      <p>{loadText(boxes) === '' ? words.printNoBoxes : words.printBoxes(loadText(boxes))}</p>
      <table className="tight">
        <caption className="visually-hidden">{words.printHead(code, name)}</caption>
        <thead>
          <tr className="paper-running">
            <td colSpan={9}>{`${words.printHead(code, name)}, ${line}`}</td>
          </tr>
          <tr>
            <th scope="col">{words.colony}</th>
            {[words.beesFrames, words.share, words.seen].map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
            {[words.room, words.risk, words.nextLook, words.split, words.printDone].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {colonies.map((colony) => (
            <tr key={colony.id}>
              <th scope="row">{colony.label}</th>
              <td className="number">{beesText(colony)}</td>
              <td className="number">{shareText(colony)}</td>
              <td className="number">{seenText(colony, list.asOf)}</td>
              <td>{roomText(colony)}</td>
              <td>{colony.risk === null ? missing : isRiskTold(colony) ? words.level[colony.risk.level] : words.notAllTold}</td>
              <td>{dayShort(colony.risk?.nextLook)}</td>
              <td>{colony.split === null ? '' : words.printMaySplit}</td>
              <td className="paper-write" />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
