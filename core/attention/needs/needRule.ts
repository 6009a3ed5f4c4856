import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { DueItem } from '#shared/contract/due.ts';
import type { NeedItem, NeedKey, NeedRecord, NeedWeather } from '#shared/contract/needs.ts';
import type { Day } from '#shared/days.ts';
import type { Kind } from '#shared/entryForms.ts';
import type { Borders } from '#shared/seasons.ts';
import type { MassUnit } from '#shared/units.ts';
import type { ColonyState, Look, MiteCount, Reign } from '#core/journal/colonyState.ts';
import type { Yard, YardDetails } from '#core/journal/yardBook.ts';
import type { SpaceFacts } from '#core/space/hiveBoxes.ts';
import type { TreatmentSpan } from '#core/mites/treatmentSpans.ts';
import type { YardNow } from '#core/mites/yardNow.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';

/** Words that somebody wrote down. */
export interface Said {
  readonly day: Day;
  readonly words: string;
  readonly entry: EntryId;
}

/** What rules look at of one living colony, worked out once. */
export interface ColonyFacts {
  readonly state: ColonyState;
  readonly yard: YardFacts;
  readonly reign: Reign | null;
  readonly look: Look | null;
  /** The last look that counted frames of bees. */
  readonly strength: (Look & { readonly framesBees: number }) | null;
  readonly count: (MiteCount & { readonly per100: number }) | null;
  /** Oldest first. */
  readonly treatments: readonly TreatmentSpan[];
  /** The boxes it stands on by the equipment account, and the days of its splits. */
  readonly space: () => SpaceFacts;
  /** What the notes of its looks of the last months say, oldest first. */
  readonly said: () => readonly Said[];
  /** What entries made due, open ones only. */
  readonly dues: readonly DueItem[];
}

export interface YardFacts {
  readonly yard: Yard;
  readonly details: YardDetails;
  /** The living colonies, in the order they stand in. */
  readonly standing: readonly ColonyFacts[];
  /** What its mite counts say. */
  readonly mites: () => YardNow;
  /** The last day on which anything was entered there. */
  readonly lastVisit: Day | null;
  /** Words of notes and work for the yard as a whole, newest first. */
  readonly said: readonly Said[];
}

export interface LostColony {
  readonly state: ColonyState;
  readonly day: Day;
  readonly yard: YardFacts;
}

/** All that the rules may look at, as of a day. */
export interface NeedFacts {
  readonly today: Day;
  /** How many days before its first day something is already found. */
  readonly ahead: number;
  readonly rules: RuleValues;
  readonly borders: Borders;
  readonly massUnit: MassUnit;
  readonly yards: readonly YardFacts[];
  readonly colonies: readonly ColonyFacts[];
  /** Lost or absconded in the last weeks. */
  readonly lost: readonly LostColony[];
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  /** Sellers' last days for what is still to be ordered. */
  readonly deadlines: readonly { readonly orderBy: Day; readonly seller: string; readonly sentence: string }[];
  /** Equipment that cannot be used as it is, by item. */
  readonly toMend: readonly { readonly item: string; readonly count: number }[];
  /** The dead-outs whose hives nobody has looked over. */
  readonly unchecked: ReadonlySet<ColonyId>;
  /** The entry of a kind for a colony on a day, where it is at hand. */
  readonly entryOf: (colony: ColonyId, kind: Kind, on: Day) => EntryId | null;
}

/** What a rule found; what is the same for all of a rule is taken from the rule. */
export interface Found {
  readonly colony?: ColonyFacts;
  readonly yard?: Pick<YardFacts, 'yard'>;
  /** A colony that lives no more, where it is about what it left. */
  readonly ended?: ColonyState;
  /** Tells one time of asking from the next: the day of the record, or the season. */
  readonly episode: string;
  readonly act: string;
  readonly because: string;
  readonly detail?: string;
  readonly records?: readonly NeedRecord[];
  readonly earliest: Day;
  readonly latest: Day;
  readonly bring?: readonly NeedItem[];
  /** How many times the rule's minutes; 1 unless said. */
  readonly times?: number;
}

/** What decides whether the equipment account, which takes seconds to fold for a large operation, is read at all. */
export interface AccountQuestion extends Pick<NeedFacts, 'today' | 'ahead' | 'rules'> {
  /** Whether any colony was lost or absconded in the last weeks. */
  readonly anyLost: boolean;
}

/** One rule: what it asks for, on what numbers, and what it finds. */
export interface NeedRule {
  readonly key: NeedKey;
  /** As the rule is called in the list of rules. */
  readonly title: string;
  /** Why there is such a rule, in one sentence. */
  readonly why: string;
  /** Keys of its house rules, beside those of how grave it is and of its minutes. */
  readonly numbers: readonly string[];
  readonly people?: number;
  readonly weather: NeedWeather;
  readonly caution?: string;
  readonly page?: string;
  /** It may be done, and nothing is lost where it is not: it is in no count of what is to be done, nor in its hours. */
  readonly optional?: boolean;
  /** What is not asked for beside it in the same colony: it is seen to with it, or has to wait for what it finds. */
  readonly instead?: readonly NeedKey[];
  readonly find: (facts: NeedFacts) => Found[];
  /** Whether on that day it may ask for boxes, for what is to mend or which dead-outs are unchecked; without it, never. */
  readonly account?: (asked: AccountQuestion) => boolean;
  /** How later records answer it and what may come of it, for the tally; none where no entry tells. */
  readonly tally?: NeedTally;
}

/** What the record tells of a need afterwards. */
export interface NeedTally {
  /** The kinds of entries of the colony, or of its whole yard, that answer it. */
  readonly answers: readonly Kind[];
  /** What is looked for afterwards: lost in the winter that follows, swarmed or lost within the house's days. Null: only whether it was answered. */
  readonly came: TallyHarm | null;
}

export type TallyHarm = 'lost in winter' | 'swarmed' | 'lost soon';
