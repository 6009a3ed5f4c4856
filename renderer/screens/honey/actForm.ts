import { lotMost, type LotAct } from '#shared/contract/lots.ts';
import { dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import { readMeasure, type Asked } from '#shared/typedMeasure.ts';
import type { MassUnit } from '#shared/units.ts';
import { readPrice } from '../orders/readCents.ts';
import { degreesOf, typedCelsius, typedMass, typedSize } from './honeyText.ts';
import { lotWords as words } from './lotWords.ts';
import { monthsAfter } from '#shared/monthsAfter.ts';

/** What may be written down of a lot, in the order in which it usually happens. */
export const deeds = ['weighed', 'water', 'dried', 'poured', 'filled', 'sold', 'lost'] as const;
export type Deed = (typeof deeds)[number];

/** Stands for the best before that is reckoned from the day of filling, until the person types another. */
export const asProposed = 'as proposed';

/** Everything that can stand in the form, as text. */
export const blankAct = {
  deed: 'weighed', day: '', gross: '', tare: '', how: 'index', index: '', warmth: '', water: '', to: '', from: '', target: '', mass: '', size: '', count: '', bestBefore: asProposed, soldSize: '', quantity: '', price: '', why: '', note: '',
};
export type TypedAct = Readonly<typeof blankAct>;
export type ActPart = keyof TypedAct;
export type ActFaults = Partial<Record<ActPart, string>>;

export interface Sale {
  readonly size: ReturnType<typeof typedSize>;
  readonly quantity: number;
  readonly price: number | null;
  readonly note: string;
}

export type ReadAct =
  | { readonly faults: ActFaults }
  | { readonly faults: null; readonly day: Day; readonly act: LotAct }
  | { readonly faults: null; readonly day: Day; readonly sale: Sale };

/** What the form asks for each deed, besides the day. */
export function partsOf({ deed, how }: TypedAct): readonly ActPart[] {
  switch (deedOf(deed)) {
    case 'weighed':
      return ['gross', 'tare'];
    case 'water':
      return how === 'index' ? ['how', 'index', 'warmth'] : ['how', 'water'];
    case 'dried':
      return ['to'];
    case 'poured':
      return ['from', 'target', 'mass'];
    case 'filled':
      return ['size', 'count', 'bestBefore'];
    case 'sold':
      return ['soldSize', 'quantity', 'price', 'note'];
    case 'lost':
      return ['mass', 'why'];
  }
}

export function deedOf(text: string): Deed {
  return deeds.find((one) => one === text) ?? 'weighed';
}

interface ActSetting {
  readonly unit: MassUnit;
  readonly order: DateOrder;
  readonly today: Day;
  /** From filling to best before. */
  readonly months: number;
}

/** What stands in the field of best before; nothing as long as the day of filling is none. */
export function bestBeforeShown({ bestBefore, day }: TypedAct, { order, today, months }: Omit<ActSetting, 'unit'>): string {
  if (bestBefore !== asProposed) return bestBefore;
  const filled = day.trim() === '' ? today : dayFromTyped(day, order);
  return filled === null ? '' : monthsAfter(filled, months);
}

/** What was typed, or what is wrong with it beside the field it is about; the desk judges it against the lot. */
export function readAct(typed: TypedAct, { unit, order, today, months }: ActSetting): ReadAct {
  const faults: ActFaults = {};
  const need = <Value>(part: ActPart, value: Value | null, says: string): Value | null => {
    if (value === null) faults[part] = says;
    return value;
  };
  const day = need('day', typed.day.trim() === '' ? today : dayFromTyped(typed.day, order), words.must.day);
  /** What was typed in the unit that the field asks for; what cannot be taken says why itself. */
  const measure = (part: ActPart, asked: Asked): number | null => {
    const read = readMeasure(typed[part], asked);
    return read.ok ? read.value : need(part, null, read.sentence);
  };
  const mass = (part: ActPart, says: string, least = 1e-6) => {
    if (typed[part].trim() === '') return need(part, null, says);
    const read = measure(part, { unit, least, most: 1e6, suchAs: unit === 'kg' ? '55' : '120' });
    return read === null ? null : need(part, typedMass(typed[part], unit), says);
  };
  const water = (part: 'water' | 'to') => measure(part, { unit: '%', least: 10, most: 40, suchAs: '17.2' });
  const whole = (part: 'count' | 'quantity', most: number) => measure(part, { unit: null, own: ['jar', 'jars'], least: 1, most, whole: true, suchAs: '24' });
  const done = (act: LotAct | null): ReadAct => (day === null || act === null || Object.keys(faults).length > 0 ? { faults } : { faults: null, day, act });
  const short = (part: 'why' | 'note', most: number) => {
    const text = typed[part].trim();
    return need(part, text.length > most ? null : text, words.must.tooLong(most));
  };
  switch (deedOf(typed.deed)) {
    case 'weighed': {
      const [gross, tare] = [mass('gross', words.must.mass), mass('tare', words.must.mass, 0)];
      return done(gross === null || tare === null ? null : { what: 'weighed', gross, tare });
    }
    case 'water': {
      if (typed.how !== 'index') {
        const found = water('water');
        return done(found === null ? null : { what: 'water', water: found, reading: null, celsius: null });
      }
      const [reading, celsius] = [measure('index', { unit: null, most: 2, suchAs: '1.4915' }), measure('warmth', warmthAsked(unit)) === null ? null : typedCelsius(typed.warmth, unit)];
      // The desk works the water out of the reading, whatever stands here.
      return done(reading === null || celsius === null ? null : { what: 'water', water: 17, reading, celsius });
    }
    case 'dried': {
      const to = water('to');
      return done(to === null ? null : { what: 'dried', to });
    }
    case 'poured': {
      const [from, poured] = [need('from', typed.from === '' ? null : typed.from, words.must.from), mass('mass', words.must.mass)];
      return done(from === null || poured === null ? null : { what: 'poured', from, mass: poured });
    }
    case 'filled': {
      const [size, count] = [need('size', typedSize(typed.size), words.must.size), whole('count', 100_000)];
      const bestTyped = bestBeforeShown(typed, { order, today, months });
      const best = bestTyped.trim() === '' ? null : need('bestBefore', dayFromTyped(bestTyped, order), words.must.bestBefore);
      return done(size === null || count === null ? null : { what: 'filled', size, count, bestBefore: best });
    }
    case 'lost': {
      const [lost, why] = [mass('mass', words.must.mass), typed.why.trim() === '' ? need('why', null, words.must.why) : short('why', lotMost.why)];
      return done(lost === null || why === null ? null : { what: 'lost', mass: lost, why });
    }
    case 'sold': {
      const size = typedSize(typed.soldSize);
      const quantity = size === null ? measure('quantity', { unit, least: 1e-6, most: 1e6, suchAs: unit === 'kg' ? '55' : '120' }) : whole('quantity', 1_000_000);
      const paid = typed.price.trim() === '' ? null : readPrice(typed.price);
      const price = paid === null ? null : paid.ok ? paid.cents : need('price', null, paid.sentence);
      const note = short('note', lotMost.note);
      if (day === null || quantity === null || note === null || Object.keys(faults).length > 0) return { faults };
      return { faults: null, day, sale: { size, quantity, price, note } };
    }
  }
}

/** A reading is corrected from 5 to 45 °C, which is 41 to 113 °F. */
function warmthAsked(unit: MassUnit): Asked {
  const degrees = degreesOf(unit);
  return { unit: degrees, least: degrees === '°C' ? 5 : 41, most: degrees === '°C' ? 45 : 113, suchAs: degrees === '°C' ? '20' : '68' };
}

/** The field of the form that a refusal of the desk is about. */
export function partOfRefusal(field: string | undefined, typed: TypedAct): ActPart | null {
  const named: ActPart | undefined = field === undefined ? undefined : ({ reading: 'index', celsius: 'warmth' } as const)[field] ?? (Object.keys(blankAct) as ActPart[]).find((part) => part === field);
  return named !== undefined && (named === 'day' || partsOf(typed).includes(named)) ? named : null;
}
