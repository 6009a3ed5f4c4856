import type { Grouping, LossSurvival, SurvivalGroup } from '#shared/contract/lossSections.ts';
import type { PaperCell, PaperPart, PaperTable } from '#shared/contract/paper.ts';
import { addDays, type Day } from '#shared/days.ts';
import { fixed, missing, number, percentRange, signed } from '#shared/figures.ts';
import { firstShown } from '#shared/lossChoice.ts';
import { seasonName } from '#shared/seasons.ts';
import { drawCurve, mostCurves } from './drawCurve.ts';
import { drawIncidence } from './drawIncidence.ts';
import { count, figure, inFile, part, table, text } from './paperTables.ts';
import type { SectionFacts, SectionMaker } from './sectionFacts.ts';

/** Looked at beside yards, where there are enough for curves. */
const usual: readonly Grouping[] = ['queenAge', 'mites', 'treated'];
const names: Readonly<Record<Grouping, string>> = {
  none: 'all together', yard: 'by yard', source: 'by source of the colony', queenAge: 'by age of the queen', line: 'by queen line', treated: 'by treatment before winter', mites: 'by mites in late summer', stores: 'by stores in autumn',
};
const together = 'All together';
const method = 'Kaplan-Meier; colonies that came later enter on their day; a tick is a day on which one left alive; the shade is the 95 % band (log-log) of all together. United colonies are taken as leaving alive. Mean days are restricted to the days that all groups were watched. Colonies of a yard share their fate, so every p is rather too small; and of twenty groupings looked at, one stands out by chance alone.';

/** Section 3: curves by yard and by what has enough colonies in it, the test of each, what else became of the colonies, and the ended ones. */
export const survivalParts: SectionMaker = (facts) => {
  const { answers, season, by } = facts;
  const ask = (grouping: Grouping) => answers.survival({ season, axis: 'winter', by: grouping, united: 'alive' });
  const yards = ask('yard');
  const silent = yards.all.curve === null;
  const chosen: readonly Grouping[] = by === null || by === 'yard' ? [] : [by];
  const others = silent ? [] : [...new Set([...chosen, ...usual])].map((grouping) => ({ grouping, found: ask(grouping) }));
  const shown = others.filter(({ grouping, found }) => chosen.includes(grouping) || found.groups.filter(({ curve }) => curve !== null).length > 1);
  const few = others.filter((one) => !shown.includes(one)).map(({ grouping }) => names[grouping]);
  const whole = curves(facts, yards, 'yard');
  return [
    { ...whole, notes: [...whole.notes, ...(silent ? [] : [method]), ...(few.length === 0 ? [] : [`Too few for curves ${few.join(', ')}.`])] },
    ...shown.map(({ grouping, found }) => curves(facts, found, grouping)),
    ...incidence(yards),
    ...lives(facts),
    ...ended(facts),
  ];
};

function curves({ answers }: SectionFacts, data: LossSurvival, by: Grouping, key: string = by): PaperPart {
  const { asked, origin, groups, all, test, last } = data;
  const life = asked.axis === 'start';
  const from = life ? null : origin;
  const where = life ? 'counted from each colony’s own start' : 'over the winter';
  const title = `Colonies alive ${where}, ${names[by]}`;
  const chosen = firstShown(groups);
  const drawn = [{ ...all, label: together }, ...groups.filter((group) => chosen.includes(group.key))].flatMap(({ label, curve }) => (curve === null ? [] : [{ name: label, curve }])).slice(0, mostCurves);
  const pairs = data.pairs > 0 ? answers.pairs(asked).pairs : [];
  return part(`survival-${key}`, title, {
    sentences: [[...(by === 'yard' ? [data.sentence] : []), test === null ? '' : test.sentence].filter((one) => one !== '').join(' ')].filter((one) => one !== ''),
    drawings: drawn.length === 0 ? [] : [drawCurve(title, drawn, from, last)],
    tables: [
      ...(all.colonies === 0 ? [] : [groupTable(data, key, `The groups in figures, ${names[by]}${life ? ', from their start' : ''}`)]),
      ...(drawn.length === 0 ? [] : [curveTable(data, key, title, from)]),
      ...(pairs.length === 0 ? [] : [table(`pairs-${key}`, `Pair by pair, ${names[by]}`, {
        columns: [text('Group'), text('Against'), inFile('Chi-square'), inFile('p'), inFile('p, adjusted after Holm')], onPaper: false,
        rows: pairs.map(({ a, b, chiSquare, p, pHolm }) => [a, b, chiSquare, p, pHolm]),
      })]),
    ],
    notes: [
      ...(test?.kind === 'made' ? [`Log-rank: chi-square ${fixed(test.chiSquare, 2)} on ${test.df} ${test.df === 1 ? 'degree' : 'degrees'} of freedom, p ${test.p < 0.0001 ? '< 0.0001' : fixed(test.p, 4)}.`] : []),
      ...(all.curve === null && all.why !== null && all.why !== data.sentence ? [all.why] : []),
      ...data.notes,
    ],
  });
}

