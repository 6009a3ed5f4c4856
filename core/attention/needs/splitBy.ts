import { dayInWords } from '#shared/days.ts';
import { splitCandidate, splitDaysOfSeason } from '#core/space/splits.ts';
import type { NeedRule } from './needRule.ts';
import { restRecord } from './needWords.ts';

/** Colonies strong enough to be split, while a split can still become a colony that winters. */
export const splitBy: NeedRule = {
  key: 'splitBy',
  title: 'Splits',
  why: 'A split made too late does not build up before winter.',
  numbers: ['space.split.bees', 'space.split.brood', 'space.split.from', 'space.split.weeks', 'space.frost', 'space.lookHolds', 'queens.cage.outBy', 'queens.cage.eggsBy', 'queens.eggs.by', 'queens.ripe', 'attention.walkAway.by'],
  weather: 'open',
  page: '/needs/space',
  optional: true,
  find: (facts) => {
    const { from, latest } = splitDaysOfSeason(facts.today, facts.rules);
    if (facts.today < from || latest.every(({ day }) => facts.today > day)) return [];
    return facts.colonies.flatMap((colony) => {
      const found = splitCandidate(colony.state, colony.space());
      const last = latest.filter(({ way }) => found?.ways.includes(way) === true).toSorted((a, b) => (a.day < b.day ? 1 : -1))[0];
      if (found === null || last === undefined) return [];
      const ways = latest.flatMap(({ way, day }) => (found.ways.includes(way) ? [`${wayWords[way]} by ${dayInWords(day)}`] : []));
      return [{
        colony, episode: found.look, act: 'Split it, if you want more colonies', because: `Strong enough to split: ${ways.join(', ')}.`, detail: `${found.bees} frames, ${found.brood} of brood`,
        records: restRecord(colony, found, facts), earliest: found.look, latest: last.day, bring: [{ item: 'hive for a split', count: 1, unit: '', each: true }],
      }];
    });
  },
};

const wayWords = { mated: 'with a mated queen', cell: 'with a cell', 'walk-away': 'walk-away' } as const;
