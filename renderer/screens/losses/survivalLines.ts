import type { LossSurvival, SurvivalGroup } from '#shared/contract/lossSections.ts';
import type { SurvivalLine } from '../../charts/survivalGeometry.ts';
import { reviewWords } from './reviewWords.ts';

/** With more groups than this not all curves are shown unasked. */
const plain = 4;

/** The curves shown until others are chosen: all of a few, else the groups with the most and the least left alive. */
export function firstShown(groups: readonly SurvivalGroup[]): readonly string[] {
  const drawn = groups.filter(({ curve }) => curve !== null);
  // One group alone is the same curve as all together.
  if (groups.length === 1) return [];
  if (drawn.length <= plain) return drawn.map(({ key }) => key);
  const left = (group: SurvivalGroup) => group.curve?.survival.at(-1) ?? 1;
  const ordered = drawn.toSorted((a, b) => left(a) - left(b));
  const [worst, best] = [ordered[0], ordered.at(-1)];
  return [worst, best].flatMap((group) => (group === undefined ? [] : [group.key]));
}

/** All together, then the chosen groups; each keeps its colour and dash whatever else is shown. */
export function survivalLines({ all, groups }: Pick<LossSurvival, 'all' | 'groups'>, chosen: ReadonlySet<string>): SurvivalLine[] {
  return [{ ...all, label: reviewWords.together }, ...groups.filter(({ key }) => chosen.has(key))].flatMap(({ key, label, place, curve }) => (curve === null ? [] : [{ key, label, place, curve }]));
}
