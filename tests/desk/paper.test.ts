import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { contract } from '#shared/contract/contract.ts';
import type { PaperCell, ReviewPaper } from '#shared/contract/paper.ts';
import { number, rate } from '#shared/figures.ts';
import { rangeOf } from '#shared/lossChoice.ts';
import { escapeHtml } from '#core/losses/paper/paperText.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
const ask: ReturnType<typeof trialDesk>['ask'] = (name, input) => at.ask(name, input);
beforeAll(async () => {
  scratch = scratchFolder();
  at = trialDesk(scratch.folder);
  await ask('book.demo', { which: 'ossar' });
  await ask('losses.keepNotes', { season: 2025, text: 'Feed earlier.\nFewer <drones>.' });
});
afterAll(async () => {
  await at.desk.close();
  scratch.remove();
});

/** What a file has, row by row under the heads of its columns. */
function rowsOf(text: string): Record<string, string>[] {
  return parse(text, { columns: true });
}

const shown = (value: PaperCell) => (value === null ? '' : typeof value === 'number' ? String(Math.round(value * 1e6) / 1e6) : value);
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe.each([2025, 2026])('season %i: the same numbers on the screen, on paper, in files and in the page to send', (season) => {
  let paper: ReviewPaper;
  let files: Map<string, Record<string, string>[]>;
  let html: string;
  beforeAll(async () => {
    paper = await ask('losses.paper', { season, united: 'lost' });
    files = new Map((await ask('losses.files', { season, united: 'lost' })).files.map(({ name, text }) => [name.replace(`losses-${season}-`, '').replace('.csv', ''), rowsOf(text)]));
    html = (await ask('losses.report', { season, format: 'html' })).text;
  });

  test('paper keeps to the contract and every table of it has its file and its place in the page', () => {
    expect(contract['losses.paper'].output.safeParse(paper).success).toBe(true);
    expect(paper.sections.map(({ number: place }) => place)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    const parts = paper.sections.flatMap((section) => section.parts);
    const tables = parts.flatMap((part) => part.tables);
    expect([...files.keys()]).toEqual(tables.map(({ key }) => key));
    for (const { key, columns, rows, onPaper } of tables) {
      expect(files.get(key), key).toEqual(rows.map((row) => Object.fromEntries(columns.flatMap(({ label, only }, place) => (only === 'paper' ? [] : [[label, shown(row[place] ?? null)]])))));
      if (!onPaper) continue;
      for (const row of rows) for (const [place, { only, unit }] of columns.entries()) if (only !== 'file' && unit !== 'day') expect(html).toContain(`>${typeof row[place] === 'number' ? number(row[place], 2) : row[place] === null ? '–' : escapeHtml(String(row[place]))}<`);
    }
    for (const { title, sentences, notes, drawings } of parts) {
      for (const words of [title, ...sentences, ...notes]) expect(html).toContain(escapeHtml(words));
      for (const { marks } of drawings) for (const mark of marks) if (mark.tag === 'text') expect(html).toContain(`>${escapeHtml(mark.text)}</text>`);
    }
    expect(html.match(/<svg class="drawing"/g)).toHaveLength(parts.flatMap(({ drawings }) => drawings).length);
  });

  test('account and ended', async () => {
    const { ledger } = await ask('losses.ledger', { season });
    expect(files.get('account')?.map((row) => [row['Yard'], row['Start'], row['Lost, summer'], row['Lost, winter'], row['Splits'], row['Moved in']])).toEqual(
      ledger.map((row) => [row.yard === 'all' ? 'All yards' : row.yard, ...[row.opening, row.lostSummer, row.lostWinter, row.splits, row.movedIn].map(String)]));
    const { ended } = await ask('losses.ended', { season });
    expect(files.get('ended')?.map((row) => row['Colony']).toSorted()).toEqual(ended.map(({ label }) => label).toSorted());
  });

  test('rates by both definitions, by yard and beside other seasons', async () => {
    const rates = await ask('losses.rates', { season, united: 'lost' });
    const names = new Map(rates.yards.map(({ code, name }) => [code, name]));
    for (const period of ['winter', 'summer', 'year'] as const) {
      const own = rates.rates.filter((row) => row.season === season && row.period === period);
      const file = files.get(`loss-${period}`) ?? [];
      expect(file).toHaveLength(own.length);
      for (const row of own) {
        const line = file.find((one) => one['Yard'] === (row.group === 'all' ? 'All yards' : names.get(row.group)));
        const range = rangeOf(row);
        expect(line).toMatchObject({ 'At risk': String(row.atRisk), Lost: String(row.lost), Rate: shown(row.rate), '95 % range from': shown(range?.[0] ?? null), '95 % range to': shown(range?.[1] ?? null) });
        // In one cell, or beside its interval in the picture, as the screen writes it.
        expect(plain(html)).toContain(plain(rate(row.lost, row.atRisk, range)));
      }
    }
    const { loss } = rates.cohorts.find((one) => one.season === season)!;
    expect(files.get('definitions')?.find((row) => row['Counted as']?.startsWith('Winter, COLOSS'))).toMatchObject({ 'At risk': String(loss.total.atRisk), Lost: String(loss.total.lost), 'Mean of yards': shown(loss.average?.mean ?? null) });
    for (const { season: other, value } of rates.differences.filter(({ period }) => period === 'winter')) {
      expect(files.get('seasons-winter')?.find((row) => row['Season']?.startsWith(String(other)))?.['Difference']).toBe(shown(value));
    }
    for (const sentence of rates.sentences) expect(html).toContain(escapeHtml(sentence));
  });

  test('curves, tests, means and what became of them', async () => {
    for (const by of ['yard', 'queenAge', 'mites', 'treated'] as const) {
      const found = await ask('losses.survival', { season, axis: 'winter', by, united: 'alive' });
      const file = files.get(`groups-${by}`);
      const enough = by === 'yard' || found.groups.filter(({ curve }) => curve !== null).length > 1;
      expect(file !== undefined, by).toBe(enough);
      if (file === undefined) continue;
      expect(file.map((row) => [row['Group'], row['Colonies'], row['Lost'], row['Alive at the end'], row['Mean days'] ?? ''])).toEqual(
        [...found.groups, { ...found.all, label: 'All together' }].map(({ label, colonies, losses, curve, mean }) => [label, String(colonies), String(losses), curve === null ? '' : shown(curve.survival.at(-1) ?? 1), shown(mean?.value ?? null)]));
      expect(files.get(`survival-${by}`)?.filter((row) => row['Group'] === 'All together').map((row) => row['At risk'])).toEqual(found.all.curve?.atRisk.map(String));
      if (found.test !== null) expect(html).toContain(escapeHtml(found.test.sentence));
    }
    const { incidence } = await ask('losses.survival', { season, axis: 'winter', by: 'yard', united: 'alive' });
    expect(files.has('incidence')).toBe(incidence !== null);
    if (incidence !== null) expect(files.get('incidence')?.map((row) => row['Lost'])).toEqual(incidence.fates[0]!.share.map(shown));
  });

  test.each(['season', 'all'] as const)('what went with it, causes and what can be said: %s', async (scope) => {
    const found = await ask('losses.factors', { season, scope });
    const ending = scope === 'all' ? '-all' : '';
    const lines = found.factors.flatMap(({ name, groups, unknown }) => [...groups, ...(unknown === null ? [] : [{ ...unknown, pHolm: null, ratio: null }])].map((one) => [name, one.name, String(one.atRisk), String(one.lost), shown(one.ratio?.value ?? null), shown(one.pHolm)]));
    expect(files.get(`factors${ending}`)?.map((row) => [row['By'], row['Group'], row['At risk'], row['Lost'], row['Times the others'], row['p, adjusted after Holm']])).toEqual(lines);
    expect(files.get(`yard-order${ending}`)?.map((row) => [row['Yard'], row['Pulled rate']]) ?? []).toEqual(found.yards.rows.map(({ name, pooled }) => [name, shown(pooled)]));
    expect(files.get(`together${ending}`)?.map((row) => row['Times the risk']) ?? []).toEqual(found.together.flatMap(({ terms }) => terms.map(({ ratio }) => shown(ratio))));
    for (const sentence of [...found.sentences, ...found.together.flatMap(({ sentences }) => sentences)]) expect(html).toContain(escapeHtml(sentence));
    if (scope === 'all') return;
    expect(files.get('causes')?.map((row) => [row['Cause'], row['Named for'], row['Lost']])).toEqual(found.causes.shares.map(({ cause, count, of }) => [cause, String(count), String(of)]));
    for (const sentence of found.say) expect(html).toContain(escapeHtml(sentence));
    const json = JSON.parse((await ask('losses.report', { season, format: 'json' })).text) as { factors: unknown };
    expect(json.factors).toEqual(found);
  });

  test('notes', async () => {
    const { text, before } = await ask('losses.notes', { season });
    const written = paper.sections.at(-1)!.parts.flatMap(({ sentences }) => sentences);
    expect(written).toEqual([...(before?.text.split('\n') ?? []), ...(text === '' ? [] : text.split('\n'))]);
    expect(html).toContain('Fewer &lt;drones&gt;.');
  });
});

test('united colonies are counted as asked, on paper and in the page', async () => {
  const [lost, out] = [await ask('losses.paper', { season: 2025, united: 'lost' }), await ask('losses.paper', { season: 2025, united: 'takenOut' })];
  const year = (paper: ReviewPaper) => paper.sections.flatMap(({ parts }) => parts.flatMap(({ tables }) => tables)).find(({ key }) => key === 'loss-year')!.rows.at(-1)!;
  expect(year(out)).not.toEqual(year(lost));
  expect(plain((await ask('losses.report', { season: 2025, united: 'takenOut', format: 'html' })).text)).toContain(plain(String(year(out)[1])));
});
