import type { NeedsTally } from '#shared/contract/tally.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';
import { seasonName, seasonOf, periodDays } from '#shared/seasons.ts';
import { judgeTally, seasonsIn, tallyCaveat } from '#core/attention/tally/judgeTally.ts';
import { Replay, weekly } from '#core/attention/tally/replay.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import type { Store } from '#core/book/store.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { standingIn } from './standing.ts';

/**
 * The past seasons gone through in the background, one slice at a time with whatever else is asked for in between. It
 * reads week by week; when the book is changed meanwhile it ends, and the next question begins another.
 */
export class TallyRun {
  readonly position: number;
  readonly #book: Book;
  readonly #picture: Picture;
  readonly #replay: Replay;
  readonly #from: Day | null;
  /** The first day of the season that is not over. */
  readonly #until: Day;
  #weeks = 0;
  #state: NeedsTally['state'] = 'running';
  #rules: NeedsTally['rules'] = [];

  private constructor(book: Book, picture: Picture, from: Day | null, until: Day, massUnit: 'lb' | 'kg') {
    this.#book = book;
    this.#picture = picture;
    this.position = picture.position;
    this.#from = from;
    this.#until = until;
    this.#replay = new Replay({ rules: picture.rules, borders: picture.borders, massUnit, yards: picture.yardList }, needRules);
  }

  static async begin(book: Book, today: Day): Promise<TallyRun> {
    const picture = await book.picture();
    const { firstDay } = await book.store.counts();
    const until = periodDays(seasonOf(today, picture.borders), 'year', picture.borders).from;
    const from = firstDay !== null && firstDay < until ? firstDay : null;
    const run = new TallyRun(book, picture, from, until, (await book.settings()).massUnit);
    if (from === null) run.#state = 'nothing';
    else setImmediate(() => void run.#work(from));
    return run;
  }

  get state(): NeedsTally['state'] {
    return this.#state;
  }

  answer(): NeedsTally {
    const { borders } = this.#picture;
    const seasons = this.#from === null ? [] : seasonsIn({ from: this.#from, until: this.#until, borders }).map(seasonName);
    const of = this.#from === null ? 0 : Math.ceil(daysBetween(this.#from, this.#until) / weekly);
    return { state: this.#state, weeks: this.#weeks, of, seasons, from: this.#from, until: this.#from === null ? null : addDays(this.#until, -1), caveat: tallyCaveat, rules: [...this.#rules] };
  }

  async #work(from: Day): Promise<void> {
    const { store } = this.#book;
    try {
      let next = from;
      while (next < this.#until) {
        const evening = addDays(next, weekly - 1) < this.#until ? addDays(next, weekly - 1) : addDays(this.#until, -1);
        if ((await store.position()) !== this.position) return this.#stop();
        const entries = await standingIn(store, { from: next, until: evening });
        const slices = this.#replay.evening(evening, entries);
        while (slices.next().done !== true) await turn();
        this.#weeks += 1;
        next = addDays(evening, 1);
        await turn();
      }
      await this.#judge(from);
    } catch {
      // The book was closed under it; whoever opens it again asks anew.
      this.#stop();
    }
  }

  async #judge(from: Day): Promise<void> {
    const { rules, borders, byId } = this.#picture;
    const facts = { rules, borders, states: byId, from, until: this.#until };
    const found: NeedsTally['rules'] = [];
    for (const rule of needRules) {
      if (rule.tally === undefined) continue;
      found.push(judgeTally(rule, this.#replay.asked, facts));
      await turn();
    }
    this.#rules = found;
    this.#state = 'done';
  }

  #stop(): void {
    this.#state = 'moved';
  }
}

async function turn(): Promise<void> {
  await new Promise(setImmediate);
}

/** The tally of each open book, and of each day that is looked at; it goes with the book. */
const runs = new WeakMap<Store, { readonly today: Day; readonly run: TallyRun }>();

export async function tallyOf(book: Book, today: Day): Promise<NeedsTally> {
  const position = await book.store.position();
  const known = runs.get(book.store);
  if (known !== undefined && known.today === today && known.run.position === position && known.run.state !== 'moved') return known.run.answer();
  const run = await TallyRun.begin(book, today);
  runs.set(book.store, { today, run });
  return run.answer();
}
