import type { OfferBody } from '#shared/contract/offers.ts';
import { day } from '#shared/days.ts';
import { equipment } from './shed.ts';
import { hardwareSeller, nucSeller, packageSeller, priceOf } from './ossarPlan.ts';

const year = 2027;
const cents = (dollars: number) => Math.round(dollars * 100);

/** What the invented sellers offer for the spring of 2027, dearer by a year than what was paid for the last. */
export function ossarOffers(): OfferBody[] {
  const [package3, nuc, queen] = [priceOf('package', year), priceOf('nuc', year), priceOf('queen', year)];
  return [
    {
      seller: packageSeller, what: { kind: 'package', pounds: 3 }, steps: [{ from: 1, each: cents(package3) }, { from: 10, each: cents(package3 - 4) }, { from: 25, each: cents(package3 - 9) }],
      orderBy: day('2027-01-31'), deliveryFrom: day('2027-04-21'), deliveryUntil: day('2027-04-29'), least: 2, most: 60, deposit: 4000, note: null,
    },
    {
      seller: nucSeller, what: { kind: 'nuc', frames: 4 }, steps: [{ from: 1, each: cents(nuc) }, { from: 8, each: cents(nuc - 7) }],
      orderBy: day('2027-02-15'), deliveryFrom: day('2027-05-12'), deliveryUntil: day('2027-05-20'), least: 1, most: 20, deposit: 5000, note: null,
    },
    {
      seller: packageSeller, what: { kind: 'queen' }, steps: [{ from: 1, each: cents(queen) }, { from: 10, each: cents(queen - 2) }],
      orderBy: day('2027-01-31'), deliveryFrom: day('2027-05-20'), deliveryUntil: day('2027-06-04'), least: 1, most: 80, deposit: null, note: null,
    },
    ...equipment.map((item): OfferBody => {
      const packSize = item.endsWith('frame') ? 50 : 5;
      return {
        seller: hardwareSeller, what: { kind: 'equipment', item, packSize }, steps: [{ from: 1, each: cents(priceOf(item, year) * packSize) }],
        orderBy: day('2027-04-10'), deliveryFrom: null, deliveryUntil: null, least: 1, most: null, deposit: null, note: null,
      };
    }),
  ];
}
