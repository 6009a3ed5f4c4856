import { needKeys, type NeedKey } from '#shared/contract/needs.ts';
import type { PlannedTask } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import { inSheetOrder, roundKinds, type RoundColumn, type RoundKind } from '#shared/roundSheets.ts';
import { winterTasks } from '#shared/winterTasks.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import { phaseOn, type Phase } from './roundPhases.ts';
import { isRound } from './roundTasks.ts';

/** The round sheet on which the work is written down, and what must stand on it for that. */
export interface TaskSheet {
  readonly kind: RoundKind;
  readonly columns: readonly RoundColumn[];
}

const eggs: TaskSheet = { kind: 'inspection', columns: ['eggs', 'queen'] };
const cells: TaskSheet = { kind: 'inspection', columns: ['eggs', 'cells'] };
const act: TaskSheet = { kind: 'inspection', columns: ['act'] };
const wash: TaskSheet = { kind: 'mites', columns: ['mites', 'sample'] };
const treat: TaskSheet = { kind: 'mites', columns: ['treat'] };
const crop: TaskSheet = { kind: 'harvest', columns: ['supersOff', 'full', 'empty'] };
const supersOn: TaskSheet = { kind: 'supers', columns: ['supersOn'] };
const weighed: TaskSheet = { kind: 'stores', columns: ['stores', 'weight'] };

/** Null: nothing of it is written down colony by colony on a round sheet. */
const ofNeeds: Readonly<Record<NeedKey, TaskSheet | null>> = {
  walkAwayLaying: eggs, newQueenLaying: eggs, queenlessLaying: eggs, noEggs: eggs, swarmCellsLook: cells, swarmRisk: cells,
  // The book has no entry for taking one off; a word of it, or any other entry of the day, tells that somebody was there.
  treatmentOff: { kind: 'mites', columns: ['note'] },
  miteRecount: wash, mitesCount: wash, mitesSoon: wash, mitesOver: treat, winterBees: treat,
  supersOff: { kind: 'supers', columns: ['supersOff'] }, harvest: crop, addBox: supersOn,
  storesAutumn: { kind: 'feed', columns: ['feed'] }, storesWinter: { kind: 'stores', columns: ['stores', 'weight', 'feed'] }, heft: weighed,
  splitBy: act, requeen: act, weakAutumn: act, look: { kind: 'inspection', columns: [] },
  winterList: null, deadOut: null, renewal: null, orders: null, mend: null,
};

const ofRounds: Readonly<Record<Phase, TaskSheet>> = {
  buildUp: { kind: 'inspection', columns: [] }, swarm: cells, flow: { kind: 'inspection', columns: [] }, late: { kind: 'inspection', columns: [] }, winter: weighed,
};

const ofSeason: Readonly<Record<string, TaskSheet>> = { 'first supers': supersOn, 'supers off': crop };

/** The rule of the list of needs that a task comes from; null for other tasks. */
export function needOf(key: string): NeedKey | null {
  const [source, rule] = key.split('|');
  return source === 'need' ? (needKeys.find((one) => one === rule) ?? null) : null;
}

/** How the work of a round says that what was asked of the whole yard is done, where no sheet has a column for it; null for other tasks. */
export function yardWorkOf(key: string): string | null {
  const [source, what, , episode = ''] = key.split('|');
  if (source === 'season' && what === 'mouse guards') return 'mouse guards put on';
  if (needOf(key) !== 'winterList') return null;
  return winterTasks[episode.startsWith('wrap') ? 'wrap' : 'reduce'];
}

/** What a planned task is written down on. The key tells, so that it is known after the task itself is done and gone. */
export function taskSheet({ key, of }: Pick<PlannedTask, 'key' | 'of'>, on: Day, rules: RuleValues): TaskSheet | null {
  const [source, what = '', step] = key.split('|');
  const need = needOf(key);
  if (need !== null) return ofNeeds[need];
  if (isRound(key)) return ofRounds[phaseOn(rules, on)];
  if (source === 'season') return ofSeason[what] ?? null;
  if (source === 'delivery') return step === undefined ? null : eggs;
  return source === 'own' && of > 0 ? { kind: 'inspection', columns: ['note'] } : null;
}

export interface VisitSheet {
  readonly kind: RoundKind;
  /** The work by the sheet that it would have by itself, that of `kind` first, with the columns it cannot do without. */
  readonly works: readonly { readonly kind: RoundKind; readonly what: readonly string[]; readonly columns: readonly RoundColumn[] }[];
}

/** One sheet for all that is planned in a yard on a day: the round’s, else that of the work on most colonies. Null where nothing of it belongs on one. */
export function visitSheet(tasks: readonly PlannedTask[], on: Day, rules: RuleValues): VisitSheet | null {
  const asked = tasks.flatMap((task) => {
    const sheet = taskSheet(task, on, rules);
    // What is asked of a yard as a whole goes through all of it.
    return sheet === null ? [] : [{ ...sheet, what: task.what, weight: isRound(task.key) ? Infinity : task.of === 0 ? Number.MAX_SAFE_INTEGER : task.colonies }];
  });
  const [chief] = asked.toSorted((a, b) => (a.weight === b.weight ? roundKinds.indexOf(a.kind) - roundKinds.indexOf(b.kind) : b.weight - a.weight));
  if (chief === undefined) return null;
  const works = [...Map.groupBy(asked, ({ kind }) => kind)].map(([kind, own]) => ({ kind, what: [...new Set(own.map(({ what }) => what))], columns: inSheetOrder(own.flatMap(({ columns }) => columns)) }));
  return { kind: chief.kind, works: works.toSorted((a, b) => Number(b.kind === chief.kind) - Number(a.kind === chief.kind)) };
}
