import type { LossSurvival } from '#shared/contract/lossSections.ts';
import type { SurvivalLine } from '../../charts/survivalGeometry.ts';
import { reviewWords } from './reviewWords.ts';

/** All together, then the chosen groups; each keeps its colour and dash whatever else is shown. */
export function survivalLines({ all, groups }: Pick<LossSurvival, 'all' | 'groups'>, chosen: ReadonlySet<string>): SurvivalLine[] {
  return [{ ...all, label: reviewWords.together }, ...groups.filter(({ key }) => chosen.has(key))].flatMap(({ key, label, place, curve }) => (curve === null ? [] : [{ key, label, place, curve }]));
}