/** The groups in figures, as on the screen. */
function groupTable(data: LossSurvival, key: string, title: string): PaperTable {
  const { groups, all, tau, reference, asked } = data;
  const compared = tau !== null && groups.some(({ difference }) => difference !== null);
  const median = [...groups, all].some((group) => group.median !== null);
  const referenceName = groups.find((group) => group.key === reference)?.label ?? '';
  const range = (name: string) => [inFile(name), inFile(`${name}, from`), inFile(`${name}, to`)];
  return table(`groups-${key}`, title, {
    totals: true,
    columns: [
      text('Group'), count(asked.axis === 'winter' && asked.season === null ? 'Colony winters' : 'Colonies'), count('Lost'),
      figure('Alive at the end %'), inFile('Alive at the end', 'share'), inFile('Alive from', 'share'), inFile('Alive to', 'share'),
      ...(tau === null ? [] : [figure(`Mean days of ${Math.round(tau)}`), ...range('Mean days')]),
      ...(compared ? [figure(`Days less ${referenceName}`), ...range('Difference in days')] : []),
      ...(median ? [{ label: 'Half lost by day', unit: 'number' as const }] : []),
    ],
    rows: [...groups, { ...all, label: together }].map((group) => {
      const { alive, low, high } = endOf(group);
      return [
        group.label, group.colonies, group.losses, alive === null ? missing : `${number(alive * 100)}${low === null || high === null ? '' : ` ${percentRange([low, high])}`}`, alive, low, high,
        ...(tau === null ? [] : dayCells(group.mean)),
        ...(compared ? (group.key === reference ? ['0', 0, null, null] : dayCells(group.difference, true)) : []),
        ...(median ? [group.median?.value ?? null] : []),
      ];
    }),
  });
}

/** Without a loss the curve is at 1 and has no band. */
function endOf({ curve }: SurvivalGroup): { alive: number | null; low: number | null; high: number | null } {
  if (curve === null) return { alive: null, low: null, high: null };
  return { alive: curve.survival.at(-1) ?? 1, low: curve.low.at(-1) ?? null, high: curve.high.at(-1) ?? null };
}

function dayCells(days: SurvivalGroup['mean'], withSign = false): PaperCell[] {
  if (days === null) return [missing, null, null, null];
  const of = (value: number) => (withSign ? signed(value) : number(Math.round(value)));
  return [`${of(days.value)}${days.low === null || days.high === null ? '' : ` (${of(days.low)} to ${of(days.high)})`}`, days.value, days.low, days.high];
}

/** Every step of every curve, for the file. */
function curveTable({ groups, all }: LossSurvival, key: string, title: string, origin: Day | null): PaperTable {
  return table(`survival-${key}`, title, {
    onPaper: false,
    columns: [text('Group'), inFile('Days'), ...(origin === null ? [] : [inFile('Day', 'day')]), inFile('At risk', 'count'), inFile('Lost', 'count'), inFile('Alive', 'share'), inFile('95 % range from', 'share'), inFile('95 % range to', 'share')],
    rows: [{ ...all, label: together }, ...groups].flatMap(({ label, curve }) => (curve?.times ?? []).map((time, at) => [
      label, time, ...(origin === null ? [] : [addDays(origin, Math.floor(time))]), curve?.atRisk[at] ?? null, curve?.lost[at] ?? null, curve?.survival[at] ?? null, curve?.low[at] ?? null, curve?.high[at] ?? null,
    ])),
  });
}

const fateHeads = { lost: 'Lost', sold: 'Sold or given', united: 'United' } as const;

function incidence({ incidence: found, origin, last }: LossSurvival): PaperPart[] {
  if (found === null) return [];
  const title = 'What became of them over the winter';
  return [part('incidence', title, {
    sentences: [found.sentence],
    drawings: [drawIncidence(title, found.fates.filter(({ colonies }) => colonies > 0).map((one) => ({ ...one, name: fateHeads[one.fate] })), found.times, origin, last)],
    tables: [table('incidence', title, {
      onPaper: false,
      columns: [
        inFile('Days'), ...(origin === null ? [] : [inFile('Day', 'day')]), inFile('At risk', 'count'),
        ...found.fates.flatMap(({ fate }) => [inFile(fateHeads[fate], 'share'), inFile(`${fateHeads[fate]} from`, 'share'), inFile(`${fateHeads[fate]} to`, 'share')]), inFile('Alive', 'share'),
      ],
      rows: found.times.map((time, at) => [
        time, ...(origin === null ? [] : [addDays(origin, Math.floor(time))]), found.atRisk[at] ?? null,
        ...found.fates.flatMap(({ share, low, high }) => [share[at] ?? null, low[at] ?? null, high[at] ?? null]), found.alive[at] ?? null,
      ]),
    })],
    notes: ['Cumulative incidence (Aalen-Johansen): each fate has its own share, and they add up with those that lived on.'],
  })];
}

/** The same colonies by their own age. */
function lives(facts: SectionFacts): PaperPart[] {
  const data = facts.answers.survival({ season: null, axis: 'start', by: 'yard', united: 'alive' });
  return data.all.curve === null ? [] : [curves(facts, data, 'yard', 'age')];
}

const how = { alive: 'alive', lost: 'lost', sold: 'sold', given: 'given away', combined: 'united', absconded: 'absconded' } as const;

function ended({ answers, season }: SectionFacts): PaperPart[] {
  const { ended: all, yards } = answers.ended(season);
  const title = `Colonies that ended, ${seasonName(season)}`;
  if (all.length === 0) return [];
  return [part('ended', title, {
    tables: [table('ended', title, {
      columns: [{ label: 'Day', unit: 'day' }, text('Colony'), text('Yard'), text('How'), text('Cause')],
      rows: all.toSorted((a, b) => a.day.localeCompare(b.day) || a.label.localeCompare(b.label)).map((one) => [one.day, one.label, yards.find(({ code }) => code === one.yard)?.name ?? one.yard, how[one.how], one.causes.join('; ') || null]),
    })],
    notes: ['Causes are what was seen or believed; several may stand together.'],
  })];
}
