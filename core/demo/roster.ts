import type { Ending } from '#shared/contract/values.ts';
import { dayText, seasonOfNumber } from './calendar.ts';
import { LedgerTally, type ColonyTruth, type WinterTruth } from './demoTruth.ts';
import { lines } from './ossarPlan.ts';
import type { SeededRandom } from './seededRandom.ts';
import type { SimulatedColony, SimulatedOrigin } from './simulatedColony.ts';

const started = { package: 'packages', nuc: 'nucs', swarm: 'swarms', split: 'splits' } as const;
const ended = { sold: 'sold', given: 'given', combined: 'combined', absconded: 'absconded' } as const;

/** All colonies of the simulated operation, living and ended, and the true account of them. */
export class Roster {
  readonly all: SimulatedColony[] = [];
  readonly #tally = new LedgerTally();
  readonly #winters = new Map<number, { alive: number; lost: number }>();
  /** Until when a label stays unused after its colony ended. */
  readonly #resting = new Map<string, number>();
  #living: SimulatedColony[] = [];

  living(yard?: string): SimulatedColony[] {
    return yard === undefined ? [...this.#living] : this.#living.filter((colony) => colony.yard === yard);
  }

  count(yard: string): number {
    return this.living(yard).length;
  }

  begin(
    day: number,
    made: { label: string; origin: SimulatedOrigin; yard: string; queenYear: number; eightFrame?: boolean; queenright?: boolean },
    random: SeededRandom,
  ): SimulatedColony {
    if (this.#living.some((colony) => colony.label === made.label)) throw new RangeError(`label in use: ${made.label}`);
    const colony: SimulatedColony = {
      label: made.label, origin: made.origin, start: day, startYard: made.yard, eightFrame: made.eightFrame ?? false, yard: made.yard,
      end: null, how: 'alive', queenYear: made.queenYear, queenLine: random.pick(lines), queenright: made.queenright ?? true,
      temper: random.pick([1, 1, 2, 2, 2, 3, 3, 4]), vigor: Math.exp(random.normal(0, 0.16)), setBack: null, deeps: 1, supers: 0,
      excluder: false, mites: 0.3, washed: false, storesLb: 0, fedGallons: 0, storesWeighed: null, splitThisYear: made.origin === 'split',
      death: null, honeyLb: new Map(), autumns: [],
    };
    this.all.push(colony);
    this.#living.push(colony);
    this.#tally.add(seasonOfNumber(day), made.yard, started[made.origin]);
    return colony;
  }

  end(day: number, colony: SimulatedColony, how: Exclude<Ending, 'alive'>): void {
    if (colony.end !== null) throw new RangeError(`${colony.label} ended already`);
    const season = seasonOfNumber(day);
    colony.end = day;
    colony.how = how;
    this.#living = this.#living.filter((other) => other !== colony);
    this.#resting.set(colony.label, day + 40);
    if (how !== 'lost') {
      this.#tally.add(season, colony.yard, ended[how]);
      return;
    }
    const monthDay = dayText(day).slice(5);
    const inWinter = monthDay >= '10-01' || monthDay < '04-01';
    this.#tally.add(season, colony.yard, inWinter ? 'lostWinter' : 'lostSummer');
    const winter = this.#winters.get(season);
    if (inWinter && winter !== undefined) winter.lost += 1;
  }

  move(day: number, colony: SimulatedColony, to: string): void {
    this.#tally.add(seasonOfNumber(day), colony.yard, 'movedOut');
    colony.yard = to;
    this.#tally.add(seasonOfNumber(day), to, 'movedIn');
  }

  /** The lowest number not in use in the yard's own series, some weeks after its last bearer ended. */
  freeLabel(day: number, yard: string): string {
    for (let number = 1; ; number += 1) {
      const label = `${yard}-${String(number).padStart(2, '0')}`;
      if (!this.#living.some((colony) => colony.label === label) && (this.#resting.get(label) ?? 0) < day) return label;
    }
  }

  /** To be called at the start of each day, before anything happens on it. */
  keepAccount(day: number): void {
    const monthDay = dayText(day).slice(5);
    const season = seasonOfNumber(day);
    if (monthDay === '04-01') {
      this.#close(season - 1);
      for (const colony of this.#living) this.#tally.add(season, colony.yard, 'opening');
    }
    if (monthDay === '10-01') {
      this.#winters.set(season, { alive: this.#living.length, lost: 0 });
      for (const colony of this.#living) this.#tally.add(season, colony.yard, 'aliveOn1October');
    }
  }

  /** The true account at the end of the last day. */
  account(lastDay: number): { ledger: ReturnType<LedgerTally['rows']>; winters: WinterTruth[]; colonies: ColonyTruth[] } {
    const season = seasonOfNumber(lastDay);
    this.#close(season);
    return {
      ledger: this.#tally.rows(),
      winters: [...this.#winters].map(([winter, { alive, lost }]) => ({ season: winter, aliveOn1October: alive, lost, complete: winter < season })),
      colonies: this.all.map((colony) => ({
        label: colony.label, origin: colony.origin, yard: colony.startYard, start: dayText(colony.start),
        end: colony.end === null ? null : dayText(colony.end), how: colony.how,
        honeyLb: Object.fromEntries([...colony.honeyLb].map(([year, lb]) => [String(year), Math.round(lb * 10) / 10])),
        autumns: colony.autumns,
      })),
    };
  }

  #close(season: number): void {
    for (const colony of this.#living) this.#tally.add(season, colony.yard, 'closing');
  }
}
