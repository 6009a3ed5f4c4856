import { useId } from 'react';
import { standardMarks } from '#shared/roundMarks.ts';
import { roundColumns } from '#shared/roundSheets.ts';
import { commands, groupNames } from '../../commands/commands.ts';
import { boxKeys, dayKeys, sheetKeys, standKeys, type PlaceKey } from '../../commands/sheetKeys.ts';
import { shortcutText, type Shortcut } from '../../commands/shortcut.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { words as sheetWords } from '../tonight/words.ts';
import { words } from './words.ts';

const groups = (['go', 'enter', 'book', 'paper', 'window'] as const).map((group) => ({ group, name: groupNames[group], list: commands.filter((command) => command.group === group) }));

/** Every command and every key, made from the same objects that do them. */
export function HelpScreen() {
  return (
    <Page title={words.title} line={words.line}>
      {groups.map(({ group, name, list }) => (
        <KeyTable
          key={group}
          heading={name}
          first={words.keys}
          second={words.command}
          rows={list.map((command) => ({ keys: command.shortcut ? [command.shortcut] : [], says: command.name }))}
        />
      ))}
      <PlaceTable heading={words.inSheet} keys={sheetKeys} />
      <KeyTable heading={words.marks} first={words.mark} second={words.meaning} rows={sheetWords.legend(roundColumns, standardMarks).map(([mark, says]) => ({ mark, says }))} />
      <PlaceTable heading={words.inDay} keys={dayKeys} />
      <PlaceTable heading={words.inStands} keys={standKeys} />
      <PlaceTable heading={words.inBox} keys={boxKeys} />
      <MarginContent heading={words.margin}>
        <p>{words.marginText}</p>
        <p>{words.shell}</p>
      </MarginContent>
    </Page>
  );
}

function PlaceTable({ heading, keys }: { readonly heading: string; readonly keys: readonly PlaceKey[] }) {
  return <KeyTable heading={heading} first={words.keys} second={words.does} rows={keys.map((one) => ({ keys: one.keys, says: one.does }))} />;
}

interface KeyRow {
  readonly keys?: readonly Shortcut[];
  readonly mark?: string;
  readonly says: string;
}

function KeyTable({ heading, first, second, rows }: { readonly heading: string; readonly first: string; readonly second: string; readonly rows: readonly KeyRow[] }) {
  const id = useId();
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{heading}</h2>
      <table className="help-keys" aria-labelledby={id}>
        <thead>
          <tr>
            <th scope="col">{first}</th>
            <th scope="col">{second}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ keys, mark, says }) => (
            <tr key={says}>
              <td>
                {mark}
                {keys?.map((one) => <kbd key={shortcutText(one)}>{shortcutText(one)}</kbd>)}
                {keys?.length === 0 ? <span className="soft">{words.noKeys}</span> : null}
              </td>
              <td>{says}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
