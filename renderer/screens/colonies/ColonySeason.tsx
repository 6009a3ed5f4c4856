import { useId, useState } from 'react';
import type { ColonyId } from '#shared/brands.ts';
import type { ColonyStrip } from '#shared/contract/strip.ts';
import { seasonName } from '#shared/seasons.ts';
import type { MassUnit } from '#shared/units.ts';
import { Figure } from '../../charts/Figure.tsx';
import { SeasonStrip } from '../../charts/SeasonStrip.tsx';
import { SeasonStripTable } from '../../charts/SeasonStripTable.tsx';
import type { StripSeason } from '../../charts/stripGeometry.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { massFromPounds } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { seasonWords as words } from './seasonWords.ts';

/** A season of the colony on one time axis, and the choice of the season. */
export function ColonySeason({ id, massUnit }: { readonly id: ColonyId; readonly massUnit: MassUnit }) {
  const { data, fault } = useRead('colony.strip', { id });
  const [chosen, setChosen] = useState<number | null>(null);
  const heading = useId();
  if (data === undefined) return <FaultNote fault={fault} />;
  const season = data.seasons.find((one) => one.season === chosen) ?? latest(data);
  if (season === undefined) return null;
  const name = seasonName(season.season);
  const honeyText = (pounds: number) => `${massFromPounds(pounds, massUnit, 1)}\u00a0${massUnit}`;
  return (
    <section className="section figured" aria-labelledby={heading}>
      <h2 id={heading}>{words.heading}</h2>
      <div className="choices">
        <label className="inline-choice">
          {words.season}{' '}
          <select value={season.season} onChange={(event) => setChosen(Number(event.target.value))}>
            {data.seasons.toReversed().map((one) => (
              <option key={one.season} value={one.season}>
                {seasonName(one.season)}
              </option>
            ))}
          </select>
        </label>
      </div>
      {hasAnything(data, season) ? null : <p className="soft">{words.nothing}</p>}
      <Figure
        name={words.figure(name)}
        least={420}
        most={900}
        picture={(width) => <SeasonStrip strip={data} season={season} width={width} honeyText={honeyText} />}
        table={<SeasonStripTable strip={data} season={season} caption={words.figure(name)} honeyText={honeyText} />}
      />
      <MarginContent heading={words.margin}>
        <p>{words.marginText}</p>
      </MarginContent>
    </section>
  );
}

function hasAnything(strip: ColonyStrip, season: StripSeason): boolean {
  const dated = [strip.looks, strip.mites, strip.supers, strip.feeds, strip.treatments, strip.honey, strip.queens];
  return dated.some((list) => list.some(({ day }) => day >= season.from && day < season.until));
}

/** The last season in which something was written down, else the last one. */
function latest(strip: ColonyStrip): StripSeason | undefined {
  return strip.seasons.findLast((season) => hasAnything(strip, season)) ?? strip.seasons.at(-1);
}
