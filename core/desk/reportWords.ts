import { dayInWords } from '#shared/days.ts';
import { pFigure, rate } from '#shared/figures.ts';
import { seasonName } from '#shared/seasons.ts';
import { inHundred } from '#core/losses/lossWords.ts';
import { drawingRules, escapeHtml, pageRules, sectionHtml } from '#core/losses/paper/paperText.ts';
import { runningLine } from '#shared/paperLayout.ts';
import type { Report, WholeReport } from './report.ts';

interface Section {
  readonly title: string;
  readonly sentences: readonly string[];
  readonly table: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] } | null;
}

/** The report in words and plain tables, the same for the terminal and the page. */
function sections(report: Report): Section[] {
  return [opening(report), ...figures(report), ...factors(report), order(report)];
}

function opening(report: Report): Section {
  const sort = report.import?.toSortOut ?? [];
  return {
    title: report.import === null ? 'The book' : 'The journal',
    sentences: [
      ...(report.import === null ? [] : [`${report.import.read} rows read: ${report.import.entered} entered, ${report.import.repeats} repeats, ${sort.length} to sort out.`]),
      `${report.living} ${report.living === 1 ? 'colony is' : 'colonies are'} alive${report.asOf === null ? '' : ` on ${dayInWords(report.asOf)}`}.`,
    ],
    table: sort.length === 0 ? null : { head: ['Line', 'Column', 'Value', 'What to do'], rows: sort.map((one) => [String(one.line), one.column ?? '', one.value, one.sentence]) },
  };
}

function figures(report: Report): Section[] {
  return [
    {
      title: 'The account',
      sentences: [],
      table: {
        head: ['Season', 'Yard', 'Opening', 'Bought', 'Swarms', 'Splits', 'Moved in', 'Moved out', 'Sold, given', 'United', 'Lost summer', 'Lost winter', 'Absconded', 'Closing'],
        rows: report.ledger.map((row) => [
          seasonName(row.season), row.yard, row.opening, row.packages + row.nucs + row.boughtColonies, row.swarms, row.splits, row.movedIn, row.movedOut, row.sold + row.given, row.combined,
          row.lostSummer, row.lostWinter, row.absconded, row.closing,
        ].map(String)),
      },
    },
    {
      title: 'Losses',
      sentences: report.sentences.losses,
      table: {
        head: ['Season', 'Period', 'Yard', 'Lost of at risk', 'Rate', '95 % interval (Wilson)', 'Interval across yards'],
        rows: report.losses.filter((row) => row.united === 'lost').map((row) => [
          seasonName(row.season), row.complete ? row.period : `${row.period} so far`, row.group, `${row.lost} of ${row.atRisk}`, row.rate === null ? 'no colonies' : inHundred(row.rate),
          row.wilson === null ? '' : range(row.wilson[0], row.wilson[1]), row.quasi === null ? '' : range(row.quasi.lower, row.quasi.upper),
        ]),
      },
    },
  ];
}

function factors({ factors: found }: Report): Section[] {
  const winters = found.winters.map(({ name }) => name).join(', ');
  const groups = found.factors.flatMap(({ name, groups: own, unknown }) => [
    ...own.map((group) => [name, group.name, rate(group.lost, group.atRisk, group.wilson), group.differenceWords ?? group.why ?? '', group.pHolm === null ? '' : pFigure(group.pHolm)]),
    ...(unknown === null ? [] : [[name, unknown.name, rate(unknown.lost, unknown.atRisk, unknown.wilson), '', '']]),
  ]);
  return [
    {
      title: `What went with it${winters === '' ? '' : `, winter of ${winters}`}`, sentences: [...found.sentences, ...(found.yards.sentence === '' ? [] : [found.yards.sentence]), ...found.together.flatMap(({ sentences }) => sentences)],
      table: groups.length === 0 ? null : { head: ['By', 'Group', 'Lost', 'Against the others', 'p, adjusted'], rows: groups },
    },
    { title: 'Causes as recorded', sentences: [found.causes.sentence], table: found.causes.lost === 0 ? null : { head: ['Cause', 'Named for'], rows: found.causes.shares.map(({ cause, count, of, range: own }) => [cause, rate(count, of, own)]) } },
    { title: 'What the numbers can and cannot say', sentences: found.say, table: null },
  ];
}

function order(report: Report): Section {
  return {
    title: 'The order',
    sentences: [
      ...report.sentences.order,
      ...report.order.orders.map((one) => `${one.quantity} ${one.quantity === 1 ? one.what.toLowerCase().replace(/s$/, '') : one.what.toLowerCase()}${one.seller === null ? '' : ` from ${one.seller}`}, order by ${dayInWords(one.orderBy)}.`),
    ],
    table: { head: ['Item', 'Need', 'Have', 'Order'], rows: report.order.equipment.map((one) => [one.item, String(one.need), String(one.have), String(one.order)]) },
  };
}

function range(low: number, high: number): string {
  return `${Math.round(low * 100)} to ${Math.round(high * 100)} in 100`;
}

export function reportText(report: Report): string {
  return sections(report).map(({ title, sentences, table }) => {
    const lines = [title, '='.repeat(title.length), ...sentences];
    if (table !== null) {
      const all = [table.head, ...table.rows];
      const widths = table.head.map((_, at) => Math.max(...all.map((row) => (row[at] ?? '').length)));
      lines.push('', ...all.map((row) => row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ').trimEnd()));
    }
    return lines.join('\n');
  }).join('\n\n');
}

/** One self-contained page, black on white, without scripts: the review with its pictures, and the order. */
export function reportHtml({ report, paper: make }: WholeReport, name: string): string {
  const paper = make();
  const body = [opening(report), null, order(report)].flatMap((section) => (section === null ? paper.sections.map(sectionHtml) : [plainHtml(section)]));
  const title = `${paper.title}${name === '' ? '' : `, ${name}`}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${escapeHtml(title)}</title>
<style>${pageRules}${drawingRules}
@page { @top-right { content: ${runningLine(`${title}, as of ${dayInWords(paper.asOf)}`)}; font: 9pt sans-serif; } }
</style>
</head>
<body>
<h1>${escapeHtml(title)}</h1>
<p>As of ${escapeHtml(dayInWords(paper.asOf))}.</p>
${body.join('\n')}
</body>
</html>`;
}

function plainHtml({ title, sentences, table }: Section): string {
  const words = sentences.map((sentence) => `<p>${escapeHtml(sentence)}</p>`).join('\n');
  if (table === null) return `<h2>${escapeHtml(title)}</h2>\n${words}`;
  const head = table.head.map((cell) => `<th scope="col">${escapeHtml(cell)}</th>`).join('');
  const rows = table.rows.map((row) => `<tr>${row.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`).join('\n');
  return `<div class="head"><h2>${escapeHtml(title)}</h2>\n${words}</div>\n<table><thead><tr>${head}</tr></thead>\n<tbody>\n${rows}\n</tbody></table>`;
}

/** A report in the form that was asked for. */
export function reportAs(format: 'text' | 'json' | 'html', whole: WholeReport, name: string): string {
  switch (format) {
    case 'json':
      return JSON.stringify(whole.report, null, 1);
    case 'html':
      return reportHtml(whole, name);
    case 'text':
      return reportText(whole.report);
  }
}
