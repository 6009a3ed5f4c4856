import type { LotAct } from '#shared/contract/lots.ts';
import { dayInWords } from '#shared/days.ts';
import { counted, fixed, hold, number } from '#shared/figures.ts';
import { weighedTooHeavy } from '#shared/lotScale.ts';
import { gramsPerPound, type MassUnit } from '#shared/units.ts';
import { jarWords, sizeKey } from './jars.ts';
import type { Found } from './judgeStep.ts';
import type { Lot, LotEvent, Trouble } from './lotBook.ts';

/** Grams in the unit of the book, with its name. */
export function gramsSaid(grams: number, unit: MassUnit): string {
  const value = unit === 'lb' ? grams / gramsPerPound : grams / 1000;
  return `${number(Math.abs(value) < 0.05 ? 0 : value, 1)}${hold}${unit}`;
}

const waterSaid = (water: number) => `${fixed(water, 1)}${hold}%`;

/** What happened, as one sentence. */
export function eventSentence({ of, day, trouble, change }: Pick<LotEvent, 'of' | 'day' | 'trouble' | 'change'>, unit: MassUnit): string {
  const said = whatHappened({ of, day, change }, unit);
  return trouble === null ? said : `${said} ${troubleSentence(trouble, unit)}`;
}

function whatHappened({ of, day, change }: Pick<LotEvent, 'of' | 'day' | 'change'>, unit: MassUnit): string {
  if ('harvest' in of) return `${gramsSaid(of.harvest.net, unit)} harvested${of.harvest.day === day ? '' : ` on ${dayInWords(of.harvest.day)}`}${of.harvest.moisture === null ? '' : `, ${waterSaid(of.harvest.moisture)} water`}.`;
  if ('sale' in of) return `Sold ${of.sale.quantity === null ? '' : `${number(of.sale.quantity, 1)} `}${of.sale.item}.`;
  if ('pouredTo' in of) return `${gramsSaid(-change, unit)} poured into lot ${of.pouredTo}.`;
  return actSentence(of.step.act, unit, change);
}

export function actSentence(act: LotAct, unit: MassUnit, change: number | null): string {
  switch (act.what) {
    case 'made':
      return `Made from ${counted(act.harvests.length, 'harvest', 'harvests')}.`;
    case 'water':
      return `Water found: ${waterSaid(act.water)}${act.reading === null || act.celsius === null ? '' : `, read as ${fixed(act.reading, 4)} at ${number(act.celsius, 1)}${hold}°C`}.`;
    case 'weighed': {
      const found = `Weighed: ${gramsSaid(act.gross, unit)} full, ${gramsSaid(act.tare, unit)} empty, ${gramsSaid(act.gross - act.tare, unit)} of honey`;
      if (change === null || Math.abs(change) < 0.5) return `${found}.`;
      return `${found}: ${gramsSaid(Math.abs(change), unit)} ${change < 0 ? 'less' : 'more'} than the account had.`;
    }
    case 'dried':
      return `Dried to ${waterSaid(act.to)}.`;
    case 'poured':
      return `${gramsSaid(act.mass, unit)} of lot ${act.from} poured in.`;
    case 'filled':
      return `${counted(act.count, jarWords(act.size), `${jarWords(act.size)}s`)} filled${act.bestBefore === null ? '' : `, best before ${dayInWords(act.bestBefore)}`}.`;
    case 'lost':
      return `${gramsSaid(act.mass, unit)} lost: ${act.why}.`;
  }
}

export function troubleSentence(trouble: Trouble, unit: MassUnit): string {
  switch (trouble.why) {
    case 'over':
      return `That is ${gramsSaid(trouble.by, unit)} more than was there.`;
    case 'jars':
      return `That is ${number(trouble.by, 1)} more of ${sizeKey(trouble.size)} than were filled.`;
    case 'no number':
      return 'How many is not written down, so the jars left are not known.';
    case 'not dry':
      return trouble.water === null ? 'How much water it had before is not known, so what went is not known either.' : `It had ${waterSaid(trouble.water)} already.`;
    case 'itself':
      return 'A lot cannot be poured into itself.';
    case 'gone':
      return `${counted(trouble.harvests, 'of its harvests is', 'of its harvests are')} no longer in the book.`;
    case 'too early':
      return `${counted(trouble.harvests, 'of its harvests is', 'of its harvests are')} of a later day.`;
    case 'taken':
      return `${counted(trouble.harvests, 'of its harvests is', 'of its harvests are')} in another lot already.`;
  }
}

