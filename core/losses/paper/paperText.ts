import type { PaperCell, PaperColumn, PaperDrawing, PaperMark, PaperPart, PaperSection, PaperTable } from '#shared/contract/paper.ts';
import { dayFromIso, dayInWords } from '#shared/days.ts';
import { missing, number, percent } from '#shared/figures.ts';
import { paperLayout } from '#shared/paperLayout.ts';

/** A cell as it stands on paper; what is not known is a dash. */
export function cellOnPaper(cell: PaperCell, { unit }: PaperColumn): string {
  if (cell === null) return missing;
  if (typeof cell === 'string') {
    const day = unit === 'day' ? dayFromIso(cell) : null;
    return day === null ? cell : dayInWords(day);
  }
  return unit === 'share' ? percent(cell) : number(cell, 2);
}

/** The looks of a page to send, on a screen and printed. */
export const pageRules = `
body { font: 15px/1.45 'Source Sans 3', system-ui, sans-serif; color: #000; background: #fff; max-width: 46rem; margin: 2rem auto; padding: 0 1rem; }
h1, h2, .sentence { font-family: 'Source Serif 4', Georgia, serif; }
h1 { margin-bottom: 0.2rem; } h2 { margin: 2rem 0 0.4rem; border-top: 1px solid #999; padding-top: 0.6rem; } h3 { margin: 1.2rem 0 0.3rem; }
.sentence { margin: 0.3rem 0 0.6rem; }
.head { break-inside: avoid; break-after: avoid; }
h1, h2, h3 { break-after: avoid; }
table { border-collapse: collapse; margin: 0.4rem 0; font-size: 14px; font-variant-numeric: tabular-nums lining-nums; }
caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
th, td { border-bottom: 1px solid #ccc; padding: 0.15rem 0.7rem 0.15rem 0; text-align: left; vertical-align: top; }
thead th { border-bottom: 1px solid #000; vertical-align: bottom; }
.number { text-align: right; white-space: pre; } thead .number { white-space: normal; }
.group th { padding-top: 0.5rem; font-weight: 600; } h3, thead, .group, tbody tr:nth-child(-n + 3) { break-after: avoid; } tbody tr:nth-last-child(-n + 3) { break-before: avoid; }
.totals td { border-top: 3px double #000; font-weight: 600; }
.paper-wide { font-size: 12px; } .paper-wide th, .paper-wide td { padding-right: 0.4rem; }
.small { margin: 0.3rem 0; font-size: 13px; break-inside: avoid; }
thead { display: table-header-group; } tr { break-inside: avoid; }
.paper-short { break-inside: avoid; } table + .small { break-before: avoid; }
@media print { body { max-width: none; margin: 0; padding: 0; font-size: 13px; } table, .small { font-size: 12px; } .paper-wide { font-size: 11px; } }
@page { margin: 16mm 14mm; @bottom-right { content: counter(page) ' of ' counter(pages); font: 10pt sans-serif; } }`;

/** The looks of drawings; the page that shows them says these once. */
export const drawingRules = `
.drawing { display: block; max-width: 100%; height: auto; margin: 0.4rem 0; font: 12px 'Source Sans 3', sans-serif; fill: none; stroke: none; break-inside: avoid; }
.drawing text { white-space: pre; } .drawing .axis { stroke: #000; } .drawing .grid { stroke: #ddd; } .drawing .band { fill: #000; fill-opacity: 0.13; }
.drawing .line { stroke: #000; stroke-width: 2; } .drawing .line-dashed { stroke: #000; stroke-width: 1.6; stroke-dasharray: 7 4; } .drawing .line-dotted { stroke: #000; stroke-width: 1.6; stroke-dasharray: 2 3; }
.drawing .line-dashdot { stroke: #000; stroke-width: 1.6; stroke-dasharray: 9 3 2 3; } .drawing .line-long { stroke: #000; stroke-width: 1.6; stroke-dasharray: 15 5; }
.drawing .tick { stroke: #000; } .drawing .dot { fill: #000; } .drawing .dot-all { fill: #fff; stroke: #000; stroke-width: 2; }
.drawing .label, .drawing .name { fill: #000; } .drawing .name { font-weight: 600; }`;

/** A drawing as SVG inside a page of HTML. */
export function drawingHtml({ name, width, height, marks }: PaperDrawing): string {
  return `<svg class="drawing" role="img" aria-label="${escapeHtml(name)}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${marks.map(markHtml).join('')}</svg>`;
}

function markHtml(mark: PaperMark): string {
  switch (mark.tag) {
    case 'path':
      return `<path class="${mark.look}" d="${mark.d}"/>`;
    case 'circle':
      return `<circle class="${mark.look}" cx="${mark.cx}" cy="${mark.cy}" r="${mark.r}"/>`;
    case 'text':
      return `<text class="${mark.look}" x="${mark.x}" y="${mark.y}" text-anchor="${mark.anchor}">${escapeHtml(mark.text)}</text>`;
  }
}

/** A section of the review as HTML: its head stays with what follows it, pictures and short tables are not parted. */
export function sectionHtml({ number: place, title, parts }: PaperSection): string {
  return `<section>\n${parts.map((part, at) => partHtml(part, at === 0 ? `<h2>${place} ${escapeHtml(title)}</h2>` : '')).join('\n')}\n</section>`;
}

function partHtml({ title, sentences, drawings, tables, notes }: PaperPart, head: string): string {
  return [
    '<div class="head">', head, title === '' ? '' : `<h3>${escapeHtml(title)}</h3>`, ...sentences.map((sentence) => `<p class="sentence">${escapeHtml(sentence)}</p>`), ...drawings.map(drawingHtml), '</div>',
    ...tables.filter(({ onPaper }) => onPaper).map(tableHtml),
    ...notes.map((note) => `<p class="small">${escapeHtml(note)}</p>`),
  ].filter((line) => line !== '').join('\n');
}

function tableHtml(table: PaperTable): string {
  const { columns, lines, looks } = paperLayout(table);
  const at = ({ unit }: PaperColumn) => (unit === 'text' || unit === 'day' ? '' : ' class="number"');
  const head = columns.map((column) => `<th scope="col"${at(column)}>${escapeHtml(column.label)}</th>`).join('');
  const body = lines.map(({ group, cells, total }) => (group !== null
    ? `<tr class="group"><th scope="rowgroup" colspan="${columns.length}">${escapeHtml(group)}</th></tr>`
    : `<tr${total ? ' class="totals"' : ''}>${columns.map((column, place) => `<td${at(column)}>${escapeHtml(cellOnPaper(cells[place] ?? null, column))}</td>`).join('')}</tr>`)).join('\n');
  return `<table class="${looks.join(' ')}"><caption>${escapeHtml(table.title)}</caption><thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody></table>`;
}

export function escapeHtml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
