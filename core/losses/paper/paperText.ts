import type { PaperCell, PaperColumn, PaperDrawing, PaperMark, PaperSection } from '#shared/contract/paper.ts';
import { dayFromIso, dayInWords } from '#shared/days.ts';

/** A cell as it stands on paper; what is not known is a dash. */
export function cellOnPaper(cell: PaperCell, { unit }: PaperColumn): string {
  if (cell === null || cell === '') return '–';
  if (typeof cell === 'string') {
    const day = unit === 'day' ? dayFromIso(cell) : null;
    return day === null ? cell : dayInWords(day);
  }
  if (unit === 'share') return `${Math.round(cell * 100)} %`;
  return String(Math.round(cell * 100) / 100);
}

/** The looks of drawings; the page that shows them says these once. */
export const drawingRules = `
.drawing { display: block; max-width: 100%; height: auto; margin: 0.4rem 0; font: 12px 'Source Sans 3', sans-serif; fill: none; stroke: none; break-inside: avoid; }
.drawing .axis { stroke: #000; } .drawing .grid { stroke: #ccc; } .drawing .band { fill: #000; fill-opacity: 0.13; }
.drawing .line { stroke: #000; stroke-width: 2; } .drawing .line-dashed { stroke: #000; stroke-width: 1.6; stroke-dasharray: 7 4; } .drawing .line-dotted { stroke: #000; stroke-width: 1.6; stroke-dasharray: 2 3; }
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

/** A section of the review as HTML, with its pictures and the tables that go on paper. */
export function sectionHtml({ title, sentences, drawings, tables, notes }: PaperSection): string {
  const shown = tables.filter(({ onPaper }) => onPaper).map(({ columns, rows, totals }) => {
    const at = ({ unit }: PaperColumn) => (unit === 'text' || unit === 'day' ? '' : ' class="number"');
    const head = columns.map((column) => `<th scope="col"${at(column)}>${escapeHtml(column.label)}</th>`).join('');
    const body = rows.map((row, place) => `<tr${totals && place === rows.length - 1 ? ' class="totals"' : ''}>${columns.map((column, cell) => `<td${at(column)}>${escapeHtml(cellOnPaper(row[cell] ?? null, column))}</td>`).join('')}</tr>`).join('\n');
    return `<table><thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody></table>`;
  });
  return [
    `<h2>${escapeHtml(title)}</h2>`, ...sentences.map((sentence) => `<p class="sentence">${escapeHtml(sentence)}</p>`), ...drawings.map(drawingHtml), ...shown,
    ...notes.map((note) => `<p class="small">${escapeHtml(note)}</p>`),
  ].join('\n');
}

export function escapeHtml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
