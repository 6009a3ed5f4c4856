// A process of its own: opens the book given, enters rounds, imports, strikes and undoes without end, and prints
// each act's position once it is acknowledged. With `hold` it only keeps the book open.
import { flushCompileCache } from 'node:module';
import { day } from '#shared/days.ts';
import type { Answer } from '#shared/faults.ts';
import { createDesk } from '#core/desk/desk.ts';

const [path = '', what = 'enter'] = process.argv.slice(2);
const desk = createDesk({ folder: '.', program: 'Outyard under test', now: () => ({ day: day('2026-11-25'), stamp: '2026-11-25 21:00' }), log: () => {} });
const call = async (name: string, input: unknown) => (await desk.call(name, input)) as Answer<{ position: number; book: { position: number }; sha256: string }>;

// Whoever is killed never gets to keep what it compiled; the next one would compile it all again.
flushCompileCache();
const opened = await call('book.open', { path });
console.log(opened.ok ? `open ${opened.value.book.position}` : `refused ${opened.code}`);
if (opened.ok && what === 'enter') {
  const start = opened.value.book.position;
  for (let turn = 0; ; turn += 1) {
    const note = `${start} ${turn}`;
    let done: Answer<{ position: number }>;
    if (turn % 7 === 5) {
      done = await call('journal.undo', {});
    } else if (turn % 7 === 6) {
      const text = ['date,entry,yard,colony,origin,note', ...Array.from({ length: 30 }, (_, at) => `2024-07-01,inspection,,G2,,${note} ${at}`)].join('\n');
      const file = { name: 'more.csv', base64: Buffer.from(text).toString('base64') };
      const preview = await call('import.preview', { file });
      done = preview.ok ? await call('import.enter', { file, sha256: preview.value.sha256, position: preview.value.position }) : preview;
      // An import says the position it was made at; the book stands one further.
      if (done.ok) done = { ok: true, value: { position: done.value.position + 1 } };
    } else {
      done = await call('journal.enter', { rows: [{ date: '2024-06-01', entry: 'inspection', colony: 'G1', note }, { date: '2024-05-15', entry: 'mites', colony: 'G3', mites: '2', bees: '300', note }] });
    }
    if (!done.ok) throw new Error(done.sentence);
    console.log(`done ${done.value.position} ${note}`);
  }
}
if (what === 'hold') setInterval(() => {}, 1000);
