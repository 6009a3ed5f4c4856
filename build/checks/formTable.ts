import { causes, columns, entryForms, fields, fixedPlaces, kinds, knownIngredients, type Column, type FieldType } from '#shared/entryForms.ts';

const code = (word: string) => `\`${word}\``;
const list = (words: readonly string[]) => (words.length === 0 ? '–' : words.map(code).join(' '));

/** How a cell of each type is written, in words for a person with a spreadsheet. */
function cellWords(field: FieldType): string {
  switch (field.type) {
    case 'text':
      return 'text';
    case 'day':
      return 'a day, as `date`';
    case 'year':
      return 'a year, `2025`';
    case 'yes-no':
      return '`yes` or `no`';
    case 'yard':
      return "a yard's code or name";
    case 'colony':
      return "a living colony's label";
    case 'place':
      return `${fixedPlaces.map(code).join(', ')} or a yard`;
    case 'money':
      return 'money, `185` or `185.50`';
    case 'causes':
      return `one or several, \`;\` between them: ${list(causes)}`;
    case 'choice':
      return field.of.map(code).join(' ');
    case 'number': {
      const kind = field.whole === true ? 'a whole number' : 'a number';
      return `${kind} from ${field.min} to ${field.max.toLocaleString('en-US')}`;
    }
  }
}

/** Remarks that the form itself cannot carry. */
const remarks: Partial<Record<Column, string>> = {
  active_ingredient: `such as ${knownIngredients.map(code).join(', ')}`,
  to_yard: 'on a split, empty means the same yard',
  new_colony: 'the label of the colony that is made',
  gross: 'honey is full weight less empty weight',
};

const marks = ['<!-- form -->\n', '<!-- /form -->\n'] as const;

/** The text with the tables between its two marks made anew; null if it has no such place. */
export function withFormTable(text: string): string | null {
  const [before, rest] = text.split(marks[0]);
  const [, after] = rest?.split(marks[1]) ?? [];
  return before === undefined || after === undefined ? null : `${before}${marks[0]}${formTable()}\n${marks[1]}${after}`;
}

/** The two tables of the exchange form, as Markdown, made from the form the program reads and writes by. */
export function formTable(): string {
  const kindRows = kinds.map((kind) => {
    const { must, may } = entryForms[kind];
    return `| ${code(kind)} | ${list(must)} | ${list(may)} |`;
  });
  const columnRows = columns.map((column) => {
    if (column === 'date') return '| `date` | the day, `2025-04-19`; `4/19/2025` or `19.4.2025` is read too, in the order the book is set to |';
    if (column === 'entry') return '| `entry` | the kind of entry, from the table above |';
    const remark = remarks[column];
    return `| ${code(column)} | ${cellWords(fields[column])}${remark === undefined ? '' : `; ${remark}`} |`;
  });
  return [
    '| entry | must have | may have |', '| --- | --- | --- |', ...kindRows, '',
    '| column | what stands in it |', '| --- | --- |', ...columnRows,
  ].join('\n');
}
