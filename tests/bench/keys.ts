import { openKeeperWindow } from '../screens/support/keeperWindow.ts';
import { openSheet, sheetLines, Typist } from '../screens/scrawledSheet.ts';

// npm run -s bench -- keys
// A 30-colony inspection typed into the round sheet in a real browser, by keyboard alone; every key that goes down is counted.
const budget = 12;
const window = await openKeeperWindow();
try {
  await openSheet(window);
  const typist = new Typist(window.page);
  let before = 0;
  await typist.sheet(async (column) => {
    console.log(`${column.padEnd(8)}${String(typist.keys - before).padStart(5)} keys`);
    before = typist.keys;
  });
  await typist.enter();
  const { living } = (await window.ask('book.status', {})).book ?? { living: -1 };
  const lost = sheetLines.filter((line) => line.act !== '').length;
  if (living !== sheetLines.length - lost) throw new Error(`${living} colonies are alive after the round, not ${sheetLines.length - lost}`);
  console.log(`${sheetLines.length} colonies, ${typist.keys} keys, at most ${budget} a colony`);
  console.log(`keystrokes a colony: ${typist.perColony.toFixed(2)}`);
  if (typist.perColony > budget) process.exitCode = 1;
} finally {
  await window.close();
}
