import type { LossSurvival } from '#shared/contract/lossSections.ts';
import type { Day } from '#shared/days.ts';
import { periodDays, seasonName, type Season } from '#shared/seasons.ts';
import { behind } from '#core/losses/behind.ts';
import { cohortLoss } from '#core/losses/cohortLoss.ts';
import { lossRatesPart } from '#core/losses/lossRatesPart.ts';
import { endedIn } from '#core/losses/lossReview.ts';
import { isOver } from '#core/losses/reviewFacts.ts';
import { reviewFrame } from '#core/losses/reviewFrame.ts';
import { ledgerBalances, ledgerRows, ledgerTotal, seasonYards } from '#core/losses/seasonLedger.ts';
import { survivalPairs, survivalPart, type SurvivalFacts } from '#core/losses/survivalPart.ts';
import { winterSpans } from '#core/losses/watchedRows.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { Book } from './openBook.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import type { Picture } from './picture.ts';
import { wintersKept } from './wintersKept.ts';

type Names = 'losses.frame' | 'losses.ledger' | 'losses.ended' | 'losses.rates' | 'losses.survival' | 'losses.pairs' | 'losses.behind';

/** The season-end review in parts, so that no answer holds up the next; what several parts need is worked out once. */
export const lossSectionHandlers: Handlers<Names> = {
  'losses.frame': async ({ season }, context) => {
    const { facts } = await review(context);
    const frame = reviewFrame(facts, season);
    return {
      asOf: facts.asOf,
      seasons: frame.seasons.toReversed().map((one) => ({ season: one, name: seasonName(one), complete: isOver(periodDays(one, 'year', facts.borders).until, facts) })),
      season: frame.season,
      yards: facts.yards.map(({ code, name }) => ({ code, name })),
      empty: frame.seasons.length === 0,
      winter: periodDays(frame.season, 'winter', facts.borders),
    };
  },
  'losses.ledger': async ({ season }, context) => {
    const { facts, counted } = await review(context);
    const own = counted(season);
    return { season, running: !isOver(periodDays(season, 'year', facts.borders).until, facts), yards: facts.yards.map(({ code, name }) => ({ code, name })), ledger: [...ledgerRows(season, own), ledgerTotal(season, own)], balances: ledgerBalances(own) };
  },
  'losses.ended': async ({ season }, context) => {
    const { facts } = await review(context);
    return { yards: facts.yards.map(({ code, name }) => ({ code, name })), ended: endedIn(facts, season) };
  },
  'losses.rates': async ({ season, united }, context) => {
    const { facts, counted, picture } = await review(context);
    return lossRatesPart(facts, season, united, counted, (one) => keptFor(picture, `cohort ${one} ${facts.asOf}`, () => cohortLoss(facts, one)));
  },
  'losses.survival': async (asked, context) => survivalKept(await survivalFacts(context), context.open(), asked),
  'losses.pairs': async (asked, context) => {
    const facts = await survivalFacts(context);
    return survivalPairs(facts, asked, await survivalKept(facts, context.open(), asked));
  },
  'losses.behind': async ({ selector, most }, context) => {
    const facts = await survivalFacts(context);
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

/** A figure is asked for again by its pairs, and when one comes back to it. */
async function survivalKept(facts: SurvivalFacts, book: Book, asked: LossSurvival['asked']): Promise<LossSurvival> {
  const picture = await book.picture();
  return keptFor(picture, `survival ${facts.asOf} ${facts.massUnit} ${asked.season} ${asked.axis} ${asked.by} ${asked.united}`, () => survivalPart(facts, asked));
}

async function review(context: DeskContext): Promise<{ book: Book; picture: Picture; facts: Pick<SurvivalFacts, 'states' | 'yards' | 'borders' | 'asOf' | 'today'>; counted: (season: Season) => ReturnType<typeof seasonYards> }> {
  const book = context.open();
  const picture = await book.picture();
  const today = await book.today(context.options.now().day);
  const { states, yardList, borders } = picture;
  const facts = { states, yards: yardList, borders, asOf: today, today };
  return { book, picture, facts, counted: (season) => keptFor(picture, `account ${season} ${today}`, () => seasonYards(states, yardList, season, today, borders)) };
}

async function survivalFacts(context: DeskContext): Promise<SurvivalFacts> {
  const { book, picture, facts } = await review(context);
  const { massUnit } = await book.settings();
  const { covariates } = await wintersKept(book, picture, facts.asOf);
  const stateOf: SurvivalFacts['stateOf'] = (id) => {
    const state = picture.byId.get(id);
    if (state === undefined) throw new Error(`no colony has the id ${id}`);
    return state;
  };
  return {
    ...facts, stateOf, rules: picture.rules, massUnit, covariates,
    spans: (season) => keptFor(picture, `spans ${season} ${facts.asOf}`, () => winterSpans(facts, season, covariates(season), stateOf)),
  };
}

function compare(a: Day | string, b: Day | string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
