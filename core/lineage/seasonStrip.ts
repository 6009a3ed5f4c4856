import type { ColonyStrip } from '#shared/contract/strip.ts';
import type { Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Borders } from '#shared/seasons.ts';
import { gramsPerPound, roundTo } from '#shared/units.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { proportion } from '#core/stats/proportion.ts';
import { queenOn } from './colonyWords.ts';
import { yardOn } from './yardOn.ts';

/**
 * A colony's life on a time axis. `entries`: its standing entries in the journal's order; `treatments`: the
 * standing treatments of whole yards. Strengths in frames, mites per 100 bees with the exact 95 % interval
 * (Clopper-Pearson), honey in pounds.
 */
export function seasonStrip(state: ColonyState, entries: readonly Entry[], treatments: readonly Entry[], names: Names, borders: Borders, today: Day): ColonyStrip {
  const until = state.end ?? today;
  const said = (entry: Entry) => ({ day: entry.day, sentence: rulesOf(entry.kind).sentence(entry.body, names) });
  const strip: ColonyStrip = {
    start: state.start, until, ended: state.end !== null, seasons: seasonsBetween(state.start, until, borders), looks: [], mites: [], supers: [], feeds: [], treatments: [],
    honey: honeyByDay(state), queens: [],
  };
  const own = new Set(entries.map((entry) => entry.id));
  const yardWide = treatments.filter((entry) => entry.kind === 'treatment' && entry.body.colony === undefined && entry.body.yard === yardOn(state, entry.day) && aliveOn(state, entry.day) && !own.has(entry.id));
  let on = 0;
  for (const entry of entries) {
    switch (entry.kind) {
      case 'inspection':
        strip.looks.push({ day: entry.day, bees: entry.body.framesBees ?? null, brood: entry.body.framesBrood ?? null, stores: entry.body.framesStores ?? null });
        break;
      case 'mites': {
        const { mites, bees } = entry.body;
        const limits = proportion(Math.min(mites, bees), bees).clopperPearson;
        strip.mites.push({ day: entry.day, mites, bees, per100: (100 * mites) / bees, range: [100 * (limits?.lower ?? 0), 100 * (limits?.upper ?? 1)] });
        break;
      }
      case 'supers on':
      case 'supers off':
        on += entry.kind === 'supers on' ? entry.body.count : -entry.body.count;
        strip.supers.push({ day: entry.day, on });
        break;
      case 'feed':
        strip.feeds.push(said(entry));
        break;
    }
    if (changesQueen(state, entry)) strip.queens.push({ ...said(entry), queen: queenOn(state, entry.day) });
  }
  const treated = [...entries, ...yardWide].filter((entry) => entry.kind === 'treatment').toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.place - b.place));
  for (const entry of treated) strip.treatments.push({ ...said(entry), until: entry.body.endDate ?? null });
  return strip;
}

/** A queen came, went or was marked; one that was merely seen is no event on the axis. */
function changesQueen(state: ColonyState, entry: Entry): boolean {
  if (entry.kind === 'queen') return entry.body.what !== 'seen';
  return state.reigns.some((reign) => reign.queen === entry.id || (reign.endEntry === entry.id && reign.ending !== 'colony ended'));
}

function honeyByDay(state: ColonyState): ColonyStrip['honey'] {
  return [...Map.groupBy(state.harvests, (harvest) => harvest.day)].map(([day, taken]) => ({ day, lb: roundTo(taken.reduce((sum, { grams }) => sum + grams, 0) / gramsPerPound, 4) }));
}

function seasonsBetween(start: Day, until: Day, borders: Borders): ColonyStrip['seasons'] {
  const first = seasonOf(start, borders);
  return Array.from({ length: seasonOf(until, borders) - first + 1 }, (_, at) => {
    const season = first + at;
    const year = periodDays(season, 'year', borders);
    return { season, from: year.from, winter: periodDays(season, 'winter', borders).from, until: year.until };
  });
}