/** Why something new cannot be: what would no longer be right, on which day, and where. */
export function refusalSentence({ lot, event }: Found, own: boolean, unit: MassUnit): { sentence: string; mend: string } {
  const { trouble } = event;
  if (trouble === null) throw new Error('nothing is wrong');
  const said = troubleSentence(trouble, unit);
  const mend = trouble.why === 'over' ? 'Weigh the lot and enter what the scale says, or correct the amount. Nothing was kept.' : trouble.why === 'not dry' ? 'Enter its water first, or a lower one. Nothing was kept.' : 'Nothing was kept.';
  if (own) return { sentence: said, mend };
  return { sentence: `Then this would no longer be right in lot ${lot.code} on ${dayInWords(event.day)}: ${whatHappened(event, unit)} ${said}`, mend };
}

/** Whether the account closes, in one sentence. */
export function balanceSentence(lot: Lot, unit: MassUnit): string {
  const { account, events } = lot;
  const wrong = events.find(({ trouble }) => trouble?.why === 'over');
  if (account.bulk < -0.5) return `This lot gave ${gramsSaid(-account.bulk, unit)} more than came in${wrong === undefined ? '' : `; it began on ${dayInWords(wrong.day)}`}. Weigh it, or mend what is wrong below.`;
  if (!lot.weighed) return `It was not weighed after extracting, so what stayed in combs and cappings is not known; the account goes by the ${gramsSaid(account.harvested + account.pouredIn, unit)} that came in.`;
  // What came in after the weighing was not on the scale.
  const part = account.weighedOf > 0 ? ` (${fixed((100 * Math.abs(account.difference)) / account.weighedOf, 1)}${hold}%)` : '';
  const found = Math.abs(account.difference) < 0.5 ? 'The scale found what the account had' : `The scale found ${gramsSaid(Math.abs(account.difference), unit)}${part} ${account.difference < 0 ? 'less than came in: left in combs and cappings, or a scale that differs' : 'more than the account had: a harvest may be missing, or the scales differ'}`;
  const said = weighedTooHeavy(account) ? `Weighed too heavy: ${found.charAt(0).toLowerCase()}${found.slice(1)}` : found;
  return `${said}. ${gramsSaid(account.bulk, unit)} ${account.bulk < 0.5 ? 'are left' : 'is left over in bulk'}.`;
}

/** Where the figure for water comes from. */
export function waterSentence(lot: Lot): string {
  const { water, waterFrom, harvests, measured } = lot;
  if (water === null) return harvests.length > 0 && measured === 0 && waterFrom === null ? 'Water was not measured at its harvests, and no reading of the lot is kept.' : 'Water is not known: honey of unknown water came in after it was measured.';
  switch (waterFrom) {
    case 'harvests':
      return `${waterSaid(water)} water: the mean by weight of ${measured} of ${counted(harvests.length, 'harvest', 'harvests')} that were measured. A reading of the lot itself is surer.`;
    case 'blend':
      return `${waterSaid(water)} water: worked out from what was poured together. Read it again once it is stirred.`;
    case 'drying':
      return `${waterSaid(water)} water: dried to it.`;
    default:
      return `${waterSaid(water)} water, as read.`;
  }
}

/** Its water against the limit of a place, in one sentence. What rounds to the limit and is over it says so with its digits. */
export function limitSentence(water: number | null, place: string, limit: number): string {
  const said = `${fixed(limit, 1)}${hold}%`;
  if (water === null) return `Whether it is within the ${said} of ${place} is not known.`;
  if (water <= limit) return `It is within the ${said} of ${place}.`;
  return `It is over the ${said} of ${place}, by ${fixed(water - limit, water - limit < 0.05 ? 3 : 1)}: as it is, it may not be sold as that there. Dry it, or pour it together with a drier lot.`;
}
