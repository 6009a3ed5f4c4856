import type { SeasonCrop, YieldAnswer } from '#shared/contract/yields.ts';
import type { MassUnit } from '#shared/units.ts';
import { counted, missing, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useFirstRows } from '../../parts/useFirstRows.tsx';
import { inUnit, poundsText } from './yieldText.ts';
import { yieldWords as words } from './yieldWords.ts';

/** Each season’s whole crop, for each colony and each hour, beside what was printed for the country. */
export function YieldSeasons({ answer, unit }: { readonly answer: YieldAnswer; readonly unit: MassUnit }) {
  const { seasons, seasonSentence, hourSentence, printedSentence } = answer;
  const { shown, more } = useFirstRows(seasons.toReversed(), words.seasons);
  return (
    <>
      <h3>{words.seasons}</h3>
      <p>{seasonSentence}</p>
      <p>{hourSentence}</p>
      <div className="scroll" tabIndex={0} role="group" aria-label={words.seasons}>
        <table className="tight yields">
          <caption className="visually-hidden">{words.seasons}</caption>
          <thead>
            <tr>
              <th scope="col">{words.season}</th>
              {[words.honey(unit), words.harvested, words.perColony(unit), words.printed(unit), words.perHour(unit), words.written].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((crop) => (
              <Line key={crop.season} crop={crop} unit={unit} />
            ))}
          </tbody>
        </table>
      </div>
      {more}
      <p className="soft small">
        {words.printedHead}
        {printedSentence}
      </p>
    </>
  );
}

function Line({ crop, unit }: { readonly crop: SeasonCrop; readonly unit: MassUnit }) {
  const note = useMarginNote();
  const { season, lb, colonies, perColony, visits, written, hours, perHour, nass } = crop;
  return (
    <tr
      {...note(
        <MarginPart heading={String(season)}>
          <p>{words.seasonHours(number(hours, 1), number(written), counted(visits, 'visit', 'visits'))}</p>
          <p>{nass === null ? words.seasonNotPrinted : words.seasonPrinted(poundsText(nass.perColony, unit), unit, number(nass.colonies), nass.source)}</p>
        </MarginPart>,
      )}
    >
      <th scope="row">{season}</th>
      <td className="number">{number(inUnit(lb, unit))}</td>
      <td className="number">{number(colonies)}</td>
      <td className="number">{poundsText(perColony, unit)}</td>
      <td className="number">{poundsText(nass?.perColony ?? null, unit)}</td>
      <td className="number figure-range">{perHour === null ? words.tooFew : hourText(perHour, unit)}</td>
      <td className="number">{visits === 0 ? missing : words.writtenOf(number(written), number(visits))}</td>
    </tr>
  );
}

function hourText({ lb, range }: NonNullable<SeasonCrop['perHour']>, unit: MassUnit): string {
  const [low, high] = range;
  return low === high ? poundsText(lb, unit) : `${poundsText(lb, unit)}\u2002(${poundsText(low, unit)}–${poundsText(high, unit)})`;
}
