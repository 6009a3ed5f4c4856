import fc from 'fast-check';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { EntryId } from '#shared/brands.ts';
import { writeCsv } from '#core/exchange/writeCsv.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';
import { anyAct, founding, type Act } from './anyRows.ts';
import { sha256, yardCodes } from './trialBook.ts';

type Trial = ReturnType<typeof trialDesk>;

/** Does the act through the desk; only refusals that a person can mend are expected. */
async function attempt({ answer }: Trial, act: Act): Promise<void> {
  const recent = await answer('journal.recent', { limit: 200 });
  if (!recent.ok) throw new Error(recent.sentence);
  // Ids run from one, so a number within what was ever entered is an entry, standing or struck.
  const entryAt = (at: number) => ((at % (4 + recent.value.gestures.length)) + 1) as EntryId;
  const gesture = (at: number) => recent.value.gestures[at % recent.value.gestures.length]?.id;
  const waiting = async (at: number) => {
    const list = await answer('sortOut.list', { which: 'waiting', from: 0, limit: 500 });
    return (list.ok ? list.value.rows[at % list.value.rows.length]?.key : undefined) ?? 'none';
  };
  const doIt = () => {
    switch (act.what) {
      case 'enter':
        return answer('journal.enter', { rows: [...act.rows] });
      case 'import': {
        const file = { name: 'walk.csv', base64: Buffer.from(writeCsv(act.rows)).toString('base64') };
        return answer('import.preview', { file }).then((preview) => (preview.ok ? answer('import.enter', { file, sha256: preview.value.sha256, position: preview.value.position }) : preview));
      }
      case 'strike':
        return answer('journal.strike', { entry: entryAt(act.at), reason: 'twice' });
      case 'replace':
        return answer('journal.replace', { entry: entryAt(act.at), cells: act.cells, reason: 'misread' });
      case 'undo':
        return answer('journal.undo', {});
      case 'undo that':
        return answer('journal.undo', { gesture: gesture(act.at) });
      case 'redo':
        return answer('journal.redo', {});
      case 'mend':
        return waiting(act.at).then((key) => answer('sortOut.enter', { key, cells: act.cells }));
      case 'enter ready':
        return answer('sortOut.enterReady', {});
      case 'set aside':
        return waiting(act.at).then((key) => answer('sortOut.setAside', { key, reason: 'unclear' }));
    }
  };
  const found = await doIt();
  if (!found.ok) expect(['refused', 'nothing-to-enter', 'unknown'], found.sentence).toContain(found.code);
}

/** All that the screens show, without the place of the file. */
async function shown({ ask }: Trial): Promise<string> {
  const { book } = await ask('book.status', {});
  const { text } = await ask('export.journal', {});
  const colonies = await ask('colonies.list', { which: 'all' });
  const review = await ask('losses.review', { united: 'lost' });
  expect(review.balances).toBe(true);
  const waiting = await ask('sortOut.list', { which: 'waiting', from: 0, limit: 500 });
  return JSON.stringify([book?.living, book?.entries, book?.yards, text, colonies, review, waiting]);
}

test('what the desk shows after any acts is what it shows when the book is opened anew', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(anyAct, { minLength: 10, maxLength: 25 }), async (sequence) => {
      const { folder, remove } = scratchFolder();
      const trial = trialDesk(folder);
      try {
        await trial.ask('book.create', { name: 'Trial' });
        for (const code of yardCodes) await trial.ask('yard.keep', { code, name: `Yard ${code}`, room: null, minutes: null });
        await trial.ask('journal.enter', { rows: [...founding] });
        // Looked at after every act, so that each picture is made from the one before.
        for (const act of sequence) {
          await attempt(trial, act);
          await shown(trial);
        }
        const before = await shown(trial);
        expect(await trial.ask('book.check', {})).toMatchObject({ sound: true, refoldEqual: true, findings: [] });
        await trial.desk.close();

        const again = trialDesk(folder);
        await again.ask('book.open', { path: join(folder, 'Trial.outyard') });
        expect(await shown(again)).toBe(before);
        expect(again.log.concat(trial.log).filter((line) => line.includes('defect'))).toEqual([]);
        await again.desk.close();
      } finally {
        await trial.desk.close();
        remove();
      }
    }),
    { numRuns: 15 },
  );
});

test('an import is refused when the file or the book is no longer the one previewed', async () => {
  const { folder, remove } = scratchFolder();
  const { ask, answer, desk } = trialDesk(folder);
  await ask('book.create', { name: 'Trial' });
  const bytes = Buffer.from(writeCsv(founding));
  const file = { name: 'walk.csv', base64: bytes.toString('base64') };
  const preview = await ask('import.preview', { file });
  expect(preview.sha256).toBe(sha256(bytes));
  const other = { name: 'walk.csv', base64: Buffer.from(writeCsv(founding.slice(1))).toString('base64') };
  expect(await answer('import.enter', { file: other, sha256: preview.sha256, position: preview.position })).toMatchObject({ ok: false, code: 'moved-on' });
  await ask('yard.keep', { code: 'ZZ', name: 'Far', room: null, minutes: null });
  expect(await answer('import.enter', { file, sha256: preview.sha256, position: preview.position })).toMatchObject({ ok: false, code: 'moved-on' });
  const anew = await ask('import.preview', { file });
  expect(await ask('import.enter', { file, sha256: anew.sha256, position: anew.position })).toMatchObject({ read: 4, entered: 4, living: 4 });
  expect(await answer('import.enter', { file, sha256: anew.sha256, position: anew.position + 1 })).toMatchObject({ ok: false, code: 'nothing-to-enter' });
  await desk.close();
  remove();
});
