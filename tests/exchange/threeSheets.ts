import { xlsxFile } from './xlsxFile.ts';

/** Serials of 2026-04-24 and 2026-05-02, as a spreadsheet counts days. */
export const april24 = 46136;
export const may2 = 46144;

/** A workbook with a title, merged names in two rows, real days, formulas and two kinds of sheet. */
export function workbook(): Buffer {
  return xlsxFile([
    {
      name: 'Hive list',
      merged: ['A1:D1'],
      rows: [
        ['Larch Bend, all hives'],
        ['Installed', 'Yard', 'Hive', 'Origin', 'Queen year'],
        [{ serial: april24 }, 'Larch Bend', 'LB-01', 'pkg', 2026],
        [{ serial: april24 }, 'Larch Bend', 'LB-02', 'nuc', 2025],
        [{ serial: april24 }, 'Larch Bend', 3, 'nucleus', null],
      ],
    },
    {
      name: 'Inspections',
      merged: ['C1:E1'],
      rows: [
        ['Date', 'Hive', 'Frames of', null, null, 'Queen seen', 'Weather', 'Remarks'],
        [null, null, 'bees', 'brood', 'stores', null, null, null],
        [{ serial: may2 }, 'LB-01', 8, 4.5, { formula: 'C3-D3', value: 3.5 }, true, 'sunny', 'calm'],
        [{ serial: may2 }, 'LB-02', 6, 3, null, false, null, null],
      ],
    },
    { name: 'Empty', rows: [] },
  ]);
}

/** Day first, decimal commas, semicolons, somebody else's language; line 5 is no day. */
export const dayFirst = [
  'Datum;Volk;Waben Bienen;Waben Brut;Futter;Königin gesehen;Bemerkung',
  '02/05/2026;LB-01;8,5;4,5;1,25;ja;ruhig',
  '17/05/2026;LB-02;6,0;3,5;2;nein;"stark; Raum geben"',
  '17/05/2026;LB-01;9,5;5;;;',
  '31/06/2026;LB-01;9,5;5;;;',
  '',
].join('\r\n');

/** Units in the headers, tabs, days that can be read both ways, and a column that fits nothing. */
export const unitsInHeaders = [
  'Date\tYard\tHoney (kg)\tEmpty bucket (lbs)\tWater %\tBatch\tSold to',
  '7/8/2026\tLB\t23.5\t2.2\t17.8\tA1\tthe fair',
  '7/9/2026\tLB\t12\t2.2\t18\tA2\t',
  '',
].join('\n');
