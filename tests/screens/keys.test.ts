import { parse } from 'csv-parse/sync';
import { afterEach, expect, test } from 'vitest';
import { readCell } from '../../renderer/screens/tonight/sheetCell.ts';
import { plainSetting } from '../../renderer/screens/tonight/sheetSetting.ts';
import { openKeeperWindow, type KeeperWindow } from './support/keeperWindow.ts';
import { atCell, cellText, labels, openSheet, sheetLines, Typist } from './scrawledSheet.ts';

let window: KeeperWindow | undefined;
afterEach(async () => {
  await window?.close();
  window = undefined;
});

/** What the journal says of the round, colony by colony, in the sheet's own columns. */
async function entered(here: KeeperWindow): Promise<Record<string, string>[]> {
  const { today } = await here.ask('book.status', {});
  const rows: Record<string, string>[] = parse((await here.ask('export.journal', {})).text, { columns: true, bom: true });
  const round = rows.filter((row) => row['date'] === today);
  return labels.map((label) => {
    const of = (entry: string) => round.find((row) => row['colony'] === label && row['entry'] === entry) ?? {};
    const look = of('inspection');
    return {
      bees: look['frames_bees'] ?? '', brood: look['frames_brood'] ?? '', stores: look['frames_stores'] ?? '', eggs: look['eggs'] ?? '', queen: look['queen_seen'] ?? '',
      cells: look['queen_cells'] ?? '', temper: look['temper'] ?? '', mites: of('mites')['mites'] ?? '', act: of('loss')['cause'] ?? '',
    };
  });
}

/** The scrawled lines with their short marks written out, as the journal has them. */
const meant = sheetLines.map((line) =>
  Object.fromEntries(Object.entries(line).map(([key, text]) => {
    const read = readCell(key as keyof typeof line, text, plainSetting);
    return [key, read.state === 'read' ? read.value : ''];
  })));

test('a scrawled sheet of 30 colonies is typed by keyboard alone, with at most 12 keys a colony', async () => {
  window = await openKeeperWindow();
  await openSheet(window);
  const typist = new Typist(window.page);
  await typist.sheet();
  await typist.enter();
  expect(await entered(window)).toEqual(meant);
  expect(sheetLines.filter(({ mites }) => mites !== '')).toHaveLength(10);
  expect(sheetLines.filter(({ act }) => act !== '')).toHaveLength(2);
  expect(typist.perColony).toBeLessThanOrEqual(12);
  console.log(`keystrokes a colony: ${typist.perColony.toFixed(2)}`);
});

test('the same with the keeper killed mid-sheet, and with everything killed: the draft is whole and goes in whole', async () => {
  window = await openKeeperWindow();
  const here = window;
  await openSheet(here);
  const kept = () => here.page.getByText('Draft kept').waitFor();
  const typist = new Typist(here.page);
  await typist.numbers('bees');
  await kept();
  // The keeper dies while the person types on; another one takes the draft.
  here.killKeeper();
  await typist.numbers('brood');
  await kept();
  await typist.numbers('stores');
  await typist.marks('eggs');
  await kept();
  expect(await entered(here).then((rows) => rows.every((row) => row['bees'] === ''))).toBe(true);

  const hours = () => here.page.getByRole('textbox', { name: 'Hours' });
  await hours().fill('1.5');
  await kept();

  await here.crashAndRestart('/tonight');
  await atCell(here.page, 0, 'bees');
  for (const [row, line] of meant.entries()) {
    for (const column of ['bees', 'brood', 'stores', 'eggs'] as const) expect(await cellText(here.page, row, column)).toBe(line[column]);
  }

  expect(await hours().inputValue()).toBe('1.5');

  const again = new Typist(here.page);
  await again.press('ArrowRight', 4);
  await again.marks('queen');
  await again.few('cells');
  await again.toTopOfNext();
  await again.marks('temper');
  await again.numbers('mites');
  await again.press('ArrowRight');
  await again.few('act');
  await again.enter();
  expect(await entered(here)).toEqual(meant);
});
