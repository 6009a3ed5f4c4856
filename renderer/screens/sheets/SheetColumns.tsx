import { useId } from 'react';
import type { MappedColumn, SheetLook, SheetMapping, Target } from '#shared/contract/sheets.ts';
import { missing, number } from '../../parts/format.ts';
import { targetName, targetsFor, unitsFor } from './targets.ts';
import { words } from './words.ts';

export interface SheetColumnsProps {
  readonly look: SheetLook;
  readonly mapping: SheetMapping;
  readonly onChange: (mapping: SheetMapping) => void;
}

/** Header by header what it becomes. */
export function SheetColumns({ look, mapping, onChange }: SheetColumnsProps) {
  const id = useId();
  const targets = targetsFor(mapping);
  const change = (at: number, column: MappedColumn) => {
    const kind = column.becomes === 'entry' ? null : mapping.kind;
    onChange({ ...mapping, kind, columns: mapping.columns.map((old, place) => (place === at ? column : old)) });
  };
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.columns}</h2>
      <table className="tight sheet-columns" aria-labelledby={id}>
        <thead>
          <tr>
            <th scope="col">{words.header}</th>
            <th scope="col" className="number">
              {words.filled}
            </th>
            <th scope="col">{words.samples}</th>
            <th scope="col">{words.becomes}</th>
            <th scope="col">{words.unit}</th>
          </tr>
        </thead>
        <tbody>
          {mapping.columns.map((column, at) => {
            const seen = look.columns[at];
            const units = unitsFor(column.becomes);
            const asked = (about: readonly string[]) => look.questions.some((question) => question.header === column.header && about.includes(question.about));
            const offered = column.becomes !== null && !targets.includes(column.becomes) ? [column.becomes, ...targets] : targets;
            return (
              <tr key={column.header}>
                <th scope="row" className="value">
                  {column.header}
                </th>
                <td className="number">{number(seen?.filled)}</td>
                <td className="value soft">{seen === undefined || seen.samples.length === 0 ? missing : seen.samples.join(' · ')}</td>
                <td>
                  <select
                    aria-label={words.becomesOf(column.header)}
                    aria-invalid={asked(['column', 'twice'])}
                    value={column.becomes ?? ''}
                    onChange={(event) => {
                      const becomes = event.target.value === '' ? null : (event.target.value as Target);
                      const unit = column.unit !== null && unitsFor(becomes).includes(column.unit) ? column.unit : null;
                      change(at, { ...column, becomes, unit });
                    }}
                  >
                    <option value="">{seen?.filled === 0 ? words.emptyColumn : words.decide}</option>
                    {offered.map((target) => (
                      <option key={target} value={target}>
                        {targetName(target)}
                      </option>
                    ))}
                  </select>
                </td>
                <td>
                  {units.length === 0 ? null : (
                    <select
                      aria-label={words.unitOf(column.header)}
                      aria-invalid={asked(['unit'])}
                      value={column.unit ?? ''}
                      onChange={(event) => change(at, { ...column, unit: units.find((unit) => unit === event.target.value) ?? null })}
                    >
                      <option value="">{words.decide}</option>
                      {units.map((unit) => (
                        <option key={unit} value={unit}>
                          {unit}
                        </option>
                      ))}
                    </select>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
