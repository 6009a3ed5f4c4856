import type { Day } from '#shared/days.ts';
import { behind } from '#core/losses/behind.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { Handlers } from './desk.ts';
import { lossAnswersOf } from './lossAnswersOf.ts';

type Names = 'losses.frame' | 'losses.ledger' | 'losses.ended' | 'losses.rates' | 'losses.survival' | 'losses.pairs' | 'losses.behind';

/** The season-end review in parts, so that no answer holds up the next; what several parts need is worked out once. */
export const lossSectionHandlers: Handlers<Names> = {
  'losses.frame': async ({ season }, context) => (await lossAnswersOf(context)).frame(season),
  'losses.ledger': async ({ season }, context) => (await lossAnswersOf(context)).ledger(season),
  'losses.ended': async ({ season }, context) => (await lossAnswersOf(context)).ended(season),
  'losses.rates': async ({ season, united }, context) => (await lossAnswersOf(context)).rates(season, united),
  'losses.survival': async (asked, context) => (await lossAnswersOf(context)).survival(asked),
  'losses.pairs': async (asked, context) => (await lossAnswersOf(context)).pairs(asked),
  'losses.behind': async ({ selector, most }, context) => {
    const { survivalFacts: facts } = await lossAnswersOf(context);
    const { states, times } = behind(facts, selector);
    const code = new Map(facts.yards.map((yard) => [yard.id, yard.code]));
    const ordered = states.toSorted((a, b) => compare(a.end ?? '9999', b.end ?? '9999') || compare(a.label, b.label));
    return {
      total: states.length,
      colonies: ordered.slice(0, most).map((state) => {
        const ended = state.end !== null && state.end <= facts.asOf;
        const yard = yardOn(state, facts.asOf) ?? state.stays[0]?.yard;
        return { id: state.id, label: state.label, yard: yard === undefined ? '' : (code.get(yard) ?? ''), origin: state.origin, start: state.start, end: ended ? state.end : null, how: ended ? state.how : ('alive' as const), causes: ended ? [...state.causes] : [] };
      }),
      note: times === states.length ? null : `The figure is ${times}: it counts each winter or each time, and some colonies are in it more than once.`,
    };
  },
};

function compare(a: Day | string, b: Day | string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
