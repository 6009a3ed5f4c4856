import { afterEach, beforeEach, expect } from 'vitest';
import type { YardId } from '#shared/brands.ts';
import { sameChoice } from '#core/desk/planChoices.ts';
import type { InputOf, OperationName } from '#shared/contract/contract.ts';
import type { OwnTaskBody, PlanChoice, WorkHours, WorkPlan, WorkSlot } from '#shared/contract/work.ts';
import { addDays, day, type Day } from '#shared/days.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

// A small book on 1 May: two yards of three colonies each, hived in April, and evenings and Saturdays to go there.
export const today = day('2026-05-01');
export const evening: WorkSlot = { from: 1050, until: 1260 };
export const saturday: WorkSlot = { from: 480, until: 960 };
export const [quarry, larch] = [1 as YardId, 2 as YardId];
export const hours = (week: (WorkSlot | null)[] = [evening, evening, evening, evening, evening, saturday, null], more: Partial<WorkHours> = {}): WorkHours => ({
  people: [{ name: 'You', week, alone: true, exceptions: [] }], place: { latitude: 44, longitude: -92, zone: 'America/Chicago' }, ...more,
});
export const own = (what: string, more: Partial<OwnTaskBody> = {}): OwnTaskBody => ({
  what, yard: quarry, colonies: [], earliest: day('2026-05-04'), latest: day('2026-05-16'), minutes: 40, people: 1, weather: 'any', bring: [], repeat: null, note: null, ...more,
});
export const visits = ({ outings }: WorkPlan) => outings.flatMap((outing) => outing.visits.map((visit) => ({ day: outing.day, people: outing.people, ...visit })));
export const placesOf = (plan: WorkPlan) => visits(plan).map(({ day: on, yard }) => `${on}/${yard}`);
/** A sentence that says something, and what would mend it. */
export const sentence = expect.stringMatching(/^[A-Z0-9].{10,}\.$/u);

/** The desk with that book before each test, and after it nothing left, and no defect and no broken search logged. */
export function workDesk() {
  let scratch: ReturnType<typeof scratchFolder>;
  let at: ReturnType<typeof trialDesk>;

  const ask = <Name extends OperationName>(name: Name, input: InputOf<Name>) => at.askHeld(name, input);
  const answer = <Name extends OperationName>(name: Name, input: InputOf<Name>) => at.answer(name, input);
  async function openEmpty(on: Day): Promise<void> {
    await at?.desk.close();
    at = trialDesk(scratch.folder, on);
    await ask('book.create', { name: `Ossar Valley ${on}` });
  }
  async function openOn(on: Day): Promise<void> {
    await openEmpty(on);
    for (const [code, name, minutes] of [['QY', 'Quarry', 18], ['LB', 'Larch Bend', 35]] as const) await ask('yard.keep', { code, name, room: 20, minutes });
    const colonies = ['QY-1', 'QY-2', 'QY-3', 'LB-1', 'LB-2', 'LB-3'];
    await ask('journal.enter', { rows: colonies.map((colony) => ({ date: addDays(on, -20), entry: 'install', yard: colony.slice(0, 2), colony, origin: 'nuc' })) });
  }
  /** The first plan there is; how good the search makes it is asked elsewhere. */
  async function planned(): Promise<WorkPlan> {
    await ask('work.replan', {});
    await expect.poll(async () => (await ask('work.progress', {})).plan !== null, { timeout: 20_000 }).toBe(true);
    const { plan } = await ask('work.stop', {});
    if (plan === null) throw new Error('a plan was expected');
    return plan;
  }

  type Said = Omit<PlanChoice, 'key'>;
  /** Says one thing of the plan, and what stands of it then. */
  async function choose(said: Said): Promise<PlanChoice> {
    await ask('work.change', { lift: [], choose: [said] });
    const found = (await ask('work.plan', {})).choices.find((one) => sameChoice(one, said));
    if (found === undefined) throw new Error('what was chosen does not stand');
    return found;
  }
  const lift = ({ key }: PlanChoice) => ask('work.change', { lift: [key], choose: [] });

  beforeEach(async () => {
    scratch = scratchFolder();
    await openOn(today);
  });
  afterEach(async () => {
    await at.desk.close();
    scratch.remove();
    const logged = at.log.filter((line) => !line.startsWith('slow:'));
    if (logged.length > 0) throw new Error(`The desk logged:\n${logged.join('\n')}`);
  });
  return { ask, answer, openOn, openEmpty, planned, choose, lift };
}
